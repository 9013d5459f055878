#include "heatmatch/match/candidate/code_duties.hpp"

#include "duty_means.hpp"
#include "sentences_of_duties.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

namespace {

using candidate_sentences::of_duties::say;

constexpr double guarded_v = 50.0;  // @cite nec-110-27
constexpr double fault_a = 8.0;     // @cite nec-690-41 @cite nec-690-31
// Up to this voltage an extra-low-voltage system may replace insulation. @cite iec-60364-7-712
constexpr double extra_low_v = 120.0;
// Strings that a solidly grounded array may have without earth-fault protection. @cite nec-690-41
constexpr int few_strings = 2;

Answer answer_of(bool yes) {
    return yes ? Answer::yes : Answer::no;
}

Answer neither_is(Answer a) {
    return a == Answer::unknown ? a : answer_of(a == Answer::no);
}

Answer either_is(Answer a, Answer b) {
    if (a == Answer::yes || b == Answer::yes) return Answer::yes;
    return a == Answer::unknown || b == Answer::unknown ? Answer::unknown : Answer::no;
}

Answer both_are(Answer a, Answer b) {
    return neither_is(either_is(neither_is(a), neither_is(b)));
}

void add_field(std::vector<std::string>& fields, std::string field) {
    if (std::find(fields.begin(), fields.end(), field) == fields.end()) {
        fields.push_back(std::move(field));
    }
}

/// Input of all duties of a circuit.
struct DutyView {
    const Circuit& circuit;
    const Site& site;
    const Parts* catalog = nullptr;
    DutyScope scope{};
};

/// Whether a duty is due, the reason if it is not, and fields to state.
struct Due {
    Answer applies = Answer::yes;
    Sentence why_not{};
    std::vector<std::string> missing{};
};

CodeDuty duty_of(std::string name, WiringCode code, std::string source, Due due, Sentence rule,
                 MeansHere means) {
    CodeDuty duty{.name = std::move(name),
                  .code = code,
                  .applies = due.applies,
                  .met_by = means.met_by,
                  .devices = std::move(means.devices),
                  .missing = std::move(due.missing),
                  .source = std::move(source)};
    Sentences said{std::move(rule)};
    if (due.applies == Answer::no) {
        duty.met_by = DutyMeans::not_due;
        duty.devices.clear();
        said.push_back(std::move(due.why_not));
    } else {
        if (due.applies == Answer::unknown) said.push_back(say<"duty.perhaps">());
        said.push_back(std::move(means.here));
        for (std::string& field : means.missing) add_field(duty.missing, std::move(field));
    }
    duty.description = sentence_of(std::move(said));
    return duty;
}

MeansHere untold(Sentence here) {
    return {.here = std::move(here)};
}

std::vector<std::string> fields_of_place(const DutyView& view) {
    std::vector<std::string> fields;
    if (!view.scope.array_on) fields.emplace_back("site.array_on");
    if (view.scope.enters_building() == Answer::unknown) fields.emplace_back("run.inside");
    return fields;
}

/// Due at that voltage or current.
Due by_size(const DutyView& view, bool due) {
    return {.applies = answer_of(due),
            .why_not = say<"duty.not_due_volts">(with<"cold">(view.scope.cold_v, unit::volt))};
}

bool above_fault_size(const DutyView& view) {
    return view.scope.cold_v > wet_step_v || view.scope.lasting_a > fault_a;
}

/// Due unless an exception applies, all facts of which are stated.
Due but_for(Due due, Answer exception, Sentence why_not, std::vector<std::string> fields) {
    if (due.applies != Answer::yes || exception == Answer::no) return due;
    if (exception == Answer::yes) return {.applies = Answer::no, .why_not = std::move(why_not)};
    return {.applies = Answer::unknown, .missing = std::move(fields)};
}

/// Adds controls of the catalog that would detect the fault.
void add_catalog(CodeDuty& duty, const DutyView& view, DetectedFault fault) {
    const bool wanted =
        duty.met_by == DutyMeans::not_met || duty.met_by == DutyMeans::nobody_stated;
    if (view.catalog == nullptr || !wanted) return;
    Sentences controls;
    for (const Control& control : view.catalog->controls) {
        if (control.detects != fault) continue;
        duty.suitable_controls.push_back(control.id);
        controls.push_back(sentence_of(Name{control.id}));
    }
    Sentence said = controls.empty()
                        ? say<"duty.not_in_catalog">()
                        : say<"duty.in_catalog">(with<"controls">(std::move(controls)));
    duty.description = sentence_of(Sentences{std::move(duty.description), std::move(said)});
}

CodeDuty guarding_nec(const DutyView& view) {
    CodeDuty duty = duty_of("guarded live parts", WiringCode::nec, "nec-110-27",
                            by_size(view, view.scope.cold_v >= guarded_v),
                            say<"duty.guard_nec">(with<"volts">(guarded_v, unit::volt)),
                            means_to_guard(view.circuit, view.site));
    duty.begins_v = guarded_v;
    return duty;
}

CodeDuty guarding_iec(const DutyView& view) {
    const bool wet = view.site.counts_as_wet();
    Due due = by_size(view, view.scope.cold_v > (wet ? wet_step_v : dry_step_v));
    if (!view.site.wet && due.applies == Answer::yes && view.scope.cold_v <= dry_step_v) {
        due = {.applies = Answer::unknown, .missing = {"site.wet"}};
    }
    CodeDuty duty = duty_of("guarded live parts", WiringCode::iec, "iec-60364-4-41", std::move(due),
                            say<"duty.guard_iec">(with<"dry">(dry_step_v, unit::volt),
                                                  with<"wet">(wet_step_v, unit::volt)),
                            means_to_guard(view.circuit, view.site));
    duty.begins_v = wet ? wet_step_v : dry_step_v;
    return duty;
}

/// One solidly grounded pole, few strings, off buildings.
Due earth_fault_due(const DutyView& view) {
    const auto& earthing = view.scope.earthing;
    const Answer earthed = earthing ? answer_of(*earthing == Earthing::grounded) : Answer::unknown;
    const Answer small = answer_of(view.circuit.panels.parallel <= few_strings);
    std::vector<std::string> fields = fields_of_place(view);
    if (!earthing) fields.emplace_back("site.earthing");
    return but_for(by_size(view, above_fault_size(view)),
                   both_are(both_are(earthed, small), neither_is(view.scope.on_building())),
                   say<"duty.not_due_earthed">(), std::move(fields));
}

CodeDuty earth_fault_nec(const DutyView& view) {
    CodeDuty duty =
        duty_of("earth-fault protection", WiringCode::nec, "nec-690-41", earth_fault_due(view),
                say<"duty.earth_nec">(with<"volts">(wet_step_v, unit::volt),
                                      with<"amperes">(fault_a, unit::ampere)),
                means_to_find(view.circuit, view.site, DetectedFault::earth_fault, true));
    duty.begins_v = wet_step_v;
    duty.begins_a = fault_a;
    add_catalog(duty, view, DetectedFault::earth_fault);
    return duty;
}

CodeDuty earth_fault_iec(const DutyView& view) {
    CodeDuty duty = duty_of(
        "earth-fault detection", WiringCode::iec, "iec-60364-7-712", {}, say<"duty.earth_iec">(),
        means_to_find(view.circuit, view.site, DetectedFault::earth_fault, false));
    add_catalog(duty, view, DetectedFault::earth_fault);
    return duty;
}

CodeDuty arc_fault(const DutyView& view) {
    Answer in_metal = answer_of(!view.circuit.runs.empty());
    for (const RunParts& parts : view.circuit.runs) {
        const Surroundings& around = parts.run.surroundings;
        const Answer metal =
            around.metal_raceway ? answer_of(*around.metal_raceway) : Answer::unknown;
        in_metal = both_are(in_metal,
                            either_is(metal, answer_of(around.kind == SurroundingsKind::buried)));
    }
    std::vector<std::string> fields = fields_of_place(view);
    if (in_metal == Answer::unknown) fields.emplace_back("surroundings.metal_raceway");
    Due due = but_for(by_size(view, view.scope.cold_v >= arc_step_v),
                      both_are(in_metal, neither_is(view.scope.on_building())),
                      say<"duty.not_due_in_metal">(), std::move(fields));
    CodeDuty duty = duty_of("arc-fault protection", WiringCode::nec, "nec-690-11", std::move(due),
                            say<"duty.arc">(with<"volts">(arc_step_v, unit::volt)),
                            means_to_find(view.circuit, view.site, DetectedFault::arc_fault, true));
    duty.begins_v = arc_step_v;
    add_catalog(duty, view, DetectedFault::arc_fault);
    return duty;
}

CodeDuty quick_shutdown(const DutyView& view) {
    Due due =
        but_for(by_size(view, view.scope.cold_v > wet_step_v), neither_is(view.scope.on_building()),
                say<"duty.not_due_place">(), fields_of_place(view));
    CodeDuty duty = duty_of("rapid shutdown", WiringCode::nec, "nec-690-12", std::move(due),
                            say<"duty.shutdown">(with<"outside">(wet_step_v, unit::volt),
                                                 with<"within">(arc_step_v, unit::volt)),
                            means_to_shut_down(view.circuit, view.site));
    duty.begins_v = wet_step_v;
    return duty;
}

CodeDuty metal_inside(const DutyView& view) {
    std::vector<const RunParts*> inside;
    for (const RunParts& parts : view.circuit.runs) {
        if (parts.run.inside.value_or(true)) inside.push_back(&parts);
    }
    Due due =
        but_for(by_size(view, above_fault_size(view)), neither_is(view.scope.enters_building()),
                say<"duty.not_due_outside">(), {"run.inside"});
    CodeDuty duty = duty_of("metal around wires", WiringCode::nec, "nec-690-31", std::move(due),
                            say<"duty.inside">(with<"volts">(wet_step_v, unit::volt),
                                               with<"amperes">(fault_a, unit::ampere)),
                            means_to_enclose(view.circuit, inside));
    duty.begins_v = wet_step_v;
    duty.begins_a = fault_a;
    return duty;
}

void add_duties_of_nec(std::vector<CodeDuty>& duties, const DutyView& view) {
    const auto nec = WiringCode::nec;
    duties.push_back(guarding_nec(view));
    duties.push_back(earth_fault_nec(view));
    duties.push_back(arc_fault(view));
    duties.push_back(quick_shutdown(view));
    duties.push_back(duty_of("disconnect", nec, "nec-690-13", {}, say<"duty.disconnect_nec">(),
                             means_to_disconnect(view.circuit, view.site, false)));
    duties.push_back(duty_of("bonding", nec, "nec-690-43", {}, say<"duty.bond">(),
                             means_to_bond(view.circuit, view.site)));
    duties.push_back(metal_inside(view));
    duties.push_back(duty_of("listing", nec, "nec-690-4", {}, say<"duty.listing">(),
                             untold(say<"duty.read_listing">())));
    duties.push_back(duty_of("labels", nec, "nec-690-13", {}, say<"duty.labels_nec">(),
                             untold(say<"duty.look">())));
}

void add_duties_of_iec(std::vector<CodeDuty>& duties, const DutyView& view) {
    const auto iec = WiringCode::iec;
    const std::string source = "iec-60364-7-712";
    duties.push_back(guarding_iec(view));
    duties.push_back(earth_fault_iec(view));
    duties.push_back(duty_of("disconnect", iec, source, {}, say<"duty.disconnect_iec">(),
                             means_to_disconnect(view.circuit, view.site, true)));
    duties.push_back(duty_of("double insulation", iec, source, {},
                             say<"duty.insulation">(with<"most">(extra_low_v, unit::volt)),
                             untold(say<"duty.insulation_class">())));
    duties.push_back(
        duty_of("labels", iec, source, {}, say<"duty.labels_iec">(), untold(say<"duty.look">())));
}

}  // namespace

std::vector<CodeDuty> code_duties(const Circuit& circuit, const Site& site, const Parts* catalog) {
    const DutyView view{circuit, site, catalog, duty_scope(circuit, site)};
    std::vector<CodeDuty> duties;
    if (site.code != WiringCode::iec) add_duties_of_nec(duties, view);
    if (site.code != WiringCode::nec) add_duties_of_iec(duties, view);
    return duties;
}

}  // namespace heatmatch
