#include "heatmatch/answer/questions.hpp"

#include "answer/sentences_start.hpp"
#include "answer/start_draft.hpp"

#include <utility>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using start_sentences::say;

std::string_view answer_example(QuestionKind kind, UnitSystem system) {
    const bool us = system == UnitSystem::us;
    switch (kind) {
        case QuestionKind::name:
            return "north bench";
        case QuestionKind::latitude:
            return "44.1";
        case QuestionKind::record_low:
            return us ? "-20 °F" : "-29 °C";
        case QuestionKind::mounting:
            return "60 deg, south";
        case QuestionKind::sun:
            return "2.6 3.5 4.4 4.6 4.8 5.0 5.1 4.9 4.4 3.3 2.2 2.0";
        case QuestionKind::panels:
            return "4 x 37.5 V 8.7 A, max 600 V, 12 years";
        case QuestionKind::elements:
            return "2 x 1000 W 240 V storage rod";
        case QuestionKind::spend:
            return "150 USD";
        case QuestionKind::store:
            return us ? "dry sand in a steel drum, 22 in x 33 in"
                      : "dry sand in a steel drum, 57 cm x 85 cm";
        case QuestionKind::place:
            return "inside, on concrete";
        case QuestionKind::wire:
            return us ? "30 ft" : "9 m";
        case QuestionKind::space:
            return us ? "300 ft2 twin-wall-8mm, 560 ft3" : "28 m2 twin-wall-8mm, 16 m3";
        case QuestionKind::warmth:
            return us ? "41 °F, Nov to Mar" : "5 °C, Nov to Mar";
        case QuestionKind::damp:
            return "yes";
        case QuestionKind::metal:
            return "no";
        case QuestionKind::code:
            return us ? "nec" : "iec";
    }
    return {};
}

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
