#include "fault_text.hpp"

#include "other_bank.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/operation/meter/readings.hpp"

namespace heatmatch {

using diagnosis_sentences::count_of;
using diagnosis_sentences::say;

namespace {

constexpr int two_digits = 2;

struct QuantityName {
    std::size_t quantity = 0;
    Sentence name{};
    Unit unit{};
};
const std::array<QuantityName, quantities>& names() {
    static const std::array<QuantityName, quantities> all{{
        {array_v, say<"diagnosis.array_v">(), unit::volt},
        {bank_v, say<"diagnosis.bank_v">(), unit::volt},
        {bank_a, say<"diagnosis.bank_a">(), unit::ampere},
        {open_v, say<"diagnosis.open_v">(), unit::volt},
        {short_a, say<"diagnosis.short_a">(), unit::ampere},
        {element_ohm, say<"diagnosis.element_ohm">(), unit::ohm},
        {bank_ohm, say<"diagnosis.bank_ohm">(), unit::ohm},
        {irradiance, say<"diagnosis.irradiance">(), unit::watt_per_m2},
        {panel_temperature, say<"diagnosis.panel_temperature">(), unit::celsius},
    }};
    return all;
}

double hot_ohm(const VariantFit& fit) {
    return fit.plant.bank_ohm * fit.plant.hot_ratio;
}

/// A share as a percentage.
template <Word Called>
NamedArgument<Called> percent(double share) {
    return with<Called>(100.0 * share, unit::percent, two_digits);
}

}  // namespace

Judged judged_by(const FitProblem& problem) {
    Judged judged;
    for (const FitRow& row : problem.rows) {
        const auto read = [&row](std::size_t k) { return !std::isnan(row.read[k]); };
        const bool both = read(bank_v) && read(bank_a);
        judged.sun = judged.sun || (row.live() && read(irradiance));
        judged.panels = judged.panels || read(short_a);
        judged.ratio = judged.ratio || both;
        judged.elements = judged.elements || both || read(bank_ohm) || read(element_ohm);
    }
    judged.panels = judged.panels || judged.sun;
    return judged;
}

Sentence partly_judged(const Judged& judged) {
    if (judged.panels && judged.elements) return {};
    if (judged.panels) return say<"diagnosis.panels_fit">();
    if (!judged.elements) return say<"diagnosis.none_judged">();
    return judged.ratio ? say<"diagnosis.ratio_fits">() : say<"diagnosis.ohms_fit">();
}

std::vector<FittedValue> fitted_values(const FaultVariant& variant, const VariantFit& fit,
                                       const Judged& judged) {
    const bool of_sun = variant.kind == FaultKind::low_sun || variant.kind == FaultKind::dirt;
    if (of_sun && !judged.sun) return {};
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

Sentence fault_sentence(const FaultVariant& variant, const VariantFit& fit, const Circuit& circuit,
                        const Judged& judged, const Parts* parts) {
    const auto fitted = [&](std::size_t p) {
        const double x = fit.x[nuisances + p];
        return variant.parameters[p].logarithm ? std::exp(x) : x;
    };
    switch (variant.kind) {
        case FaultKind::as_expected:
            return partly_judged(judged).empty()
                       ? say<"diagnosis.as_expected">(with<"bank">(hot_ohm(fit), unit::ohm))
                       : say<"diagnosis.as_described">(with<"bank">(hot_ohm(fit), unit::ohm));
        case FaultKind::element_open:
            return say<"diagnosis.element_open">(with<"where">(variant.words));
        case FaultKind::turns_shorted:
            return say<"diagnosis.turns_shorted">(percent<"share">(fitted(0)),
                                                  with<"bank">(hot_ohm(fit), unit::ohm));
        case FaultKind::section_bypassed:
            return say<"diagnosis.section_bypassed">(with<"lost">(variant.words));
        case FaultKind::panel_missing:
            return variant.string_lost
                       ? say<"diagnosis.string_missing">(with<"lost">(variant.words))
                       : say<"diagnosis.panel_missing">(with<"lost">(variant.words));
        case FaultKind::hot_joint:
            return say<"diagnosis.hot_joint">(with<"ohms">(fitted(0), unit::ohm),
                                              with<"where">(variant.words));
        case FaultKind::low_sun:
            return judged.sun ? say<"diagnosis.low_sun">(percent<"share">(fitted(0)))
                              : say<"diagnosis.low_sun_unread">();
        case FaultKind::dirt:
            return judged.sun ? say<"diagnosis.dirt">(percent<"share">(fitted(0)))
                              : say<"diagnosis.dirt_unread">();
        case FaultKind::aged:
            return say<"diagnosis.aged">(percent<"share">(fitted(0)),
                                         with<"ohms">(fitted(1), unit::ohm));
        case FaultKind::panels_hooked_otherwise:
            return say<"diagnosis.panels_hooked_otherwise">(
                with<"found">(variant.hookup.label()), with<"described">(circuit.panels.label()));
        case FaultKind::bank_hooked_otherwise:
            return say<"diagnosis.bank_hooked_otherwise">(
                with<"found">(variant.hookup.label()),
                with<"described">(circuit.bank.hookup.label()));
        case FaultKind::another_element:
            return another_element_sentence(circuit, fitted_values(variant, fit, judged).front(),
                                            parts);
        case FaultKind::another_number_of_elements:
            return say<"diagnosis.another_number">(with<"found">(variant.hookup.label()),
                                                   with<"described">(circuit.bank.hookup.label()));
        case FaultKind::fill_conductivity:
            return {};
    }
    return {};
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
        lines.push_back(say<"diagnosis.ratio">(with<"read">(volts / amperes, unit::ohm),
                                               with<"predicted">(hot_ohm(fit), unit::ohm)));
    }
    for (const QuantityName& name : names()) {
        const int n = count[name.quantity];
        if (n == 0) continue;
        const auto mean = with<"read">(read[name.quantity] / n, name.unit);
        const auto predicted = with<"predicted">(told[name.quantity] / n, name.unit);
        const auto off =
            with<"off">(std::sqrt(squares[name.quantity] / n), unit::count, two_digits);
        lines.push_back(
            n == 1 ? say<"diagnosis.read">(with<"reading">(name.name), mean, predicted, off)
                   : say<"diagnosis.read_in_mean">(with<"reading">(name.name),
                                                   with<"rows">(n, unit::count), mean, predicted,
                                                   off));
    }
    return lines;
}

Sentence wild_readings(const FitProblem& problem, const VariantFit& fit) {
    constexpr double wild = 5.0;
    std::size_t count = 0;
    const QuantityName* first = nullptr;
    double first_read = 0.0;
    for (std::size_t i = 0; i < problem.rows.size(); ++i) {
        const FitRow& row = problem.rows[i];
        const SunAndCells& state = fit.rows[i];
        const Values predicted =
            predict(fit.plant, state.irradiance_w_m2, state.cell_c, row.wanted);
        for (const QuantityName& name : names()) {
            if (std::isnan(row.read[name.quantity])) continue;
            const double off = std::fabs(residual(fit.plant, row, predicted, name.quantity));
            if (off <= wild) continue;
            if (count == 0) {
                first = &name;
                first_read = row.read[name.quantity];
            }
            ++count;
        }
    }
    if (first == nullptr) return {};
    const auto so_many = count_of<"count">(count);
    const auto errors = with<"errors">(wild);
    const auto reading = with<"reading">(first->name);
    const auto read = with<"read">(first_read, first->unit);
    return count == 1 ? say<"diagnosis.wild_one">(so_many, errors, reading, read)
                      : say<"diagnosis.wild">(so_many, errors, reading, read);
}

}  // namespace heatmatch
