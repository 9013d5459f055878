#include "heatmatch/heat/mixed_bulk.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

constexpr double boiling_k = 100.0 + zero_celsius_k;
constexpr double film_w_m2k = 1000.0;
constexpr double over_boiling_k = 15.0;

void check(const char* field, double value, double low, double high, const char* unit,
           const char* allowed) {
    if (value >= low && value <= high) return;
    throw InvalidInput({.part = "store of water",
                        .field = field,
                        .value = format_number(value) + unit,
                        .allowed = allowed,
                        .remedy = say<"heat.in_its_unit">()});
}

/// One step of constant power, with the loss at its mean temperature: `mean = Te + (T0 - Te) (1 -
/// exp(-x))/x`, x = t/tau.
double stepped_k(const BedFill& fill, const StoreShell& shell, double before_k, double air_k,
                 double power_w, double seconds) {
    double mean_k = before_k;
    double next_k = before_k;
    constexpr int rounds = 3;
    for (int round = 0; round < rounds; ++round) {
        const double loss_w_k = shell.loss_w_k(mean_k, air_k);
        const double capacity =
            fill.density_kg_m3 * shell.volume_m3 * fill.heat_capacity.at(mean_k);
        const double x = seconds * loss_w_k / capacity;
        const double tends_k = air_k + power_w / loss_w_k;
        const double gone = -std::expm1(-x);
        next_k = std::min(tends_k + (before_k - tends_k) * (1.0 - gone), boiling_k);
        mean_k = std::min(tends_k + (before_k - tends_k) * gone / x, boiling_k);
    }
    return next_k;
}

}  // namespace

double charged_bulk_c(const BedFill& fill, const StoreShell& shell, const BulkCharge& charge) {
    constexpr double longest_step_h = 3.0;
    const double air_k = charge.air_c + zero_celsius_k;
    double bulk_k = air_k;
    const auto stepped = [&](double power_w, double hours) {
        const auto steps = static_cast<int>(std::ceil(hours / longest_step_h));
        for (int i = 0; i < steps; ++i) {
            bulk_k = stepped_k(fill, shell, bulk_k, air_k, power_w, hours * 3600.0 / steps);
        }
    };
    constexpr double day_h = 24.0;
    constexpr double same_k = 0.01;
    stepped(charge.power_w, charge.hours);
    for (double day = 2.0; day <= charge.days; ++day) {
        const double before_k = bulk_k;
        stepped(0.0, day_h - charge.hours);
        stepped(charge.power_w, charge.hours);
        if (std::fabs(bulk_k - before_k) < same_k) break;
    }
    return bulk_k - zero_celsius_k;
}

MixedBulk::MixedBulk(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c)
    : MixedBulk(std::move(fill), std::move(shell), std::vector<LegLayout>{std::move(legs)}, air_c,
                start_c) {}

MixedBulk::MixedBulk(BedFill fill, StoreShell shell, std::vector<LegLayout> banks, double air_c,
                     double start_c)
    : fill_(std::move(fill)),
      shell_(std::move(shell)),
      banks_(std::move(banks)),
      power_w_(banks_.size(), 0.0) {
    set_air_c(air_c);
    check("start_c", start_c, -60.0, 100.0, " °C", "-60 to 100 °C");
    check("volume_m3", shell_.volume_m3, 1e-9, 1e6, " m3", "> 0 m3");
    for (const LegLayout& legs : banks_) {
        check("leg_length_m", legs.heated_length_m(), 1e-6, 1e6, " m", "> 0 m");
    }
    check("density_kg_m3", fill_.density_kg_m3, 1e-3, 1e5, " kg/m3", "> 0 kg/m3");
    start_k_ = start_c + zero_celsius_k;
    bulk_k_ = start_k_;
}

double MixedBulk::heat_capacity_j_k() const {
    return fill_.density_kg_m3 * shell_.volume_m3 * fill_.heat_capacity.at(bulk_k_);
}

