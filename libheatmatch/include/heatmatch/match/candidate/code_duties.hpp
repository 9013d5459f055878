#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/duty_scope.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/parts/ampacity_table.hpp"
#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// How a duty of a code is met here.
enum class DutyMeans { a_device, as_stated, not_met, nobody_stated, not_due };
inline constexpr auto duty_means_words = std::to_array<std::string_view>(
    {"a device", "as stated", "not met", "nobody stated", "not due"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(DutyMeans) {
    return duty_means_words;
}

/// A requirement of a code, and how it is met. No rank and no severity depends on it.
struct CodeDuty {
    std::string name{};                 //!< `arc-fault protection`
    WiringCode code = WiringCode::nec;  //!< code that requires it
    Answer applies = Answer::unknown;   //!< unknown counts as due
    std::optional<double> begins_v{};   //!< cold voltage above which it is due; empty: at any [V]
    std::optional<double> begins_a{};   //!< or current, where that suffices [A]
    DutyMeans met_by = DutyMeans::nobody_stated;
    std::vector<std::string> devices{};            //!< ids of controls that meet it
    std::vector<std::string> suitable_controls{};  //!< ids of controls of the catalog that would
                                                   //!< detect the fault
    std::vector<std::string> missing{};  //!< fields to state, to decide whether it is due or met
    Sentence description{};              //!< requirement and result
    std::string source{};                //!< key of catalog/sources.json
};

/// The duties of the stated code, or of both codes if none is stated. An exception counts only
/// where every fact it needs is stated. Labels and listing cannot be checked from data. With
/// `catalog`, the duties name controls that would detect a fault. Local codes and licensed practice
/// decide.
/// @cite nec-690-4 @cite nec-690-11 @cite nec-690-12 @cite nec-690-13 @cite nec-690-31
/// @cite nec-690-41 @cite nec-690-43 @cite nec-110-27 @cite iec-60364-4-41 @cite iec-60364-7-712
[[nodiscard]] std::vector<CodeDuty> code_duties(const Circuit& circuit, const Site& site,
                                                const Parts* catalog = nullptr);

}  // namespace heatmatch
