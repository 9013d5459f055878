#include "fill_fit.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

using diagnosis_sentences::count_of;
using diagnosis_sentences::say;

namespace {

constexpr double hour_s = 3600.0;
constexpr double day_h = 24.0;
constexpr double closed_form_error = 0.08;  // of the rise, within 1 to 8 hours
constexpr std::size_t most_rows = 10;

/// A row with the heating of the store up to it.
struct HeatRow {
    double power_w = 0.0;  //!< mean since heating began
    double hours = 0.0;
    double days = 1.0;
    const Reading* reading = nullptr;
};

std::optional<double> power_of(const Reading& row, double bank_ohm) {
    if (row.bank_v && row.bank_a) return *row.bank_v * *row.bank_a;
    if (row.bank_a) return *row.bank_a * *row.bank_a * bank_ohm;
    if (row.bank_v && bank_ohm > 0.0) return *row.bank_v * *row.bank_v / bank_ohm;
    return std::nullopt;
}

/// Rows that can be compared: heated for one to ten hours, by the time stamps if there are any,
/// else at the end of the store's hours of charge.
std::vector<HeatRow> heat_rows(const Circuit& circuit, const std::vector<Reading>& rows) {
    double most_w = 0.0;
    const double ohm = circuit.bank.typical_ohm();
    for (const Reading& row : rows) most_w = std::max(most_w, power_of(row, ohm).value_or(0.0));
    std::vector<HeatRow> found;
    constexpr double never = std::numeric_limits<double>::quiet_NaN();
    double first_s = never;
    double begun_s = never;  // start of this day's heating
    double warm_s = never;   // time of the last heating
    double before_s = never;
    double last_w = 0.0;
    double heat_j = 0.0;
    for (const Reading& row : rows) {
        const auto power = power_of(row, ohm);
        if (!power) continue;
        const bool measured = row.sheath_c || row.store_c;
        if (!row.unix_time_s) {
            if (measured && *power > 0.05 * most_w) {
                found.push_back({*power, circuit.heat->store->charge_hours, 1.0, &row});
            }
            continue;
        }
        const double now_s = *row.unix_time_s;
        if (std::isnan(first_s)) first_s = now_s;
        const bool heats = *power > 0.05 * most_w;
        constexpr double night_s = 4.0 * hour_s;
        if (now_s - warm_s > night_s) begun_s = never;
        if (begun_s <= now_s) heat_j += 0.5 * (last_w + *power) * (now_s - before_s);
        before_s = now_s;
        if (heats && std::isnan(begun_s)) {
            begun_s = now_s;
            heat_j = 0.0;
        }
        if (heats) warm_s = now_s;
        last_w = *power;
        if (std::isnan(begun_s) || !heats || !measured) continue;
        const double seconds = now_s - begun_s;
        constexpr double longest_h = 10.0;
        if (seconds < hour_s || seconds > longest_h * hour_s) continue;
        const double days = 1.0 + std::floor((begun_s - first_s) / hour_s / day_h + 0.5);
        found.push_back({heat_j / seconds, seconds / hour_s, std::min(days, 14.0), &row});
    }
    if (found.size() <= most_rows) return found;
    std::vector<HeatRow> spread;
    for (std::size_t i = 0; i < most_rows; ++i) {
        spread.push_back(found[i * (found.size() - 1) / (most_rows - 1)]);
    }
    return spread;
}

/// The store with its fill's conductivity times a factor.
BedCharge scaled_charge(const BankHeat& heat, double factor) {
    Medium medium = heat.store->medium;
    medium.k20_w_mk *= factor;
    for (TablePoint& point : medium.conductivity_w_mk) point.value *= factor;
    medium.k20_low_w_mk.reset();
    medium.k20_high_w_mk.reset();
    BedCharge charge = heat.likely;
    charge.fill = bed_fill(medium, ConductivityEnd::typical);
    return charge;
}

double misfit_at(const BankHeat& heat, const std::vector<HeatRow>& rows, double factor,
                 double error_k) {
    BedCharge charge = scaled_charge(heat, factor);
    double sum = 0.0;
    for (const HeatRow& row : rows) {
        charge.hours = row.hours;
        charge.days = row.days;
        const BedTemperatures there = bed_temperatures(charge, row.power_w, false);
        const auto add = [&](const std::optional<double>& read, double model) {
            if (!read) return;
            const double error =
                std::hypot(error_k, closed_form_error * std::fabs(model - charge.air_c));
            const double r = std::fabs(*read - model) / error;
            constexpr double beyond = 3.0;
            sum += r <= beyond ? r * r : beyond * (2.0 * r - beyond);
        };
        add(row.reading->sheath_c, there.sheath_c);
        add(row.reading->store_c, there.bed_mean_c);
    }
    return sum;
}

/// Minimum of a function with a single minimum between two ends, and its place.
template <class Function>
std::pair<double, double> least_of(const Function& function, double low, double high) {
    const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
    double a = high - golden * (high - low);
    double b = low + golden * (high - low);
    double at_a = function(a);
    double at_b = function(b);
    constexpr int steps = 24;
    for (int step = 0; step < steps; ++step) {
        if (at_a < at_b) {
            high = b;
            b = a;
            at_b = at_a;
            a = high - golden * (high - low);
            at_a = function(a);
        } else {
            low = a;
            a = b;
            at_a = at_b;
            b = low + golden * (high - low);
            at_b = function(b);
        }
    }
    return at_a < at_b ? std::pair{a, at_a} : std::pair{b, at_b};
}

}  // namespace

