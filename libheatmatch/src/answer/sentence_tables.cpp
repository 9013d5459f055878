#include "heatmatch/answer/sentence_tables.hpp"

#include "answer/sentences.hpp"
#include "answer/sentences_start.hpp"
#include "base/sentences.hpp"
#include "heat/sentences.hpp"
#include "match/candidate/explain_sentences.hpp"
#include "match/candidate/sentences.hpp"
#include "match/candidate/sentences_of_bill.hpp"
#include "match/candidate/sentences_of_duties.hpp"
#include "match/circuit/sentences.hpp"
#include "match/margins/sentences.hpp"
#include "match/margins/sentences_of_limits.hpp"
#include "match/margins/sentences_of_runs.hpp"
#include "match/margins/sentences_of_stores.hpp"
#include "match/margins/sentences_of_vessels.hpp"
#include "match/plan/sentences.hpp"
#include "match/rank/sentences.hpp"
#include "operation/calibration/sentences.hpp"
#include "operation/days/sentences.hpp"
#include "operation/diagnosis/sentences.hpp"
#include "operation/meter/sentences.hpp"
#include "parts/sentences.hpp"
#include "setting/sentences.hpp"
#include "solar/sentences.hpp"
#include "text/sentences.hpp"

#include <array>
#include <map>

namespace heatmatch {

std::span<const std::span<const Template>> sentence_tables() {
    static const auto tables = std::to_array<std::span<const Template>>({
        answer_sentences::table,
        calibration_sentences::table,
        days_sentences::table,
        parts_sentences::table,
        solar_sentences::table,
        meter_sentences::table,
        diagnosis_sentences::table,
        base_sentences::table,
        setting_sentences::table,
        heat_sentences::table,
        text_sentences::table,
        circuit_sentences::table,
        margins_sentences::table,
        margins_sentences::of_limits::table,
        margins_sentences::of_runs::table,
        margins_sentences::of_stores::table,
        margins_sentences::of_vessels::table,
        candidate_sentences::table,
        candidate_sentences::of_bill::table,
        candidate_sentences::of_duties::table,
        explain_sentences::table,
        plan_sentences::table,
        rank_sentences::table,
        start_sentences::table,
    });
    return tables;
}

const Template* find_template(std::string_view id) {
    static const std::map<std::string_view, const Template*> by_id = [] {
        std::map<std::string_view, const Template*> lines;
        for (const auto table : sentence_tables()) {
            for (const Template& line : table) lines.emplace(line.id, &line);
        }
        return lines;
    }();
    const auto found = by_id.find(id);
    return found == by_id.end() ? nullptr : found->second;
}

}  // namespace heatmatch
