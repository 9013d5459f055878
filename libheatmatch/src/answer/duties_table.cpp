#include "heatmatch/answer/duties_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

Sentence begins_cell(const CodeDuty& duty) {
    if (!duty.begins_v) return say<"duties.any">();
    const auto volts = with<"volts">(*duty.begins_v, unit::volt);
    if (duty.begins_a) {
        return say<"duties.either">(volts, with<"amperes">(*duty.begins_a, unit::ampere));
    }
    const bool above = *duty.begins_v == wet_step_v || *duty.begins_v == dry_step_v;
    return above ? say<"duties.above">(volts) : say<"duties.from">(volts);
}

Sentence names_cell(const std::vector<std::string>& names) {
    Sentences cells;
    for (const std::string& name : names) cells.push_back(name_cell(name));
    return cells.empty() ? Sentence{} : say<"cell.listed">(with<"list">(std::move(cells)));
}

/// The same as words of a line.
Sentence begins_words(const CodeDuty& duty) {
    if (!duty.begins_v) return say<"duties.line_any">();
    const auto volts = with<"volts">(*duty.begins_v, unit::volt);
    if (duty.begins_a) {
        return say<"duties.line_either">(volts, with<"amperes">(*duty.begins_a, unit::ampere));
    }
    const Sentence cell = begins_cell(duty);
    return cell.id() == "duties.from" ? say<"duties.line_from">(volts) : cell;
}

/// What meets it; if nothing does, the fields to state.
Sentence which_cell(const CodeDuty& duty) {
    const bool by_fields = duty.devices.empty() || !duty.missing.empty();
    return names_cell(by_fields ? duty.missing : duty.devices);
}

Sentence duty_line(const CodeDuty& duty) {
    const bool perhaps = duty.applies == Answer::unknown;
    return say<"duties.line">(
        with<"duty">(duty_cell(duty)), with<"code">(shown_choice(duty.code)),
        with<"begins">(begins_words(duty)),
        with<"due">(perhaps ? say<"duties.line_perhaps">() : Sentence{}),
        with<"met">(choice_cell(duty.met_by)),
        with<"devices">(duty.devices.empty() ? Sentence{}
                                             : say<"duties.line_devices">(with<"devices">(
                                                   Sentences{names_cell(duty.devices)}))),
        with<"state">(duty.missing.empty() ? Sentence{}
                                           : say<"duties.line_state">(with<"fields">(
                                                 Sentences{names_cell(duty.missing)}))));
}

Amount count_met(const std::vector<CodeDuty>& duties, DutyMeans met) {
    return number(
        static_cast<double>(std::count_if(duties.begin(), duties.end(),
                                          [met](const CodeDuty& d) { return d.met_by == met; })),
        0);
}

Amount count_due(const std::vector<CodeDuty>& duties, Answer applies) {
    return number(static_cast<double>(
                      std::count_if(duties.begin(), duties.end(),
                                    [applies](const CodeDuty& d) { return d.applies == applies; })),
                  0);
}

Sentence wires_inside(const DutyScope& scope) {
    const auto listed = [](const std::vector<std::string>& runs) {
        Sentences names;
        for (const std::string& run : runs) names.push_back(name_cell(run));
        return names;
    };
    if (!scope.inside.empty()) return say<"duties.inside">(with<"runs">(listed(scope.inside)));
    if (scope.untold.empty()) return say<"duties.outside">();
    return say<"duties.inside_untold">(with<"runs">(listed(scope.untold)));
}

}  // namespace

std::vector<CodeDuty> duties_of(const Candidate& candidate) {
    return code_duties(candidate.circuit, candidate.site, candidate.catalog.get());
}

Table duties_table(const Candidate& candidate) {
    Table table{.title = say<"duties.title">(),
                .columns = {{.head = say<"duties.name">()},
                            {.head = say<"duties.code">()},
                            {.head = say<"duties.begins">()},
                            {.head = say<"duties.due">()},
                            {.head = say<"duties.here">()},
                            {.head = say<"duties.which">()},
                            {.head = say<"head.says">()},
                            {.head = say<"head.source">()}},
                .legend = {say<"duties.legend">()}};
    for (const CodeDuty& duty : duties_of(candidate)) {
        table.rows.push_back({duty_cell(duty), choice_cell(duty.code), begins_cell(duty),
                              choice_cell(duty.applies), choice_cell(duty.met_by), which_cell(duty),
                              duty.description, name_cell(duty.source)});
    }
    return table;
}

Sentences duty_lines(const Candidate& candidate) {
    Sentences lines;
    for (const CodeDuty& duty : duties_of(candidate)) {
        if (duty.applies != Answer::no) lines.push_back(duty_line(duty));
    }
    return lines;
}

Sentence duties_legend() {
    return say<"duties.legend">();
}

Sentence duties_sentence(const Candidate& candidate) {
    const std::vector<CodeDuty> duties = duties_of(candidate);
    Sentence said =
        say<"duties.counts">(with<"due">(count_due(duties, Answer::yes)),
                             with<"perhaps">(count_due(duties, Answer::unknown)),
                             with<"not_met">(count_met(duties, DutyMeans::not_met)),
                             with<"nobody">(count_met(duties, DutyMeans::nobody_stated)),
                             with<"stated">(count_met(duties, DutyMeans::as_stated)),
                             with<"devices">(count_met(duties, DutyMeans::a_device)));
    const Amount others = count_due(duties, Answer::no);
    if (others.value == 0.0) return said;
    return sentence_of(Sentences{std::move(said), say<"duties.none_due">(with<"count">(others))});
}

Sentence scope_sentence(const Candidate& candidate) {
    const DutyScope scope = duty_scope(candidate.circuit, candidate.site);
    Sentence panels = say<"duties.on_untold">();
    if (scope.array_on == ArrayPlace::ground) panels = say<"duties.on_ground">();
    if (scope.array_on == ArrayPlace::building) panels = say<"duties.on_building">();
    Sentence earthing = say<"duties.earthing_untold">();
    if (scope.earthing == Earthing::grounded) earthing = say<"duties.grounded">();
    if (scope.earthing == Earthing::floating) earthing = say<"duties.floating">();
    Sentence code = say<"duties.both">();
    if (scope.code == WiringCode::nec) code = say<"duties.nec">();
    if (scope.code == WiringCode::iec) code = say<"duties.iec">();
    return say<"duties.scope">(
        with<"panels">(std::move(panels)), with<"earthing">(std::move(earthing)),
        with<"wires">(wires_inside(scope)), with<"cold">(scope.cold_v, unit::volt),
        with<"amperes">(scope.lasting_a, unit::ampere), with<"code">(std::move(code)));
}

Sentence steps_sentence(const Candidate& candidate) {
    const double cold_v = candidate.circuit.cold_voltage_v();
    Sentences steps;
    for (const DutyStep& step : duty_steps(cold_v)) {
        const auto volts = with<"step">(step.volts, unit::volt);
        const auto what = with<"what">(step.begins);
        steps.push_back(step.reached ? say<"duties.step_past">(volts, what)
                                     : say<"duties.step_below">(volts, what));
    }
    return say<"duties.steps">(with<"cold">(cold_v, unit::volt), with<"steps">(std::move(steps)));
}

}  // namespace heatmatch
