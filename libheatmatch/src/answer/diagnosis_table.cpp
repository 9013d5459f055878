#include "heatmatch/answer/diagnosis_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr std::size_t most_measurements = 2;  // that are listed

}  // namespace

Table diagnosis_table(const Diagnosis& diagnosis) {
    Table table{.title = say<"explanations.title">(),
                .columns = {{.head = say<"explanations.explanation">()},
                            {.head = say<"explanations.weight">(), .number = true},
                            {.head = say<"explanations.misfit">(), .number = true},
                            TableColumn{}}};
    const std::size_t alike = diagnosis.indistinguishable ? diagnosis.group : 0;
    for (const Hypothesis& one : diagnosis.ranked) {
        table.rows.push_back(
            {name_cell(shown_word(one.name)), number_cell(one.weight, 2),
             number_cell(one.misfit, 1),
             table.rows.size() < alike ? say<"explanations.alike">() : Sentence{}});
    }
    return table;
}

Sentences diagnosis_sentences(const Diagnosis& diagnosis) {
    Sentences sentences;
    if (!diagnosis.bank_ohms.empty()) sentences.push_back(diagnosis.bank_ohms);
    for (std::size_t i = 0; i < std::min(diagnosis.group, diagnosis.ranked.size()); ++i) {
        sentences.push_back(diagnosis.ranked[i].sentence);
    }
    for (std::size_t i = 0; i < std::min(most_measurements, diagnosis.next.size()); ++i) {
        const NextMeasurement& next = diagnosis.next[i];
        sentences.push_back(
            say<"explanations.measure_next">(with<"reading">(next.reading), with<"how">(next.how),
                                             with<"predictions">(next.predictions)));
    }
    return sentences;
}

Sentences short_diagnosis(const Diagnosis& diagnosis) {
    Sentences told{diagnosis.verdict};
    const auto add = [&told](const Sentence& more) {
        const bool said = std::find(told.begin(), told.end(), more) != told.end();
        if (!more.empty() && !said) told.push_back(more);
    };
    for (const Sentence& sentence : diagnosis_sentences(diagnosis)) add(sentence);
    for (const Sentence& remark : diagnosis.remarks) add(remark);
    return told;
}

Sentence bank_reading(const Reading& reading) {
    if (!reading.bank_v || !reading.bank_a || !(*reading.bank_a > 0.0)) return {};
    return say<"explanations.alone">(with<"volts">(*reading.bank_v, unit::volt),
                                     with<"amperes">(*reading.bank_a, unit::ampere),
                                     with<"ohms">(*reading.bank_v / *reading.bank_a, unit::ohm),
                                     with<"watts">(*reading.bank_v * *reading.bank_a, unit::watt));
}

Sentence evidence_title(const Diagnosis& diagnosis) {
    if (diagnosis.ranked.empty()) return {};
    return say<"explanations.evidence">(with<"name">(shown_word(diagnosis.ranked.front().name)));
}

Sentence readings_title(const Circuit& circuit) {
    return say<"explanations.readings">(with<"circuit">(circuit.title()));
}

}  // namespace heatmatch
