#include "fault_variants.hpp"

#include "operation/meter/meter_checks.hpp"
#include "other_bank.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/heat/element_resistance.hpp"

namespace heatmatch {

using diagnosis_sentences::say;

namespace {

constexpr double cold_c = 20.0;

/// Half of the distance to the end of a band, which counts as two standard deviations, as a
/// logarithm.
double half_band(double end, double typical, double least) {
    return std::max(0.5 * std::fabs(std::log(end / typical)), least);
}

double stc_match_ohm(const Panel& panel) {
    return panel.v_mp.value_or(0.81 * panel.v_oc) / panel.i_mp.value_or(0.94 * panel.i_sc);
}

/// Number lost out of all; singular and plural have different sentences.
template <Word One, Word Many>
Sentence counted(int lost, int all) {
    if (lost == 1) {
        return say<One>(with<"lost">(lost, unit::count), with<"all">(all, unit::count));
    }
    return say<Many>(with<"lost">(lost, unit::count), with<"all">(all, unit::count));
}

void add_open(std::vector<FaultVariant>& variants, const Bank& bank) {
    const int branches = bank.hookup.parallel;
    for (int open = 1; open <= branches; ++open) {
        const double factor = open == branches ? std::numeric_limits<double>::infinity()
                                               : static_cast<double>(branches) / (branches - open);
        variants.push_back({.kind = FaultKind::element_open,
                            .rarity = 1.0 + 0.5 * (open - 1),
                            .apply =
                                [factor](Plant& plant, const double*) {
                                    plant.bank_ohm *= factor;
                                    plant.faulty_element_ohm =
                                        std::numeric_limits<double>::infinity();
                                },
                            .count = open,
                            .words = open == branches ? say<"diagnosis.whole_bank">()
                                                      : say<"diagnosis.branches">(
                                                            with<"open">(open, unit::count),
                                                            with<"all">(branches, unit::count))});
    }
}

void add_shorted(std::vector<FaultVariant>& variants, const Bank& bank) {
    const double s = bank.hookup.series;
    const double p = bank.hookup.parallel;
    const auto apply = [s, p](Plant& plant, const double* share) {
        const double each = plant.element_ohm;
        const double weak = 1.0 / ((s - share[0]) * each);
        plant.bank_ohm = 1.0 / ((p - 1.0) / (s * each) + weak);
        plant.faulty_element_ohm = (1.0 - share[0]) * each;
    };
    variants.push_back({.kind = FaultKind::turns_shorted,
                        .rarity = 1.0,
                        .parameters = {{say<"diagnosis.share_of_turns">(), 0.08, 0.97, unit::none}},
                        .starts = {{0.2}, {0.7}},
                        .apply = apply,
                        .count = 1});
}

/// One string has lost the voltage of that many panels.
void weaken_one_string(Plant& plant, double lost) {
    if (plant.parallel == 1) {
        plant.series -= lost;
        return;
    }
    plant.odd_series = plant.series - lost;
    --plant.parallel;
}

void add_sections(std::vector<FaultVariant>& variants, const Circuit& circuit) {
    const int n = sections_of(circuit.panel.panel);
    if (n < 2) return;
    const int most = std::min(2 * n, n * circuit.panels.series - 1);
    for (int lost = 1; lost <= most; ++lost) {
        const double panels = static_cast<double>(lost) / n;
        variants.push_back(
            {.kind = FaultKind::section_bypassed,
             .rarity = 1.0 + 0.3 * (lost - 1),
             .apply = [panels](Plant& plant, const double*) { weaken_one_string(plant, panels); },
             .count = lost,
             .words = counted<"diagnosis.section", "diagnosis.sections">(
                 lost, n * circuit.panels.series)});
    }
}

void add_missing(std::vector<FaultVariant>& variants, const Hookup& panels) {
    for (int lost = 1; lost <= std::min(2, panels.series - 1); ++lost) {
        variants.push_back(
            {.kind = FaultKind::panel_missing,
             .rarity = 1.0 + 0.5 * (lost - 1),
             .apply = [lost](Plant& plant, const double*) { weaken_one_string(plant, lost); },
             .count = lost,
             .words = counted<"diagnosis.panel", "diagnosis.panels">(lost, panels.series)});
    }
    for (int lost = 1; lost <= std::min(2, panels.parallel - 1); ++lost) {
        variants.push_back(
            {.kind = FaultKind::panel_missing,
             .rarity = 1.0 + 0.5 * (lost - 1),
             .apply = [lost](Plant& plant, const double*) { plant.parallel -= lost; },
             .count = lost,
             .string_lost = true,
             .words = counted<"diagnosis.string", "diagnosis.strings">(lost, panels.parallel)});
    }
}

void add_joint(std::vector<FaultVariant>& variants, double bank_ohm) {
    constexpr double smallest_share = 0.03;
    constexpr double smallest_ohm = 0.05;
    const FaultParameter ohms{.name = say<"diagnosis.extra_ohms">(),
                              .low = std::max(smallest_ohm, smallest_share * bank_ohm),
                              .high = std::max(1e4, 100.0 * bank_ohm),
                              .unit = unit::ohm,
                              .logarithm = true};
    const std::vector<std::vector<double>> starts{
        {std::max(ohms.low * 1.2, 0.1 * bank_ohm)}, {bank_ohm}, {20.0 * bank_ohm}};
    variants.push_back({.kind = FaultKind::hot_joint,
                        .rarity = 1.0,
                        .parameters = {ohms},
                        .starts = starts,
                        .apply = [](Plant& plant, const double* ohm) { plant.joint_ohm = ohm[0]; },
                        .words = say<"diagnosis.joint_at_bank">()});
    variants.push_back(
        {.kind = FaultKind::hot_joint,
         .rarity = 1.3,
         .parameters = {ohms},
         .starts = starts,
         .apply = [](Plant& plant, const double* ohm) { plant.array_joint_ohm = ohm[0]; },
         .words = say<"diagnosis.joint_in_array">()});
}

void add_panels(std::vector<FaultVariant>& variants, const Circuit& circuit) {
    const auto dim = [](Plant& plant, const double* factor) { plant.sun_factor = factor[0]; };
    const FaultParameter factor{.name = say<"diagnosis.sun_on_cells">(),
                                .low = 0.03,
                                .high = 0.93,
                                .unit = unit::none,
                                .mild_at_high = true};
    variants.push_back({.kind = FaultKind::low_sun,
                        .rarity = 0.5,
                        .parameters = {factor},
                        .starts = {{0.85}, {0.4}},
                        .apply = dim});
    variants.push_back({.kind = FaultKind::dirt,
                        .rarity = 0.5,
                        .parameters = {factor},
                        .starts = {{0.85}, {0.4}},
                        .apply = dim});
    const double ohm = stc_match_ohm(circuit.panel.panel);
    variants.push_back(
        {.kind = FaultKind::aged,
         .rarity = 1.0,
         .parameters = {{say<"diagnosis.current_left">(), 0.4, 0.95, unit::none, false, true},
                        {say<"diagnosis.ohms_of_panel">(), 0.05 * ohm, 1.5 * ohm, unit::ohm}},
         .starts = {{0.85, 0.15 * ohm}, {0.7, 0.5 * ohm}},
         .apply = [](Plant& plant, const double* p) {
             plant.diode = plant.diode.scaled(p[0], 1.0);
             plant.extra_series_ohm = p[1];
         }});
}

void add_hookups(std::vector<FaultVariant>& variants, const Circuit& circuit) {
    const auto others = [](const Hookup& own) {
        std::vector<Hookup> found;
        for (int series = 1; series <= own.count(); ++series) {
            if (own.count() % series != 0 || series == own.series) continue;
            found.push_back({.series = series, .parallel = own.count() / series});
        }
        return found;
    };
    for (const Hookup& hookup : others(circuit.panels)) {
        variants.push_back({.kind = FaultKind::panels_hooked_otherwise,
                            .rarity = 1.5,
                            .apply =
                                [hookup](Plant& plant, const double*) {
                                    plant.series = hookup.series;
                                    plant.parallel = hookup.parallel;
                                },
                            .hookup = hookup});
    }
    for (const Hookup& hookup : others(circuit.bank.hookup)) {
        variants.push_back({.kind = FaultKind::bank_hooked_otherwise,
                            .rarity = 1.5,
                            .apply =
                                [hookup](Plant& plant, const double*) {
                                    plant.bank_ohm = plant.element_ohm * hookup.resistance_factor();
                                },
                            .hookup = hookup});
    }
}

}  // namespace

int sections_of(const Panel& panel) {
    if (const auto known = bypass_sections(panel)) return *known;
    const bool silicon = !panel.technology || panel.technology == Technology::mono_si ||
                         panel.technology == Technology::multi_si ||
                         panel.technology == Technology::heterojunction;
    constexpr int usual_sections = 3;
    return silicon ? usual_sections : 1;
}

FitProblem sound_problem(const Circuit& circuit, Sentences& remarks) {
    const Bank& bank = circuit.bank;
    const Alloy* alloy = bank.alloy ? &*bank.alloy : nullptr;
    const ElementResistance cold = element_resistance(bank.element, alloy, cold_c);
    const ResistanceFactor factor = resistance_factor(alloy, bank.coil_temperature_c);
    const PanelInService& panel = circuit.panel;
    FitProblem problem;
    problem.sound = {.diode = panel.today,
                     .series = static_cast<double>(circuit.panels.series),
                     .parallel = circuit.panels.parallel,
                     .element_ohm = cold.typical_ohm,
                     .bank_ohm = cold.typical_ohm * bank.hookup.resistance_factor(),
                     .hot_ratio = bank.each.typical_ohm / cold.typical_ohm,
                     .wire_ohm = circuit.wire_ohm()};
    constexpr double least_ohms = 0.005;
    constexpr double least_ratio = 0.007;
    constexpr double least_current = 0.01;
    problem.priors[cold_ohms] = {half_band(cold.low_ohm, cold.typical_ohm, least_ohms),
                                 half_band(cold.high_ohm, cold.typical_ohm, least_ohms)};
    problem.priors[hot_over_cold] = {half_band(factor.low, factor.typical, least_ratio),
                                     half_band(factor.high, factor.typical, least_ratio)};
    problem.priors[panel_current] = {
        half_band(panel.current_factor_low, panel.current_factor, least_current),
        half_band(panel.current_factor_high, panel.current_factor, least_current)};
    constexpr double label_volts = 0.015;
    constexpr double read_volts = 0.01;
    const bool read = circuit.owned.measured && circuit.owned.measured->v_oc;
    const double volts = read ? read_volts : label_volts;
    problem.priors[panel_volts] = {volts, volts};
    if (!bypass_sections(panel.panel) && sections_of(panel.panel) > 1) {
        remarks.push_back(say<"diagnosis.sections_assumed">(with<"panel">(panel.panel.id)));
    }
    return problem;
}

std::vector<FaultVariant> fault_variants(const Circuit& circuit, const FitProblem& problem) {
    std::vector<FaultVariant> of_elements;
    add_open(of_elements, circuit.bank);
    add_shorted(of_elements, circuit.bank);
    const auto times_read =
        std::count_if(problem.rows.begin(), problem.rows.end(),
                      [](const FitRow& row) { return !std::isnan(row.read[element_ohm]); });
    std::vector<Measured> measured{Measured::sound};
    if (times_read > 0) measured.push_back(Measured::faulty);
    if (times_read > 1) measured.push_back(Measured::either);
    std::vector<FaultVariant> variants{{.kind = FaultKind::as_expected}};
    for (const FaultVariant& variant : of_elements) {
        for (const Measured which : measured) {
            const bool only_one = circuit.bank.hookup.count() == 1;
            if (only_one && times_read > 0 && which != Measured::faulty) continue;
            variants.push_back(variant);
            variants.back().apply = [apply = variant.apply, which](Plant& plant, const double* x) {
                apply(plant, x);
                plant.measured = which;
            };
        }
    }
    add_sections(variants, circuit);
    add_missing(variants, circuit.panels);
    add_joint(variants, circuit.bank.typical_ohm());
    add_panels(variants, circuit);
    add_hookups(variants, circuit);
    add_other_banks(variants, circuit);
    return variants;
}

}  // namespace heatmatch
