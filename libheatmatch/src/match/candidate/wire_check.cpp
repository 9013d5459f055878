#include "heatmatch/match/candidate/wire_check.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/run_ampacity.hpp"
#include "heatmatch/match/margins/run_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch {

namespace {

/// A candidate during the check of its wires.
struct Check {
    const Candidate& candidate;
    const Parts* catalog = nullptr;
    std::optional<HeatPoint> heat{};
    std::optional<TailTemperatures> tail{};
};

Sentence gauge_of(const Wire& wire) {
    return sentence_of(Amount{wire.area_mm2, unit::square_millimetre});
}

/// The margins of one run, including those at the element.
std::vector<Margin> margins_of(const Check& check, const Circuit& circuit, const RunParts& parts) {
    const std::string subject = "run \"" + parts.run.name + '"';
    std::vector<Margin> all = run_margins(circuit, check.candidate.site, parts);
    if (circuit.run_at_element() == &parts &&
        (circuit.heat || parts.run.surroundings.kind == SurroundingsKind::bed)) {
        for (Margin& margin :
             tail_margins(circuit, check.candidate.site, check.candidate.bright, check.heat)) {
            all.push_back(std::move(margin));
        }
    }
    std::erase_if(all, [&subject](const Margin& margin) { return margin.subject != subject; });
    return all;
}

bool of_joint(const Margin& margin) {
    return margin.name.find("joint") != std::string::npos;
}

/// The code has no table for many high-temperature wires, and some places lack facts for any wire:
/// neither excludes a wire.
bool rules_none_out(const Margin& margin) {
    if (of_joint(margin) || margin.name == "placing") return true;
    return margin.name == "run current" && margin.severity == Severity::not_assessed;
}

bool would_do(const std::vector<Margin>& margins, bool with_caution = true) {
    return std::all_of(margins.begin(), margins.end(), [with_caution](const Margin& margin) {
        return rules_none_out(margin) || margin.severity == Severity::none ||
               (with_caution && margin.severity == Severity::caution &&
                margin.headroom.value_or(0.0) > 0.0);
    });
}

/// The cheapest suitable wire; one without a caution precedes one with a caution.
std::optional<Wire> cheapest(const Check& check, std::size_t run) {
    if (check.catalog == nullptr) return std::nullopt;
    Circuit circuit = check.candidate.circuit;
    const WireRun& wanted = check.candidate.circuit.runs[run].run;
    const Wire* near_its_limit = nullptr;
    for (const Wire* wire : wires_by_price(*check.catalog)) {
        circuit.runs[run] = parts_of_run(*check.catalog, wanted, *wire);
        if (!wire_may_lie(circuit, check.candidate.site, circuit.runs[run])) continue;
        const std::vector<Margin> margins = margins_of(check, circuit, circuit.runs[run]);
        if (would_do(margins, false)) return *wire;
        if (near_its_limit == nullptr && would_do(margins)) near_its_limit = wire;
    }
    return near_its_limit == nullptr ? std::nullopt : std::optional(*near_its_limit);
}

std::vector<WireLimit> limits_of(const std::vector<Margin>& margins) {
    std::map<WirePart, WireLimit> lowest;
    for (const Margin& margin : margins) {
        if (!margin.limit || margin.unit != unit::celsius) continue;
        std::string_view name = margin.name;
        // At the element the wire is dry and hot: the margins there decide.
        constexpr std::string_view beside = "hot tail ";
        const bool hot = name.starts_with(beside);
        if (hot) name.remove_prefix(beside.size());
        const auto what = find_choice<WirePart>(name);
        if (!what) continue;
        const WireLimit limit{*what, *margin.limit, margin.consequence, margin.source};
        if (hot) lowest[*what] = limit;
        lowest.try_emplace(*what, limit);
    }
    std::vector<WireLimit> limits;
    limits.reserve(lowest.size());
    for (const auto& [what, limit] : lowest) limits.push_back(limit);
    std::sort(limits.begin(), limits.end(),
              [](const WireLimit& a, const WireLimit& b) { return a.limit_c < b.limit_c; });
    return limits;
}

/// The most severe margin in its own words; the temperature where there is no finding.
void judge(WireCheck& result, const std::vector<Margin>& margins) {
    const Margin* worst = nullptr;
    const Margin* unknown = nullptr;
    // Among margins without a finding, those at the element are the most informative.
    const auto order = [](const Margin& margin) {
        const bool passes = margin.severity == Severity::none;
        const bool hot = passes && margin.name == "hot tail insulation";
        return std::tuple(static_cast<int>(margin.severity), hot ? 1 : 0,
                          -margin.headroom.value_or(1.0));
    };
    for (const Margin& margin : margins) {
        if (margin.severity == Severity::not_assessed) {
            if (!rules_none_out(margin) && unknown == nullptr) unknown = &margin;
            continue;
        }
        if (worst == nullptr || order(margin) > order(*worst)) worst = &margin;
        result.assumed.insert(result.assumed.end(), margin.assumed.begin(), margin.assumed.end());
    }
    if (worst == nullptr) {
        if (!margins.empty()) result.sentence = margins.front().whole();
        return;
    }
    const bool passed = worst->severity > Severity::none;
    const bool judged = passed || unknown == nullptr;
    result.severity = judged ? worst->severity : Severity::not_assessed;
    result.sentence = (judged ? worst : unknown)->whole();
}

/// Highest temperature at which a limit still has the headroom of a margin without a caution.
double with_headroom_c(double limit_c) {
    return limit_c - near_limit * (limit_c - room_c);
}

void add_reach(WireCheck& result, const Check& check, const Surroundings& around) {
    if (check.catalog == nullptr || !check.tail) return;
    // Suitable wires are not determined in air that was only assumed.
    if (around.kind != SurroundingsKind::bed && !around.air_c) return;
    for (const Insulation& insulation : check.catalog->insulations) {
        const double suitable_c = with_headroom_c(insulation.limit_c);
        result.reach.push_back({.insulation = insulation.id,
                                .family = insulation.family,
                                .limit_c = insulation.limit_c,
                                .from_m = result.far_c.value_or(0.0) < suitable_c
                                              ? check.tail->distance_for_limit_m(suitable_c)
                                              : std::nullopt});
    }
    std::stable_sort(result.reach.begin(), result.reach.end(),
                     [](const auto& a, const auto& b) { return a.limit_c < b.limit_c; });
}

void add_currents(WireCheck& result, const Check& check, const RunParts& parts) {
    const Wire& wire = *parts.wire;
    const Surroundings& around = parts.run.surroundings;
    const auto& insulation = parts.insulation;
    const RunAmpacity ampacity = run_ampacity(check.candidate.circuit, parts, check.candidate.site);
    if (ampacity.whole) {
        result.code_ampacity_a = ampacity.table_a;
        result.corrected_ampacity_a = ampacity.corrected_a;
    }
    if (around.air_c && !result.limits.empty()) {
        result.balance_ampacity_a = ampacity_by_balance_a(wire, insulation ? &*insulation : nullptr,
                                                          result.limits.front().limit_c, around);
    }
    result.drop_v = parts.loop_ohm() * result.current_a;
    result.heat_w = result.drop_v * result.current_a;
}

WireCheck check_run(const Check& check, std::size_t index) {
    const Circuit& circuit = check.candidate.circuit;
    const RunParts& parts = circuit.runs[index];
    WireCheck result{.run = parts.run.name};
    result.current_a = circuit.short_circuit_current_a() * circuit.current_share(parts.run) *
                       check.candidate.site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    result.at_element = circuit.run_at_element() == &parts && circuit.heat;
    const std::vector<Margin> margins = margins_of(check, circuit, parts);
    result.limits = limits_of(margins);
    if (!result.limits.empty()) result.limiting_part = result.limits.front().what;
    judge(result, margins);
    if (parts.wire) {
        result.wire = parts.wire->id;
        result.gauge = gauge_of(*parts.wire);
        add_currents(result, check, parts);
        if (const auto at = parts.temperature(result.current_a)) {
            result.conductor_c = at->conductor_c;
            result.far_c = at->conductor_c;
            result.runaway = at->runaway;
        }
    }
    if (result.at_element && check.tail) {
        if (!result.far_c) result.far_c = check.tail->far_wire_c;
        result.conductor_c =
            std::max(result.conductor_c.value_or(check.tail->terminal_c), check.tail->terminal_c);
        result.runaway = result.runaway || check.tail->runaway;
        add_reach(result, check, parts.run.surroundings);
    }
    const bool laid_well =
        !parts.wire || wire_may_lie(circuit, check.candidate.site, circuit.runs[index]);
    if (!laid_well || !would_do(margins)) {
        result.sufficient_wire = cheapest(check, index);
        if (result.sufficient_wire) result.sufficient_gauge = gauge_of(*result.sufficient_wire);
    }
    return result;
}

}  // namespace

std::vector<WireCheck> check_wires(const Candidate& candidate, const Parts* catalog) {
    check_circuit(candidate.circuit, candidate.site);
    Check check{.candidate = candidate,
                .catalog = catalog != nullptr ? catalog : candidate.catalog.get(),
                .heat = heat_of(candidate.circuit, candidate.bright)};
    check.tail = tail_of(candidate.circuit, candidate.bright, check.heat);
    std::vector<WireCheck> checks;
    for (std::size_t i = 0; i < candidate.circuit.runs.size(); ++i) {
        checks.push_back(check_run(check, i));
    }
    return checks;
}

}  // namespace heatmatch
