#include "fault_text.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/operation/meter/readings.hpp"

namespace heatmatch {

namespace {

std::string q(double value, const Unit& unit) {
    return format_quantity(value, unit, UnitSystem::si, 3);
}

std::string percent(double share) {
    return format_number(100.0 * share, 2) + '%';
}

struct QuantityName {
    std::size_t quantity = 0;
    const char* name = "";
    Unit unit{};
};
constexpr auto names = std::to_array<QuantityName>({
    {array_v, "volts at the array", unit::volt},
    {bank_v, "volts at the bank", unit::volt},
    {bank_a, "amperes", unit::ampere},
    {open_v, "open volts", unit::volt},
    {short_a, "short-circuit amperes", unit::ampere},
    {element_ohm, "ohms of an element", unit::ohm},
    {bank_ohm, "ohms of the bank", unit::ohm},
    {irradiance, "sun", unit::watt_per_m2},
    {panel_temperature, "back of the panel", unit::celsius},
});

std::string hot_ohms(const VariantFit& fit) {
    return q(fit.plant.bank_ohm * fit.plant.hot_ratio, unit::ohm);
}

}  // namespace

std::string_view fault_name(FaultKind kind) {
    switch (kind) {
        case FaultKind::as_expected:
            return "as expected";
        case FaultKind::element_open:
            return "element open";
        case FaultKind::turns_shorted:
            return "turns shorted";
        case FaultKind::section_bypassed:
            return "section bypassed";
        case FaultKind::panel_missing:
            return "panel missing";
        case FaultKind::hot_joint:
            return "hot joint";
        case FaultKind::low_sun:
            return "low sun";
        case FaultKind::dirt:
            return "dirt";
        case FaultKind::aged:
            return "aged";
        case FaultKind::panels_hooked_otherwise:
            return "panels hooked otherwise";
        case FaultKind::bank_hooked_otherwise:
            return "bank hooked otherwise";
        case FaultKind::fill_conductivity:
            return "fill conductivity";
    }
    return "";
}

std::vector<FittedValue> fitted_values(const FaultVariant& variant, const VariantFit& fit) {
    std::vector<FittedValue> fitted;
    for (std::size_t p = 0; p < variant.parameters.size(); ++p) {
        const FaultParameter& parameter = variant.parameters[p];
        const auto value_at = [&](double x) {
            const double value = parameter.logarithm ? std::exp(x) : x;
            return std::clamp(value, parameter.low, parameter.high);
        };
        const double x = fit.x[nuisances + p];
        const double two = 2.0 * fit.deviation[nuisances + p];
        fitted.push_back({.name = parameter.name,
                          .value = value_at(x),
                          .low = value_at(x - two),
                          .high = value_at(x + two),
                          .unit = parameter.unit});
    }
    if (variant.count > 0 && variant.parameters.empty()) {
        const double count = variant.count;
        fitted.push_back({variant.words, count, count, count, unit::count});
    }
    return fitted;
}

std::string fault_sentence(const FaultVariant& variant, const VariantFit& fit,
                           const Circuit& circuit) {
    const auto fitted = [&](std::size_t p) {
        const double x = fit.x[nuisances + p];
        return variant.parameters[p].logarithm ? std::exp(x) : x;
    };
    switch (variant.kind) {
        case FaultKind::as_expected:
            return "The circuit does what is expected of it, with " + hot_ohms(fit) +
                   " of bank: nothing to do.";
        case FaultKind::element_open:
            return "An element is open: no current in " + variant.words +
                   ". Disconnect it and measure the ohms of each element and of its leads.";
        case FaultKind::turns_shorted:
            return "Turns of an element are shorted, about " + percent(fitted(0)) +
                   " of one; the bank has " + hot_ohms(fit) +
                   ". Measure the ohms of each element cold, and its insulation to the sheath.";
        case FaultKind::section_bypassed:
            return "A panel has lost volts: " + variant.words +
                   ". Read the open volts of each panel in the same sun, and look at its box for a "
                   "burnt diode or ribbon.";
        case FaultKind::panel_missing:
            return "Part of the array does not take part: " + variant.words +
                   ". Read each string's open volts and amperes, and look for a loose plug.";
        case FaultKind::hot_joint: {
            const double ohm = fitted(0);
            return "A joint or wire has about " + q(ohm, unit::ohm) + " too much, " +
                   variant.words +
                   ". Open the isolator if anything smells or is too hot to touch; else touch-scan "
                   "the joints with an infrared meter while it heats, and remake the hot one.";
        }
        case FaultKind::low_sun:
            return "About " + percent(fitted(0)) +
                   " of the sun that was measured or believed falls on the cells: shade, haze, or "
                   "a "
                   "meter in another plane. Look along the panels for shade and hold the meter in "
                   "their plane.";
        case FaultKind::dirt:
            return "The cells make about " + percent(fitted(0)) +
                   " of the current: dirt or snow on all panels. Clean one and compare its Isc "
                   "with "
                   "another's.";
        case FaultKind::aged:
            return "The panels have aged: about " + percent(fitted(0)) +
                   " of the current believed and " + q(fitted(1), unit::ohm) +
                   " more in each panel. Measure Voc, Isc, sun and temperature of one and enter "
                   "them; more ohms of bank may now suit better.";
        case FaultKind::panels_hooked_otherwise:
            return "The panels are hooked up " + variant.hookup.label() + ", not " +
                   circuit.panels.label() +
                   ". Trace the wires, then correct them or the description.";
        case FaultKind::bank_hooked_otherwise:
            return "The elements are hooked up " + variant.hookup.label() + ", not " +
                   circuit.bank.hookup.label() +
                   ". Trace the wires, then correct them or the description.";
        case FaultKind::fill_conductivity:
            return "";
    }
    return "";
}

Sentences evidence_of(const FitProblem& problem, const VariantFit& fit) {
    Sentences lines;
    double volts = 0.0;
    double amperes = 0.0;
    std::array<double, quantities> read{};
    std::array<double, quantities> told{};
    std::array<double, quantities> squares{};
    std::array<int, quantities> count{};
    for (std::size_t i = 0; i < problem.rows.size(); ++i) {
        const FitRow& row = problem.rows[i];
        const SunAndCells& state = fit.rows[i];
        const Values predicted =
            predict(fit.plant, state.irradiance_w_m2, state.cell_c, row.wanted);
        const bool both = !std::isnan(row.read[bank_v]) && !std::isnan(row.read[bank_a]);
        if (both) {
            volts += row.read[bank_v];
            amperes += row.read[bank_a];
        }
        for (std::size_t k = 0; k < quantities; ++k) {
            if (std::isnan(row.read[k])) continue;
            double model = predicted[k];
            const double faulty = fit.plant.faulty_element_ohm;
            const bool may_be = k == element_ohm && fit.plant.measured != Measured::sound;
            if (may_be && (fit.plant.measured == Measured::faulty ||
                           std::fabs(faulty - row.read[k]) < std::fabs(model - row.read[k]))) {
                model = faulty;
            }
            const double r = residual(fit.plant, row, predicted, k);
            read[k] += row.read[k];
            told[k] += model;
            squares[k] += r * r;
            ++count[k];
        }
    }
    constexpr double least_a = 0.05;
    if (amperes > least_a) {
        lines.push_back("volts over amperes at the bank, the same in any sun: read " +
                        q(volts / amperes, unit::ohm) + ", predicted " + hot_ohms(fit));
    }
    for (const QuantityName& name : names) {
        const int n = count[name.quantity];
        if (n == 0) continue;
        const std::string rows = n > 1 ? " in the mean of " + std::to_string(n) + " rows" : "";
        lines.push_back(
            std::string(name.name) + rows + ": read " + q(read[name.quantity] / n, name.unit) +
            ", predicted " + q(told[name.quantity] / n, name.unit) + ", off by " +
            format_number(std::sqrt(squares[name.quantity] / n), 2) + " errors of the meter");
    }
    return lines;
}

std::string wild_readings(const FitProblem& problem, const VariantFit& fit) {
    constexpr double wild = 5.0;
    std::size_t count = 0;
    std::string first;
    for (std::size_t i = 0; i < problem.rows.size(); ++i) {
        const FitRow& row = problem.rows[i];
        const SunAndCells& state = fit.rows[i];
        const Values predicted =
            predict(fit.plant, state.irradiance_w_m2, state.cell_c, row.wanted);
        for (const QuantityName& name : names) {
            if (std::isnan(row.read[name.quantity])) continue;
            const double off = std::fabs(residual(fit.plant, row, predicted, name.quantity));
            if (off <= wild) continue;
            if (count == 0) {
                first = std::string(name.name) + ", read " + q(row.read[name.quantity], name.unit);
            }
            ++count;
        }
    }
    if (count == 0) return "";
    return std::to_string(count) + (count == 1 ? " reading is" : " readings are") +
           " more than 5 errors of the meter off the best explanation and hardly counted: " +
           first + (count == 1 ? "." : " and others.");
}

}  // namespace heatmatch
