#pragma once

#include "answer/sentences_start.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/answer/plain_answer.hpp"
#include "heatmatch/answer/started.hpp"
#include "heatmatch/base/field.hpp"

namespace heatmatch {

inline constexpr std::string_view start_name = "my place";
inline constexpr double start_tilt_deg =
    30.0;  //!< of many roofs; winter heat would be more steeper
/// Of the coldest row of the code's table, so that the voltages are high.
inline constexpr double start_record_low_c = -40.0;
inline constexpr std::string_view start_panel = "silicon-60-cell-245";
inline constexpr int start_panel_count = 2;
inline constexpr double lead_air_c = 120.0;  //!< around an element lead, as close to a hot store
inline constexpr int start_most_bought = 4;  //!< elements of one kind that may be bought

/// An answer such as the question expects.
[[nodiscard]] std::string_view answer_example(QuestionKind kind, UnitSystem system);
[[nodiscard]] Sentence open_record_low();
[[nodiscard]] Sentence open_mounting(bool south);
[[nodiscard]] Sentence open_sun();
[[nodiscard]] Sentence open_panels();
[[nodiscard]] Sentence open_months(bool south);

/// The installation while its questions are being answered.
struct StartDraft {
    const Parts& parts;
    UnitSystem system = UnitSystem::si;
    Installation made{};
    std::optional<double> record_low_c{};
    std::optional<double> target_c{};
    bool buys = true;
    Sentences notes{};
};

/// A number of an answer in the unit of a field, or why there is none.
struct AnsweredNumber {
    double value = 0.0;
    Sentence refused{};
};

[[nodiscard]] Understanding refused(Sentence why);
/// That the answer is not understood, with an example.
[[nodiscard]] Understanding not_understood(const StartDraft& draft, QuestionKind kind,
                                           const PlainAnswer& answer);
/// The number for a field among those amounts, with or without unit; it must be the only one.
[[nodiscard]] AnsweredNumber only_number(const StartDraft& draft, QuestionKind kind,
                                         const PlainAnswer& answer, const Field& field,
                                         const Sentence& what);
/// Why a value does not fit a field; empty where it does.
[[nodiscard]] Sentence out_of_range(const Field& field, double value, const Sentence& what);
[[nodiscard]] const Field& start_field(std::span<const Field> fields, std::string_view name);
/// A bare number of a person in the unit of a field.
[[nodiscard]] double bare_in(const Field& field, double value, UnitSystem system);

[[nodiscard]] Understanding answer_latitude(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_record_low(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_mounting(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_sun(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_warmth(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_damp(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_panels(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_elements(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_spend(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_store(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_place(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_wire(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_metal(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_code(StartDraft& draft, const PlainAnswer& answer);
[[nodiscard]] Understanding answer_space(StartDraft& draft, const PlainAnswer& answer);

}  // namespace heatmatch
