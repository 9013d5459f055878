#include "store_model.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/circuit/filled_store.hpp"

namespace heatmatch {

namespace {

constexpr double still_water_w_mk = 0.6;

using Model = std::variant<BedField, MixedBulk>;

Model model_of(const BankHeat& heat, const BedCharge& charge, double air_c, double start_c) {
    const FilledStore& filled = *heat.store;
    if (!heat.liquid) {
        return BedField(charge.fill, charge.shell, charge.legs, air_c, start_c, {},
                        charge.rod_j_m_k);
    }
    const BedFill water{.heat_capacity = HeatCapacity(filled.medium.heat_capacity_j_kgk),
                        .density_kg_m3 = filled.medium.density_kg_m3};
    return MixedBulk(water, store_shell(filled.store),
                     leg_layout(heat.element, heat.elements, filled.store), air_c, start_c);
}

const BedCharge& charge_at(const BankHeat& heat, ConductivityEnd end) {
    if (end == ConductivityEnd::low) return heat.careful;
    return end == ConductivityEnd::high ? heat.conducting : heat.likely;
}

}  // namespace

StoreModel::StoreModel(const BankHeat& heat, ConductivityEnd end, double air_c, double start_c)
    : model_(model_of(heat, charge_at(heat, end), air_c, start_c)), charge_(charge_at(heat, end)) {}

void StoreModel::step(double power_w, double seconds) {
    power_w_ = power_w;
    std::visit([&](auto& model) { model.step(power_w, seconds); }, model_);
}

void StoreModel::set_air_c(double air_c) {
    std::visit([&](auto& model) { model.set_air_c(air_c); }, model_);
}

void StoreModel::set_extraction_w_k(double w_k) {
    std::visit([&](auto& model) { model.set_extraction_w_k(w_k); }, model_);
}

double StoreModel::sheath_c() const {
    const double touching_c =
        std::visit([](const auto& model) { return model.sheath_c(); }, model_);
    // A rod in a groove of a solid is hotter by the drop across its air gap.
    if (charge_.gap_m <= 0.0 || power_w_ <= 0.0) return touching_c;
    return settled_sheath_c(charge_, power_w_, touching_c, charge_.gap_m);
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

double StoreModel::near_leg_c(double distance_m) const {
    double within_m = distance_m;
    if (!liquid()) {
        constexpr double inside = 0.98;
        const double r2 = charge_.shell.volume_m3 / (pi * charge_.shell.height_m);
        const double b = charge_.legs.outer_radius_m();
        within_m = std::min(within_m, inside * std::sqrt(std::max(0.0, r2 - b * b)));
    }
    return std::visit([&](const auto& model) { return model.near_leg_c(within_m); }, model_);
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
    return charge_.fill.conductivity.at(at_c + zero_celsius_k);
}

}  // namespace heatmatch
