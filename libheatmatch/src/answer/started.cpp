#include "heatmatch/answer/started.hpp"

#include "answer/start_draft.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/typical_sky.hpp"

namespace heatmatch {

using start_sentences::say;

namespace {

Understanding answer_name(StartDraft& draft, const PlainAnswer& answer) {
    draft.made.name = clip(answer.text);
    return {.said = say<"start.is_name">(with<"name">(draft.made.name))};
}

Understanding read_answer(StartDraft& draft, QuestionKind kind, const PlainAnswer& answer) {
    switch (kind) {
        case QuestionKind::name:
            return answer_name(draft, answer);
        case QuestionKind::latitude:
            return answer_latitude(draft, answer);
        case QuestionKind::record_low:
            return answer_record_low(draft, answer);
        case QuestionKind::mounting:
            return answer_mounting(draft, answer);
        case QuestionKind::sun:
            return answer_sun(draft, answer);
        case QuestionKind::panels:
            return answer_panels(draft, answer);
        case QuestionKind::elements:
            return answer_elements(draft, answer);
        case QuestionKind::spend:
            return answer_spend(draft, answer);
        case QuestionKind::store:
            return answer_store(draft, answer);
        case QuestionKind::place:
            return answer_place(draft, answer);
        case QuestionKind::wire:
            return answer_wire(draft, answer);
        case QuestionKind::metal:
            return answer_metal(draft, answer);
        case QuestionKind::space:
            return answer_space(draft, answer);
        case QuestionKind::warmth:
            return answer_warmth(draft, answer);
        case QuestionKind::damp:
            return answer_damp(draft, answer);
        case QuestionKind::code:
            return answer_code(draft, answer);
    }
    return {};
}

/// Where the note of an answer is kept with its own record.
bool keeps_own_note(QuestionKind kind) {
    return kind == QuestionKind::panels || kind == QuestionKind::store ||
           kind == QuestionKind::wire;
}

Understanding take(StartDraft& draft, const TypedAnswer& typed) {
    const PlainAnswer answer = read_plain_answer(typed.text);
    const auto keep_note = [&] {
        if (answer.note.empty()) return;
        draft.notes.push_back(say<"start.note_of">(
            with<"question">(std::string(word_of(typed.question))), with<"note">(answer.note)));
    };
    if (answer.unknown()) {
        keep_note();
        return {};
    }
    if (!answer.unclear.empty() && typed.question != QuestionKind::name) {
        return refused(say<"start.two_ways">(with<"text">(answer.text)));
    }
    Understanding read = read_answer(draft, typed.question, answer);
    if (read.accepted && !keeps_own_note(typed.question)) keep_note();
    return read;
}

/// Fills what no answer gave; returns the assumptions.
class Finish {
  public:
    explicit Finish(StartDraft& draft) : draft_(draft), made_(draft.made) {}

    Sentences run() {
        if (made_.name.empty()) made_.name = start_name;
        south_ = made_.site.latitude_deg.value_or(0.0) < 0.0;
        site();
        weather();
        parts();
        if (made_.goals.months.empty()) {
            made_.goals.months =
                south_ ? std::vector<int>{5, 6, 7, 8, 9} : std::vector<int>{11, 12, 1, 2, 3};
            assume(open_months(south_));
        }
        if (!made_.store) assume(say<"start.store.open">());
        if (!made_.site.code) assume(say<"start.code.open">());
        const bool metal_open =
            std::any_of(made_.runs.begin(), made_.runs.end(),
                        [](const auto& run) { return !run.surroundings.metal_raceway; });
        if (metal_open) assume(say<"start.metal.open">());
        for (const Panel& panel : made_.parts.panels) {
            if (!panel.max_system_voltage_v) {
                assume(say<"start.system.open">(with<"panel">(panel.id)));
            }
        }
        if (made_.store && !made_.store->stands && !made_.store->stands_on) {
            assume(say<"start.place.open">());
        }
        if (made_.runs.empty()) assume(say<"start.wire.open">());
        if (!made_.space) assume(say<"start.space.open">());
        if (made_.space) made_.space->target_c = draft_.target_c;
        if (!made_.site.wet) assume(say<"start.damp.open">());
        return assumed_;
    }

  private:
    void assume(Sentence sentence) { assumed_.push_back(std::move(sentence)); }

    void site() {
        Site& site = made_.site;
        if (!site.latitude_deg) assume(say<"start.latitude.open">());
        if (!draft_.record_low_c) {
            site.record_low_c = start_record_low_c;
            assume(open_record_low());
        }
        if (!site.tilt_deg) {
            site.tilt_deg = start_tilt_deg;
            site.azimuth_deg = south_ ? 0.0 : 180.0;
            assume(open_mounting(south_));
        }
    }

