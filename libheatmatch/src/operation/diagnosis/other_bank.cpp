#include "other_bank.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "heatmatch/heat/element_resistance.hpp"

namespace heatmatch {

using diagnosis_sentences::count_of;
using diagnosis_sentences::say;

namespace {

constexpr double described_cold_c = 20.0;

ElementResistance cold_ohms_of(const Element& element, const Alloy* alloy) {
    return element_resistance(element, alloy, described_cold_c);
}

/// Resistance outside the tolerance, above or below.
void add_another_element(std::vector<FaultVariant>& variants, const Bank& bank) {
    const ElementResistance cold = cold_ohms_of(bank.element, bank.alloy ? &*bank.alloy : nullptr);
    constexpr double least = 0.1;  // beyond the typical resistance, and half a tolerance more than
                                   // it
    constexpr double beyond = 1.5;
    constexpr double widest = 40.0;
    const auto away = [&](double end) {
        return std::max(least, beyond * std::fabs(std::log(end / cold.typical_ohm)));
    };
    const double typical = cold.typical_ohm;
    const double more = typical * std::exp(away(cold.high_ohm));
    const double less = typical * std::exp(-away(cold.low_ohm));
    const auto apply = [](Plant& plant, const double* ohm) {
        plant.bank_ohm *= ohm[0] / plant.element_ohm;
        plant.element_ohm = ohm[0];
    };
    constexpr double rarity = 1.5;
    const auto add = [&](double low, double high, bool mild_at_high,
                         std::vector<std::vector<double>> starts) {
        variants.push_back({.kind = FaultKind::another_element,
                            .rarity = rarity,
                            .parameters = {{.name = say<"diagnosis.ohms_of_element">(),
                                            .low = low,
                                            .high = high,
                                            .unit = unit::ohm,
                                            .logarithm = true,
                                            .mild_at_high = mild_at_high}},
                            .starts = std::move(starts),
                            .apply = apply});
    };
    add(more, widest * more, false, {{1.3 * more}, {4.0 * more}});
    add(less / widest, less, true, {{less / 1.3}, {less / 4.0}});
}

/// More or fewer branches, or more or fewer in series.
void add_another_number(std::vector<FaultVariant>& variants, const Hookup& own) {
    const auto add = [&](const Hookup& found, int away) {
        constexpr double first = 1.5;
        constexpr double each_more = 0.3;
        const int count = found.count();
        variants.push_back({.kind = FaultKind::another_number_of_elements,
                            .rarity = first + each_more * (away - 1),
                            .apply =
                                [found](Plant& plant, const double*) {
                                    plant.bank_ohm = plant.element_ohm * found.resistance_factor();
                                },
                            .count = count,
                            .words = say<"diagnosis.elements">(with<"found">(found.label())),
                            .hookup = found});
    };
    const auto most = [](int n) { return std::max(2 * n, n + 2); };
    for (int p = 1; p <= most(own.parallel); ++p) {
        if (p != own.parallel) add({own.series, p}, std::abs(p - own.parallel));
    }
    for (int s = 1; s <= most(own.series); ++s) {
        if (s != own.series) add({s, own.parallel}, std::abs(s - own.series));
    }
}

}  // namespace

void add_other_banks(std::vector<FaultVariant>& variants, const Circuit& circuit) {
    add_another_element(variants, circuit.bank);
    add_another_number(variants, circuit.bank.hookup);
}

Sentence another_element_sentence(const Circuit& circuit, const FittedValue& ohms,
                                  const Parts* parts) {
    const Bank& bank = circuit.bank;
    const ElementResistance own = cold_ohms_of(bank.element, bank.alloy ? &*bank.alloy : nullptr);
    Sentence next = say<"diagnosis.read_nameplate">();
    if (parts != nullptr) {
        std::vector<std::pair<double, std::string>> fitting;
        for (const Element& element : parts->elements) {
            const auto alloy = std::find_if(parts->alloys.begin(), parts->alloys.end(),
                                            [&](const Alloy& a) { return a.id == element.alloy; });
            const ElementResistance its =
                cold_ohms_of(element, alloy == parts->alloys.end() ? nullptr : &*alloy);
            if (!its.fixed || ohms.high < its.low_ohm || ohms.low > its.high_ohm) continue;
            fitting.emplace_back(std::fabs(std::log(its.typical_ohm / ohms.value)), element.id);
        }
        std::sort(fitting.begin(), fitting.end());
        constexpr std::size_t most = 3;
        Sentences names;
        for (std::size_t i = 0; i < std::min(most, fitting.size()); ++i) {
            names.push_back(sentence_of(Name{fitting[i].second}));
        }
        const std::size_t more = fitting.size() - names.size();
        if (names.empty()) {
            next = say<"diagnosis.none_named">(with<"next">(next));
        } else if (fitting.size() == 1) {
            next = say<"diagnosis.named_one">(with<"names">(std::move(names)), with<"next">(next));
        } else if (more == 0) {
            next = say<"diagnosis.named">(with<"names">(std::move(names)), with<"next">(next));
        } else {
            next = say<"diagnosis.named_and_more">(with<"names">(std::move(names)),
                                                   count_of<"more">(more), with<"next">(next));
        }
    }
    return say<"diagnosis.another_element">(with<"ohms">(ohms.value, unit::ohm),
                                            with<"described">(own.typical_ohm, unit::ohm),
                                            with<"next">(next));
}

Sentence bank_ohms_of(const std::vector<FitRow>& rows, const Bank& bank) {
    double volts = 0.0;
    double amperes = 0.0;
    double error_v = 0.0;
    double error_a = 0.0;
    for (const FitRow& row : rows) {
        if (std::isnan(row.read[bank_v]) || std::isnan(row.read[bank_a])) continue;
        volts += row.read[bank_v];
        amperes += row.read[bank_a];
        error_v += row.sigma[bank_v];
        error_a += row.sigma[bank_a];
    }
    constexpr double surely = 2.0;
    if (volts <= surely * error_v) return {};
    const auto described = with<"described">(bank.typical_ohm(), unit::ohm);
    const auto low = with<"low">({bank.low_ohm(), unit::ohm, 3, Shown::number});
    const auto high = with<"high">(bank.high_ohm(), unit::ohm);
    if (amperes <= surely * error_a) return say<"diagnosis.bank_ohms_open">(described, low, high);
    const double ohms = volts / amperes;
    return say<"diagnosis.bank_ohms">(with<"read">(ohms, unit::ohm), described, low, high,
                                      with<"times">(ohms / bank.typical_ohm(), unit::none));
}

}  // namespace heatmatch