/// Exact for the coefficients at the start of the step: `T = Te + (T0 - Te) exp(-t/tau)`.
void MixedBulk::advance(double power_w, double seconds) {
    const double capacity = heat_capacity_j_k();
    const double shell_w_k = shell_.loss_w_k(bulk_k_, air_k_);
    const double all_w_k = shell_w_k + extraction_w_k_;
    const double before_k = bulk_k_;
    const double tends_k = air_k_ + power_w / all_w_k;
    const double next_k = tends_k + (before_k - tends_k) * std::exp(-seconds * all_w_k / capacity);
    bulk_k_ = std::min(next_k, boiling_k);
    const double held_j =
        fill_.density_kg_m3 * shell_.volume_m3 *
        (fill_.heat_capacity.enthalpy(bulk_k_) - fill_.heat_capacity.enthalpy(before_k));
    // Heat supplied and not stored has left, through shell and fan in proportion; above boiling
    // through both at that temperature, and the rest as steam.
    double left_j = power_w * seconds - held_j;
    if (next_k > boiling_k) {
        const double at_boiling_j = std::min(left_j, all_w_k * (boiling_k - air_k_) * seconds);
        steam_j_ += left_j - at_boiling_j;
        lost_j_ += left_j - at_boiling_j;
        left_j = at_boiling_j;
    }
    taken_j_ += left_j * extraction_w_k_ / all_w_k;
    lost_j_ += left_j * shell_w_k / all_w_k;
    supplied_j_ += power_w * seconds;
}

void MixedBulk::step(double power_w, double seconds) {
    step(std::span<const double>(&power_w, 1), seconds);
}

void MixedBulk::step(std::span<const double> power_w, double seconds) {
    const auto banks = static_cast<double>(banks_.size());
    check("number of powers", static_cast<double>(power_w.size()), banks, banks, "",
          "one for each bank");
    double all_w = 0.0;
    for (const double each_w : power_w) {
        check("power_w", each_w, 0.0, 1e7, " W", ">= 0 W");
        all_w += each_w;
    }
    check("seconds", seconds, 0.0, 1e9, " s", ">= 0 s");
    power_w_.assign(power_w.begin(), power_w.end());
    const auto steps = static_cast<long>(std::ceil(seconds / longest_step_s));
    for (long i = 0; i < steps; ++i) advance(all_w, seconds / static_cast<double>(steps));
}

void MixedBulk::set_air_c(double air_c) {
    check("air_c", air_c, -100.0, 100.0, " °C", "-100 to 100 °C");
    air_k_ = air_c + zero_celsius_k;
}

void MixedBulk::set_extraction_w_k(double w_k) {
    check("extraction_w_k", w_k, 0.0, 1e6, " W/K", ">= 0 W/K");
    extraction_w_k_ = w_k;
}

double MixedBulk::bed_mean_c() const {
    return bulk_k_ - zero_celsius_k;
}

double MixedBulk::sheath_c(std::size_t bank) const {
    const LegLayout& legs = banks_.at(bank);
    const double flux_w_m2 =
        power_w_[bank] / (2.0 * pi * legs.sheath_radius_m * legs.heated_length_m());
    return std::min(bed_mean_c() + flux_w_m2 / film_w_m2k,
                    boiling_k - zero_celsius_k + over_boiling_k);
}

double MixedBulk::wall_c() const {
    return shell_.side_surface_k(bulk_k_, air_k_) - zero_celsius_k;
}

double MixedBulk::lid_c() const {
    return shell_.lid_surface_k(bulk_k_, air_k_) - zero_celsius_k;
}

double MixedBulk::loss_w() const {
    return shell_.loss_w_k(bulk_k_, air_k_) * (bulk_k_ - air_k_);
}

double MixedBulk::extraction_w() const {
    return extraction_w_k_ * (bulk_k_ - air_k_);
}

double MixedBulk::stored_kwh() const {
    return fill_.density_kg_m3 * shell_.volume_m3 *
           (fill_.heat_capacity.enthalpy(bulk_k_) - fill_.heat_capacity.enthalpy(start_k_)) /
           joules_per_kwh;
}

double MixedBulk::lost_kwh() const {
    return lost_j_ / joules_per_kwh;
}

double MixedBulk::taken_kwh() const {
    return taken_j_ / joules_per_kwh;
}

double MixedBulk::supplied_kwh() const {
    return supplied_j_ / joules_per_kwh;
}

double MixedBulk::steam_kwh() const {
    return steam_j_ / joules_per_kwh;
}

}  // namespace heatmatch
