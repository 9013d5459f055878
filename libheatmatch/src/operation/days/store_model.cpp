#include "store_model.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/circuit/filled_store.hpp"

namespace heatmatch {

namespace {

constexpr double still_water_w_mk = 0.6;

using Model = std::variant<BedField, MixedBulk>;

const BedCharge& charge_at(const BankHeat& heat, ConductivityEnd end) {
    if (end == ConductivityEnd::low) return heat.careful;
    return end == ConductivityEnd::high ? heat.conducting : heat.likely;
}

Model model_of(std::span<const BankHeat* const> heats, ConductivityEnd end, double air_c,
               double start_c) {
    const BankHeat& first = *heats.front();
    const FilledStore& filled = *first.store;
    std::vector<LegLayout> banks;
    for (const BankHeat* heat : heats) {
        banks.push_back(heat->liquid ? leg_layout(heat->element, heat->elements, filled.store)
                                     : charge_at(*heat, end).legs);
    }
    if (!first.liquid) {
        const BedCharge& charge = charge_at(first, end);
        double rod_j_m_k = charge.rod_j_m_k;  // the thinnest rods are hottest at first
        for (const BankHeat* heat : heats) {
            rod_j_m_k = std::min(rod_j_m_k, charge_at(*heat, end).rod_j_m_k);
        }
        return BedField(charge.fill, charge.shell, std::move(banks), air_c, start_c, {}, rod_j_m_k);
    }
    const BedFill water{.heat_capacity = HeatCapacity(filled.medium.heat_capacity_j_kgk),
                        .density_kg_m3 = filled.medium.density_kg_m3};
    return MixedBulk(water, store_shell(filled.store), std::move(banks), air_c, start_c);
}

}  // namespace

StoreModel::StoreModel(std::span<const BankHeat* const> heats, ConductivityEnd end, double air_c,
                       double start_c)
    : model_(model_of(heats, end, air_c, start_c)), power_w_(heats.size(), 0.0) {
    for (const BankHeat* heat : heats) charges_.push_back(charge_at(*heat, end));
}

void StoreModel::step(std::span<const double> power_w, double seconds) {
    power_w_.assign(power_w.begin(), power_w.end());
    std::visit([&](auto& model) { model.step(power_w, seconds); }, model_);
}

void StoreModel::set_air_c(double air_c) {
    std::visit([&](auto& model) { model.set_air_c(air_c); }, model_);
}

void StoreModel::set_extraction_w_k(double w_k) {
    std::visit([&](auto& model) { model.set_extraction_w_k(w_k); }, model_);
}

double StoreModel::sheath_c(std::size_t bank) const {
    const double touching_c =
        std::visit([bank](const auto& model) { return model.sheath_c(bank); }, model_);
    // A rod in a groove of a solid is hotter by the drop across its air gap.
    const BedCharge& charge = charges_[bank];
    if (charge.gap_m <= 0.0 || power_w_[bank] <= 0.0) return touching_c;
    return settled_sheath_c(charge, power_w_[bank], touching_c, charge.gap_m);
}

double StoreModel::bed_mean_c() const {
    return std::visit([](const auto& model) { return model.bed_mean_c(); }, model_);
}

double StoreModel::edge_c() const {
    return std::visit([](const auto& model) { return model.edge_c(); }, model_);
}

double StoreModel::wall_c() const {
    return std::visit([](const auto& model) { return model.wall_c(); }, model_);
}

double StoreModel::lid_c() const {
    return std::visit([](const auto& model) { return model.lid_c(); }, model_);
}

double StoreModel::near_leg_c(double distance_m, std::size_t bank) const {
    double within_m = distance_m;
    if (!liquid()) {
        constexpr double inside = 0.98;
        const double r2 = charges_[bank].shell.volume_m3 / (pi * charges_[bank].shell.height_m);
        const double b = charges_[bank].legs.outer_radius_m();
        within_m = std::min(within_m, inside * std::sqrt(std::max(0.0, r2 - b * b)));
    }
    return std::visit([&](const auto& model) { return model.near_leg_c(within_m, bank); }, model_);
}

double StoreModel::loss_w() const {
    return std::visit([](const auto& model) { return model.loss_w(); }, model_);
}

double StoreModel::stored_kwh() const {
    return std::visit([](const auto& model) { return model.stored_kwh(); }, model_);
}

double StoreModel::lost_kwh() const {
    return std::visit([](const auto& model) { return model.lost_kwh(); }, model_);
}

double StoreModel::taken_kwh() const {
    return std::visit([](const auto& model) { return model.taken_kwh(); }, model_);
}

double StoreModel::steam_kwh() const {
    const auto* water = std::get_if<MixedBulk>(&model_);
    return water == nullptr ? 0.0 : water->steam_kwh();
}

double StoreModel::conductivity_w_mk(double at_c) const {
    if (liquid()) return still_water_w_mk;
    return charges_.front().fill.conductivity.at(at_c + zero_celsius_k);
}

}  // namespace heatmatch
