#include "answer/start_draft.hpp"

#include <utility>

namespace heatmatch {

using start_sentences::say;

Understanding answer_wire(StartDraft& draft, const PlainAnswer& answer) {
    auto read = only_number(draft, QuestionKind::wire, answer,
                            start_field(wire_run_fields(), "length_m"), say<"start.what_length">());
    if (!read.refused.empty()) return refused(std::move(read.refused));
    constexpr double lead_m = 0.3;
    constexpr double summer_c = 35.0;
    WireRun home{.name = "home run",
                 .carries = Carried::array,
                 .length_m = read.value,
                 .wire = "choose",
                 .surroundings = {.kind = SurroundingsKind::sunlit, .air_c = summer_c},
                 .notes = answer.note};
    WireRun lead{.name = "element lead",
                 .carries = Carried::bank,
                 .length_m = lead_m,
                 .wire = "choose",
                 .inside = true,
                 .surroundings = {.kind = SurroundingsKind::open_air, .air_c = lead_air_c}};
    const Sentence assumed = say<"start.lead">(with<"air">(lead_air_c, unit::celsius));
    lead.notes = assumed.text(draft.system);
    draft.made.runs = {std::move(home), std::move(lead)};
    return {.said = sentence_of({say<"start.is_wire">(with<"length">(Amount{
                                     .value = read.value, .unit = unit::metre, .digits = 3})),
                                 assumed})};
}

Understanding answer_metal(StartDraft& draft, const PlainAnswer& answer) {
    const bool metal = answer.has_word("yes") || answer.has_word("y");
    const bool none = answer.has_word("no") || answer.has_word("n");
    if (metal == none) return not_understood(draft, QuestionKind::metal, answer);
    for (WireRun& run : draft.made.runs) run.surroundings.metal_raceway = metal;
    return {.said = metal ? say<"start.is_metal">() : say<"start.is_no_metal">()};
}

Understanding answer_code(StartDraft& draft, const PlainAnswer& answer) {
    const bool nec = answer.has_word("nec") || answer.has_word("us") || answer.has_word("usa");
    const bool iec = answer.has_word("iec");
    if (nec == iec) return not_understood(draft, QuestionKind::code, answer);
    draft.made.site.code = nec ? WiringCode::nec : WiringCode::iec;
    return {.said = say<"start.is_code">(with<"code">(nec ? "NEC" : "IEC 60364"))};
}

}  // namespace heatmatch