    void weather() {
        if (!made_.site.latitude_deg) {
            made_.weather.reset();
            return;
        }
        auto typical = typical_months(made_.site, draft_.record_low_c);
        if (!typical) {
            made_.weather.reset();
            assume(say<"start.polar">(with<"latitude">(typical_sky_latitude_deg, unit::degree)));
            return;
        }
        if (made_.weather) {
            typical->sun_hours = made_.weather->sun_hours;
        } else {
            assume(open_sun());
        }
        // Stagnation is judged in the hottest air: the band's upper end, in the warmest month only.
        double& hottest_c =
            *std::max_element(typical->temp_max_c.begin(), typical->temp_max_c.end());
        const double band_k =
            draft_.record_low_c ? typical_air_band_k : typical_air_band_without_low_k;
        hottest_c += band_k;
        assume(say<"start.hottest">(with<"air">(hottest_c, unit::celsius)));
        made_.weather = std::move(typical);
        assume(say<"start.air">(with<"band">(band_k, unit::kelvin)));
    }

    void parts() {
        if (made_.panels.empty()) {
            made_.panels = {
                {.group = "panels", .panel = std::string(start_panel), .count = start_panel_count}};
            assume(open_panels());
        }
        if (made_.elements.empty()) assume(say<"start.elements.open">());
        if (draft_.buys) {
            made_.elements.push_back({.any = ElementFilter{}, .count = start_most_bought});
            if (!made_.goals.budget) assume(say<"start.spend.open">());
        }
    }

    StartDraft& draft_;
    Installation& made_;
    Sentences assumed_{};
    bool south_ = false;
};

}  // namespace

Understanding refused(Sentence why) {
    return {.accepted = false, .said = std::move(why)};
}

Sentence open_sun() {
    return say<"start.sun.open">(with<"band">(100.0 * typical_sky_band, unit::percent));
}

Understanding not_understood(const StartDraft& draft, QuestionKind kind,
                             const PlainAnswer& answer) {
    return refused(say<"start.need_example">(
        with<"text">(clip(answer.text)),
        with<"example">(std::string(answer_example(kind, draft.system)))));
}

const Field& start_field(std::span<const Field> fields, std::string_view name) {
    const Field* const found = find_field(fields, name);
    if (found == nullptr) refuse_unknown_field(fields, name, "question");
    return *found;
}

double bare_in(const Field& field, double value, UnitSystem system) {
    return convert(value, display_unit(field.unit, system), field.unit);
}

AnsweredNumber only_number(const StartDraft& draft, QuestionKind kind, const PlainAnswer& answer,
                           const Field& field, const Sentence& what) {
    std::vector<double> found = answer.of(field.unit);
    for (const double bare : answer.bare()) found.push_back(bare_in(field, bare, draft.system));
    const auto text = with<"text">(clip(answer.text));
    const auto example = with<"example">(std::string(answer_example(kind, draft.system)));
    AnsweredNumber read;
    if (found.empty()) {
        read.refused = say<"start.no_number">(text, with<"what">(what), example);
    } else if (found.size() > 1) {
        read.refused = say<"start.many_numbers">(text, with<"what">(what), example);
    } else {
        read.value = found.front();
        read.refused = out_of_range(field, read.value, what);
    }
    return read;
}

Understanding understand(const Parts& parts, std::span<const TypedAnswer> earlier,
                         const TypedAnswer& answer, UnitSystem system) {
    StartDraft draft{.parts = parts, .system = system};
    for (const TypedAnswer& one : earlier) {
        Understanding read = take(draft, one);
        if (!read.accepted) return read;
    }
    return take(draft, answer);
}

Started start_installation(const Parts& parts, std::span<const TypedAnswer> answers,
                           UnitSystem system) {
    StartDraft draft{.parts = parts, .system = system};
    for (const TypedAnswer& answer : answers) {
        const Understanding read = take(draft, answer);
        if (read.accepted) continue;
        throw InvalidInput(ErrorDetail{.part = "answers",
                                       .field = std::string(word_of(answer.question)),
                                       .value = quote(answer.text),
                                       .allowed = "understood",
                                       .remedy = read.said});
    }
    Started started{.assumed = Finish(draft).run()};
    Sentences notes = draft.notes;
    for (const Sentence& assumed : started.assumed) {
        notes.push_back(say<"start.assumed">(with<"what">(assumed)));
    }
    draft.made.notes = text_of(notes, system, "\n");
    started.installation = std::move(draft.made);
    check_installation(started.installation, merged_parts(parts, started.installation));
    return started;
}

}  // namespace heatmatch
