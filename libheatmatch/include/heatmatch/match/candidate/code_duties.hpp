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

/// What there is here for a duty of a code.
enum class DutyMeans { a_device, as_stated, not_met, nobody_stated, not_due };
inline constexpr auto duty_means_words = std::to_array<std::string_view>(
    {"a device", "as stated", "not met", "nobody stated", "not due"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(DutyMeans) {
    return duty_means_words;
}

/// What a code asks of whoever builds the circuit, and what there is for it. It decides nothing:
/// no rank and no severity depends on it.
struct CodeDuty {
    std::string name{};                 //!< `arc-fault protection`
    WiringCode code = WiringCode::nec;  //!< that asks for it
    Answer applies = Answer::unknown;   //!< unknown counts as due until it is stated
    std::optional<double> begins_v{};   //!< cold volts that it begins at; at any without [V]
    std::optional<double> begins_a{};   //!< or amperes, where those suffice [A]
    DutyMeans met = DutyMeans::nobody_stated;
    std::vector<std::string> devices{};   //!< ids of controls that are there for it
    std::vector<std::string> would_do{};  //!< ids of controls of the catalog that would find it
    std::vector<std::string> state{};     //!< fields that would tell whether it is due or met
    Sentence said{};                      //!< what is asked, and what there is
    std::string source{};                 //!< key of catalog/sources.json
};

/// The duties of the code that is stated, else of both. An exception counts only where every fact
/// it needs is stated; labels and listing nobody can tell from data. With `catalog` they name
/// controls that would find a fault. Local codes and licensed practice decide.
/// @cite nec-690-4 @cite nec-690-11 @cite nec-690-12 @cite nec-690-13 @cite nec-690-31
/// @cite nec-690-41 @cite nec-690-43 @cite nec-110-27 @cite iec-60364-4-41 @cite iec-60364-7-712
[[nodiscard]] std::vector<CodeDuty> code_duties(const Circuit& circuit, const Site& site,
                                                const Parts* catalog = nullptr);

}  // namespace heatmatch
