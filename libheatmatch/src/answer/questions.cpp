#include "heatmatch/answer/questions.hpp"

#include "answer/sentences_start.hpp"
#include "answer/start_draft.hpp"

#include <utility>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using start_sentences::say;

std::vector<Question> questions(UnitSystem system) {
    std::vector<Question> all;
    const auto add = [&](QuestionKind kind, Sentence ask, Sentence open, bool repeats = false) {
        all.push_back({.kind = kind,
                       .ask = std::move(ask),
                       .example = std::string(answer_example(kind, system)),
                       .unknown = std::move(open),
                       .repeats = repeats});
    };
    add(QuestionKind::name, say<"start.name">(), say<"start.name.open">(with<"name">(start_name)));
    add(QuestionKind::latitude, say<"start.latitude">(), say<"start.latitude.open">());
    add(QuestionKind::record_low, say<"start.record_low">(), open_record_low());
    add(QuestionKind::mounting, say<"start.mounting">(), open_mounting(false));
    add(QuestionKind::sun,
        say<"start.sun">(
            with<"unit">(Amount{.unit = unit::kilowatt_hour_per_m2, .shown = Shown::unit})),
        open_sun());
    add(QuestionKind::panels, say<"start.panels">(), open_panels(), true);
    add(QuestionKind::elements, say<"start.elements">(), say<"start.elements.open">(), true);
    add(QuestionKind::spend, say<"start.spend">(), say<"start.spend.open">());
    add(QuestionKind::store, say<"start.store">(), say<"start.store.open">());
    add(QuestionKind::place, say<"start.place">(), say<"start.place.open">());
    add(QuestionKind::wire, say<"start.wire">(), say<"start.wire.open">());
    add(QuestionKind::metal, say<"start.metal">(), say<"start.metal.open">());
    add(QuestionKind::space, say<"start.space">(), say<"start.space.open">());
    add(QuestionKind::warmth, say<"start.warmth">(), open_months(false));
    add(QuestionKind::damp, say<"start.damp">(), say<"start.damp.open">());
    add(QuestionKind::code, say<"start.code">(), say<"start.code.open">());
    return all;
}

Sentence how_to_answer(std::string_view back) {
    return say<"start.how">(with<"back">(quote(back)));
}

Sentence answer_like(std::string_view example) {
    return say<"start.like">(with<"example">(example));
}

Sentence ask_for_more() {
    return say<"start.more">();
}

}  // namespace heatmatch
