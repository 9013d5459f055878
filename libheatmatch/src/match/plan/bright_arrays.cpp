#include "bright_arrays.hpp"

#include <algorithm>

namespace heatmatch {

namespace {

/// Power of one element of `own_ohm`, with the others in its branch at their low ends and those of
/// other branches at their high ends.
template <class Curve>
double element_w(const Curve& bright, const Bank& bank, double wire_ohm, double own_ohm) {
    const double branch_ohm = own_ohm + (bank.hookup.series - 1) * bank.each.low_ohm;
    const double others_s = (bank.hookup.parallel - 1) / (bank.hookup.series * bank.each.high_ohm);
    const double bank_ohm = 1.0 / (1.0 / branch_ohm + others_s);
    const double own_a =
        bright.into_resistance(bank_ohm + wire_ohm).current_a * bank_ohm / branch_ohm;
    return own_a * own_a * own_ohm;
}

}  // namespace

const BrightArrays::Curve& BrightArrays::curve_of(std::size_t array, const Circuit& circuit,
                                                  const Site& site) {
    const auto known = curves_.find(array);
    if (known != curves_.end()) return known->second;
    if (!circuit.unlike) {
        return curves_.emplace(array, bright_curve(circuit.panel, circuit.panels, site))
            .first->second;
    }
    return curves_
        .emplace(array, circuit.unlike->curve(PanelState::brightest, site.bright_irradiance_w_m2,
                                              site.record_low_c + bright_cold_rise_k))
        .first->second;
}

double BrightArrays::element_at_least_w(std::size_t array, const Circuit& circuit, const Site& site,
                                        double more_ohm) {
    const double wire_ohm = circuit.wire_ohm_at(coldest_wire_c(site)) + more_ohm;
    return std::visit(
        [&](const auto& bright) {
            const ElementResistance& each = circuit.bank.each;
            return std::max(element_w(bright, circuit.bank, wire_ohm, each.low_ohm),
                            element_w(bright, circuit.bank, wire_ohm, each.high_ohm));
        },
        curve_of(array, circuit, site));
}

double BrightArrays::bank_at_least_w(std::size_t array, const Circuit& circuit, const Site& site,
                                     double more_ohm) {
    const double bank_ohm = circuit.bank.typical_ohm();
    const double load_ohm = bank_ohm + circuit.wire_ohm_at(coldest_wire_c(site)) + more_ohm;
    return std::visit(
        [&](const auto& bright) {
            const double current_a = bright.into_resistance(load_ohm).current_a;
            return current_a * current_a * bank_ohm;
        },
        curve_of(array, circuit, site));
}

}  // namespace heatmatch
