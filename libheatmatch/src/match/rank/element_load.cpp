#include "element_load.hpp"

namespace heatmatch {

namespace {

constexpr std::size_t bright_points = 256;
constexpr double table_error = 1e-3;

}  // namespace

ElementLoad::ElementLoad(const PanelInService& panel, const Site& site, VectorWidth width)
    : panel_(&panel), site_(&site) {
    const Panel& label = panel.panel;
    const WeatherNodes brightest{.irradiance_w_m2 = {site.bright_irradiance_w_m2},
                                 .base_c = {site.record_low_c + bright_cold_rise_k},
                                 .heating_irradiance_w_m2 = {0.0},
                                 .hours = {1000.0}};
    bright_ = EnergyCurve(brightest_panel(panel), *label.noct_c, brightest,
                          *label.v_mp / *label.i_mp, width, bright_points);
    table_ = bright_.table();
    ln_best_ = std::log(bright_.best_resistance_ohm());
    bright_most_w_ = table_.at(ln_best_) * (1.0 + table_error);
}

double ElementLoad::most_w(const ArrayNumbers& array, const BankNumbers& numbers) const {
    const double low = array.cold_ln_each(numbers.low_ohm, numbers.ln_low);
    const double high = array.cold_ln_each(numbers.high_ohm, numbers.ln_high);
    if (low <= ln_best_ && high >= ln_best_) return array.panels.count() * bright_most_w_;
    const double nearer = high < ln_best_ ? high : low;
    return array.panels.count() * table_.at_most(nearer) * (1.0 + table_error);
}

double ElementLoad::typical_at_least_w(const ArrayNumbers& array,
                                       const BankNumbers& numbers) const {
    const double ln_each = array.cold_ln_each(numbers.typical_ohm, numbers.ln_typical);
    const double share = numbers.typical_ohm / (numbers.typical_ohm + array.cold_wire_ohm);
    return array.panels.count() * table_.at(ln_each) * share * numbers.per_count *
           (1.0 - table_error);
}

bool ElementLoad::near_overloads(const ArrayNumbers& array, const BankNumbers& numbers,
                                 const ElementResistance& each, Hookup hookup) const {
    const double limit = numbers.power_w;
    const double most = most_w(array, numbers);
    if (most * numbers.largest_share < limit) return false;
    if (typical_at_least_w(array, numbers) > limit) return true;
    const double at_least = at_least_w(array, each, hookup);
    if (at_least > limit) return true;
    // Between the sampled resistances an element absorbs hardly more than at them, unless the
    // tolerance is wide.
    constexpr double between = 1.02;
    constexpr double wide = 1.5;
    if (each.high_ohm > wide * each.low_ohm) return exact_w(array, each, hookup) > limit;
    const double equal = most * numbers.per_count;
    if (std::max(at_least, equal) * between < limit) return false;
    // The number of resistances in the exact extremes, and equal elements at their best resistance.
    constexpr int exact_parts = 4;
    const double close = sampled_w(array, each, hookup, exact_parts);
    if (close * (1.0 - table_error) > limit) return true;
    constexpr double close_error = 3.0 * table_error;
    if (std::max(close, equal) * (1.0 + close_error) < limit) return false;
    return exact_w(array, each, hookup) > limit;
}

bool ElementLoad::near_overloads_survivor(const ArrayNumbers& array, const BankNumbers& numbers,
                                          const Bank& bank) const {
    const Hookup left = bank.hookup_left();
    const double factor = left.resistance_factor();
    const double low = bank.each.low_ohm * factor;
    const double high = bank.each.high_ohm * factor;
    const double typical = bank.each.typical_ohm * factor;
    const double share = largest_part(left.series, bank.each.low_ohm, bank.each.high_ohm) *
                         largest_part(left.parallel, bank.each.low_ohm, bank.each.high_ohm);
    const BankNumbers of_left{.ln_typical = std::log(typical),
                              .typical_ohm = typical,
                              .power_w = numbers.survivor_w,
                              .low_ohm = low,
                              .high_ohm = high,
                              .ln_low = std::log(low),
                              .ln_high = std::log(high),
                              .per_count = 1.0 / left.count(),
                              .largest_share = share};
    return near_overloads(array, of_left, bank.each, left);
}

double ElementLoad::exact_w(const ArrayNumbers& array, const ElementResistance& each,
                            Hookup hookup) const {
    return largest_element_power_w(bright_curve(*panel_, array.panels, *site_), hookup,
                                   array.cold_wire_ohm, each);
}

double ElementLoad::at_least_w(const ArrayNumbers& array, const ElementResistance& each,
                               Hookup hookup) const {
    return sampled_w(array, each, hookup, 2) * (1.0 - table_error);
}

double ElementLoad::sampled_w(const ArrayNumbers& array, const ElementResistance& each,
                              Hookup hookup, int parts) const {
    const double low = each.low_ohm;
    const double high = each.high_ohm;
    double largest = 0.0;
    const auto sample = [&](double own, double mate, double other) {
        const double branch = own + (hookup.series - 1) * mate;
        const double others = (hookup.parallel - 1) / (hookup.series * other);
        const double ohm = 1.0 / (1.0 / branch + others);
        const double total = ohm + array.cold_wire_ohm;
        const double array_w = array.panels.count() * table_.at(std::log(total) - array.ln_factor);
        const double share = ohm / branch;
        largest = std::max(largest, array_w / total * share * share * own);
    };
    for (int i = 0; i <= parts; ++i) {
        const double own = low + (high - low) * i / parts;
        sample(own, low, high);
        if (hookup.count() > 1) sample(own, high, low);
        if (hookup.series > 1 && hookup.parallel > 1) {
            sample(own, low, low);
            sample(own, high, high);
        }
    }
    return largest;
}

Extremes ElementLoad::exact(const ArrayNumbers& array, const Bank& bank) const {
    return extremes(bright_curve(*panel_, array.panels, *site_), bank, array.cold_wire_ohm);
}

}  // namespace heatmatch