FillEvidence fill_evidence(const Circuit& circuit, const std::vector<Reading>& rows,
                           const DiagnosisOptions& options) {
    FillEvidence found;
    std::size_t temperatures = 0;
    for (const Reading& row : rows) {
        temperatures += (row.sheath_c ? 1U : 0U) + (row.store_c ? 1U : 0U);
    }
    if (temperatures == 0) return found;
    const auto leave = [&](Sentence why) {
        found.remarks.push_back(say<"diagnosis.temperatures_left">(count_of<"all">(temperatures),
                                                                   with<"why">(std::move(why))));
    };
    const auto& heat = circuit.heat;
    if (!heat || !heat->known() || heat->liquid) {
        leave(heat && heat->liquid ? say<"diagnosis.liquid_store">() : say<"diagnosis.no_store">());
        return found;
    }
    if (!heat->store->others.empty()) {
        leave(say<"diagnosis.shared_store">());
        return found;
    }
    const std::vector<HeatRow> used = heat_rows(circuit, rows);
    if (used.empty()) {
        leave(say<"diagnosis.no_power">());
        return found;
    }
    for (const HeatRow& row : used) {
        found.readings += (row.reading->sheath_c ? 1U : 0U) + (row.reading->store_c ? 1U : 0U);
    }
    if (found.readings < temperatures) {
        found.remarks.push_back(say<"diagnosis.temperatures">(count_of<"used">(found.readings),
                                                              count_of<"all">(temperatures)));
    }
    const Medium& medium = heat->store->medium;
    const double typical = medium.k20_w_mk;
    const double below = std::log(medium.k20_low_w_mk.value_or(0.75 * typical) / typical) / 2.0;
    const double above = std::log(medium.k20_high_w_mk.value_or(1.3 * typical) / typical) / 2.0;
    const auto free = [&](double ln) {
        return misfit_at(*heat, used, std::exp(ln), options.temperature_k);
    };
    const auto held = [&](double ln) {
        constexpr double least = 0.02;
        const double r = ln / std::max(least, ln < 0.0 ? -below : above);
        return free(ln) + r * r;
    };
    const double widest = std::log(8.0);
    found.misfit_within = least_of(held, -0.7, 0.7).second;
    const auto [ln, misfit] = least_of(free, -widest, widest);
    found.misfit_free = misfit;
    // Two standard deviations, by the curvature at the minimum.
    constexpr double step = 0.05;
    const double curve = (free(ln + step) + free(ln - step) - 2.0 * misfit) / (step * step);
    const double deviation = curve > 0.0 ? std::min(std::sqrt(2.0 / curve), widest) : widest;
    found.k20 = {.name = say<"diagnosis.k_of_fill">(with<"cold">(fill_cold_c, unit::celsius)),
                 .value = typical * std::exp(ln),
                 .low = typical * std::exp(ln - 2.0 * deviation),
                 .high = typical * std::exp(ln + 2.0 * deviation),
                 .unit = unit::watt_per_m_k};
    found.evidence.push_back(say<"diagnosis.fill_asked">(
        count_of<"used">(found.readings), with<"fitted">(found.k20.value, found.k20.unit),
        with<"medium">(medium.id), with<"listed">(typical, unit::watt_per_m_k)));
    return found;
}

}  // namespace heatmatch
