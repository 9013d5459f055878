#include "heatmatch/operation/diagnosis/diagnosis.hpp"

#include "fault_text.hpp"
#include "fault_variants.hpp"
#include "fill_fit.hpp"
#include "next_measurement.hpp"
#include "other_bank.hpp"
#include "sentences.hpp"
#include "usable_rows.hpp"
#include "weights.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/shown_word.hpp"

namespace heatmatch {

using diagnosis_sentences::say;

namespace {

void check_options(const DiagnosisOptions& options) {
    const auto check = [](const char* field, double value, double low, double high) {
        if (std::isfinite(value) && value >= low && value <= high) return;
        throw InvalidInput(
            ErrorDetail{.part = "diagnosis",
                        .field = field,
                        .value = format_number(value),
                        .allowed = "from " + format_number(low) + " to " + format_number(high),
                        .remedy = say<"diagnosis.error_of_meter">()});
    };
    check("volt_share", options.volt_share, 0.0, 0.5);
    check("volt_v", options.volt_v, 1e-4, 100.0);
    check("ampere_share", options.ampere_share, 0.0, 0.5);
    check("ampere_a", options.ampere_a, 1e-5, 10.0);
    check("irradiance_share", options.irradiance_share, 0.001, 0.5);
    check("panel_temperature_k", options.panel_temperature_k, 0.1, 50.0);
    check("ohm_share", options.ohm_share, 0.0, 0.5);
    check("ohm_ohm", options.ohm_ohm, 1e-5, 100.0);
    check("temperature_k", options.temperature_k, 0.1, 100.0);
    check("threshold", options.threshold, 0.0, 100.0);
    check("most_rows", static_cast<double>(options.most_rows), 1.0, 1000.0);
    check("typical_sun_w_m2", options.typical_sun_w_m2, 50.0, 1400.0);
}

/// A circuit whose panels or elements are not known cannot be compared with readings.
void check_is_computed(const Circuit& circuit) {
    const auto check = [](bool known, const char* field) {
        if (known) return;
        throw InvalidInput(ErrorDetail{.part = "circuit",
                                       .field = field,
                                       .value = "(missing)",
                                       .allowed = "known",
                                       .remedy = say<"diagnosis.give_candidate">()});
    };
    check_equal_panels(circuit, "array");
    check(circuit.has_panels(), "panel");
    check(circuit.bank.unlike || circuit.bank.each.typical_ohm > 0.0, "element");
    if (!circuit.bank.unlike) return;
    throw InvalidInput(ErrorDetail{.part = "circuit",
                                   .field = "elements",
                                   .value = circuit.bank.label(),
                                   .allowed = "equal elements",
                                   .remedy = say<"diagnosis.equal_elements">()});
}

/// Explanations, one of each kind, with their fits.
struct BestOfKinds {
    std::vector<FaultVariant> variants{};
    std::vector<VariantFit> fits{};
};

/// Whether two explanations predict the same readings: root mean square difference of two errors.
bool alike(const FitProblem& problem, const VariantFit& a, const VariantFit& b) {
    double sum = 0.0;
    int count = 0;
    for (std::size_t i = 0; i < problem.rows.size(); ++i) {
        const FitRow& row = problem.rows[i];
        const Values of_a =
            predict(a.plant, a.rows[i].irradiance_w_m2, a.rows[i].cell_c, row.wanted);
        const Values of_b =
            predict(b.plant, b.rows[i].irradiance_w_m2, b.rows[i].cell_c, row.wanted);
        for (std::size_t k = 0; k < quantities; ++k) {
            if (std::isnan(row.read[k])) continue;
            const double apart = residual(a.plant, row, of_a, k) - residual(b.plant, row, of_b, k);
            sum += apart * apart;
            ++count;
        }
    }
    constexpr double same = 4.0;
    return count == 0 || sum <= same * count;
}

/// Misfit plus the penalty of an explanation; a fault too small to count as one has a higher
/// penalty.
double score_of(const FaultVariant& variant, const VariantFit& fit) {
    constexpr double too_small = 3.0;
    return fit.misfit + variant.rarity + static_cast<double>(variant.parameters.size()) +
           (at_mildest(variant, fit) ? too_small : 0.0);
}

/// The best variant of every kind.
BestOfKinds best_of_kinds(const FitProblem& problem, const Circuit& circuit,
                          const Progress& progress) {
    BestOfKinds best;
    std::vector<FaultVariant> variants = fault_variants(circuit, problem);
    double fitted = 0.0;
    const Pulse pulse = [&] {
        // Share of the progress after which little time is needed.
        constexpr double most = 0.99;
        tell_progress(progress, most * fitted / static_cast<double>(variants.size()));
    };
    for (FaultVariant& variant : variants) {
        VariantFit fit = fit_variant(problem, variant, pulse);
        fitted += 1.0;
        std::size_t at = 0;
        while (at < best.variants.size() && best.variants[at].kind != variant.kind) ++at;
        if (at == best.variants.size()) {
            best.variants.push_back(std::move(variant));
            best.fits.push_back(std::move(fit));
        } else if (score_of(variant, fit) < score_of(best.variants[at], best.fits[at])) {
            best.variants[at] = std::move(variant);
            best.fits[at] = std::move(fit);
        }
    }
    return best;
}

Hypothesis fill_hypothesis(const FillEvidence& fill, double electrical_misfit) {
    constexpr double rarity = 1.0;
    constexpr int digits = 2;
    const FittedValue& k = fill.k20;
    return {.kind = FaultKind::fill_conductivity,
            .name = std::string(word_of(FaultKind::fill_conductivity)),
            .sentence = say<"diagnosis.fill">(with<"k">(k.value, k.unit, digits),
                                              with<"cold">(fill_cold_c, unit::celsius)),
            .misfit = electrical_misfit + fill.misfit_free,
            .score = electrical_misfit + fill.misfit_free + 1.0 + rarity,
            .fitted = {k},
            .evidence = fill.evidence};
}

/// Which measurement served as the irradiance.
void tell_sun(Diagnosis& diagnosis, const FitProblem& problem) {
    bool live = false, sun = false, shorted = false;
    for (const FitRow& row : problem.rows) {
        live = live || row.live();
        sun = sun || !std::isnan(row.read[irradiance]);
        shorted = shorted || !std::isnan(row.read[short_a]);
    }
    if (!live || sun) return;
    diagnosis.remarks.push_back(shorted ? say<"diagnosis.sun_by_current">()
                                        : say<"diagnosis.sun_fitted">());
}

/// `a, b or c`, those of the first group from the given one on.
Sentence fault_list(const Diagnosis& diagnosis, std::size_t from) {
    Sentences faults;
    for (std::size_t i = from; i < diagnosis.group; ++i) {
        faults.push_back(sentence_of(Name{shown_word(diagnosis.ranked[i].name)}));
    }
    if (faults.size() < 2) return faults.empty() ? Sentence{} : faults.front();
    const Sentence last = faults.back();
    faults.pop_back();
    return say<"diagnosis.or">(with<"some">(std::move(faults)), with<"last">(last));
}

void tell_verdict(Diagnosis& diagnosis, const Judged& judged) {
    const Hypothesis& best = diagnosis.ranked.front();
    const bool fine = best.kind == FaultKind::as_expected;
    const Sentence partly = fine ? partly_judged(judged) : Sentence{};
    if (diagnosis.unexplained) {
        diagnosis.verdict = say<"diagnosis.unexplained">(with<"fault">(shown_word(best.name)));
        return;
    }
    if (!diagnosis.indistinguishable) {
        diagnosis.verdict = partly.empty() ? best.sentence : partly;
        return;
    }
    // The expected state comes first, although other explanations may fit as well.
    const auto faults = with<"faults">(fault_list(diagnosis, fine ? 1 : 0));
    const auto judged_so =
        with<"judged">(partly.empty() ? say<"diagnosis.readings_fit">() : partly);
    diagnosis.verdict = fine ? say<"diagnosis.cannot_tell_fine">(judged_so, faults)
                             : say<"diagnosis.indistinguishable">(faults);
    if (!diagnosis.next.empty()) {
        diagnosis.verdict = sentence_of(
            {diagnosis.verdict,
             say<"diagnosis.measure_next">(with<"reading">(diagnosis.next.front().reading))});
    }
}

}  // namespace

Diagnosis diagnose(const Candidate& candidate, const Readings& readings,
                   const DiagnosisOptions& options) {
    check_options(options);
    const Circuit& circuit = candidate.circuit;
    check_is_computed(circuit);
    const Readings checked = check_readings(readings, candidate);
    Diagnosis diagnosis{.remarks = checked.remarks};
    FitProblem problem = sound_problem(circuit, diagnosis.remarks);
    std::size_t count = 0;
    for (const Reading& reading : chosen_rows(checked.rows, options.most_rows, diagnosis.remarks)) {
        problem.rows.push_back(fit_row(reading, options));
        for (const double value : problem.rows.back().read) count += std::isnan(value) ? 0U : 1U;
    }
    const FillEvidence fill = fill_evidence(circuit, checked.rows, options);
    diagnosis.remarks.insert(diagnosis.remarks.end(), fill.remarks.begin(), fill.remarks.end());
    if (problem.rows.empty() && fill.readings == 0) {
        throw InvalidInput(ErrorDetail{
            .part = "readings",
            .field = "rows",
            .value = std::to_string(checked.rows.size()) + " without a usable reading",
            .allowed = "at least one of bank_v, bank_a, array_v, open_v, short_a, element_ohm or "
                       "bank_ohm",
            .remedy = say<"diagnosis.measure_bank">()});
    }
    tell_sun(diagnosis, problem);
    if (!circuit.bank.each.fixed) {
        diagnosis.remarks.push_back(
            say<"diagnosis.changing_ohms">(with<"element">(circuit.bank.element.id)));
    }
    const Judged judged = judged_by(problem);
    const BestOfKinds best = best_of_kinds(problem, circuit, options.progress);
    struct Entry {
        Hypothesis hypothesis;
        std::size_t index;
        bool same;
    };
    std::vector<Entry> entries;
    for (std::size_t i = 0; i < best.variants.size(); ++i) {
        const FaultVariant& variant = best.variants[i];
        const VariantFit& fit = best.fits[i];
        const double misfit = fit.misfit + fill.misfit_within;
        entries.push_back(
            {{.kind = variant.kind,
              .name = std::string(word_of(variant.kind)),
              .sentence = fault_sentence(variant, fit, circuit, judged, options.parts),
              .misfit = misfit,
              .score = score_of(variant, fit) + fill.misfit_within,
              .fitted = fitted_values(variant, fit, judged),
              .evidence = evidence_of(problem, fit)},
             i,
             false});
    }
    if (fill.readings > 0)
        entries.push_back({fill_hypothesis(fill, best.fits[0].misfit), 0, false});
    const auto by_score = [](const Entry& a, const Entry& b) {
        return a.hypothesis.score < b.hypothesis.score;
    };
    std::stable_sort(entries.begin(), entries.end(), by_score);
    const double least = entries.front().hypothesis.score;
    const bool sound = entries.front().hypothesis.kind == FaultKind::as_expected;
    const std::size_t carrying = problem.rows.size() + fill.readings;
    for (Entry& entry : entries) {
        entry.hypothesis.weight = carried_weight(entry.hypothesis.score - least, carrying);
        const bool asked_for = !sound || entry.hypothesis.kind == FaultKind::fill_conductivity ||
                               !at_mildest(best.variants[entry.index], best.fits[entry.index]);
        entry.same = asked_for && entry.hypothesis.score <= least + options.threshold &&
                     alike(problem, best.fits[entry.index], best.fits[entries.front().index]);
    }
    std::stable_partition(entries.begin(), entries.end(), [](const Entry& e) { return e.same; });
    diagnosis.group = static_cast<std::size_t>(
        std::count_if(entries.begin(), entries.end(), [](const Entry& e) { return e.same; }));
    diagnosis.indistinguishable = diagnosis.group > 1;
    const Sentence wild = wild_readings(problem, best.fits[entries.front().index]);
    if (!wild.empty()) diagnosis.remarks.push_back(wild);
    std::vector<Explained> compared;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const bool of_circuit = entries[i].hypothesis.kind != FaultKind::fill_conductivity;
        if (i < std::max<std::size_t>(diagnosis.group, 2) && of_circuit) {
            compared.push_back({&best.variants[entries[i].index], &best.fits[entries[i].index]});
        }
        diagnosis.ranked.push_back(std::move(entries[i].hypothesis));
    }
    share_weights(diagnosis);
    if (carrying == 1) diagnosis.remarks.push_back(one_reading_said());
    diagnosis.bank_ohms = bank_ohms_of(problem.rows, circuit.bank);
    diagnosis.next = next_measurements(problem, compared, circuit, options);
    const auto of_fill = [](const Hypothesis& each) {
        return each.kind == FaultKind::fill_conductivity;
    };
    const auto group_end = diagnosis.ranked.begin() + static_cast<std::ptrdiff_t>(diagnosis.group);
    if (diagnosis.indistinguishable && std::any_of(diagnosis.ranked.begin(), group_end, of_fill)) {
        diagnosis.next.push_back(fill_measurement());
    }
    count += fill.readings;
    // Fitting readings have a misfit of about one each, others ten and more.
    constexpr double unlikely = 3.0;
    const double misfit = diagnosis.ranked.front().misfit;
    diagnosis.unexplained = misfit > unlikely * static_cast<double>(count) + 8.0;
    tell_verdict(diagnosis, judged);
    tell_progress(options.progress, 1.0);
    return diagnosis;
}

}  // namespace heatmatch
