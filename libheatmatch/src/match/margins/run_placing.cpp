#include "run_view.hpp"
#include "sentences_of_runs.hpp"

#include <algorithm>

#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/parts/wire_kind.hpp"

namespace heatmatch {

using margins_sentences::of_runs::say;

namespace {

// Above either value, direct current of panels inside a building has to be in metal. @cite
// nec-690-31
constexpr double inside_v = 30.0;
constexpr double inside_a = 8.0;

enum class May { yes, no, unknown };

/// The result, with its reason.
struct Placing {
    May may = May::yes;
    Sentence why{};
    std::string source{};
    std::vector<std::string> missing{};
};

WireKind kind_of(const RunView& run) {
    const auto& insulation = run.parts.insulation;
    return wire_kind(*run.parts.wire, insulation ? &*insulation : nullptr);
}

bool in_raceway(const RunView& run) {
    const Surroundings& around = run.around();
    return around.kind == SurroundingsKind::conduit || around.metal_raceway.value_or(false);
}

Placing in_ground(const RunView& run, const WirePlaces& places) {
    const auto& burial = run.parts.wire->direct_burial;
    const std::string kind = shown_choice(places.kind);
    Placing result{.source = "nec-310-10"};
    if (!burial) {
        result.may = May::unknown;
        result.why = say<"run.burial_unknown">(with<"kind">(kind));
        result.missing = {"direct_burial"};
        return result;
    }
    result.may = *burial ? May::yes : May::no;
    result.why = *burial ? say<"run.may_be_buried">() : say<"run.not_buried">(with<"kind">(kind));
    return result;
}

/// By the kind of wire alone.
Placing of_kind(const RunView& run) {
    const WirePlaces& places = places_of(kind_of(run));
    Placing result{.source = std::string(places.source)};
    const std::string kind = shown_choice(places.kind);
    if (places.kind == WireKind::unknown) {
        result.may = May::unknown;
        result.why = say<"run.kind_unknown">();
        result.missing = {"marking"};
        return result;
    }
    if (places.kind == WireKind::pv_cable && run.site.code != WiringCode::iec) {
        result.may = run.site.code ? May::no : May::unknown;
        result.source = "nec-690-31";
        result.why = run.site.code ? say<"run.not_pv_wire">() : say<"run.perhaps_not_pv_wire">();
        if (!run.site.code) result.missing = {"site.code"};
        return result;
    }
    const Surroundings& around = run.around();
    const bool of_heater = places.element && (run.at_element || run.in_bed());
    if (of_heater) {
        result.why = say<"run.may_lie_at_element">(with<"kind">(kind));
        return result;
    }
    if (!run.in_bed() && !in_raceway(run) && around.kind == SurroundingsKind::buried)
        return in_ground(run, places);
    bool may = places.open;
    Sentence where = say<"run.in_open">();
    if (run.in_bed()) {
        may = false;
        where = say<"run.in_bed">();
    } else if (in_raceway(run)) {
        may = places.raceway;
        where = say<"run.in_raceway">();
    } else if (around.kind == SurroundingsKind::cavity) {
        may = places.cavity;
        where = say<"run.in_cavity">();
    } else if (places.kind == WireKind::indoor_cable) {
        const bool outdoors =
            around.kind == SurroundingsKind::sunlit || run.parts.run.inside == false;
        may = !outdoors;
        if (outdoors) where = say<"run.outdoors">();
    }
    result.may = may ? May::yes : May::no;
    result.why = may ? say<"run.may_lie">(with<"kind">(kind), with<"where">(where))
                     : say<"run.may_not_lie">(with<"kind">(kind), with<"where">(where));
    return result;
}

/// Underground service wire with no other marking is not permitted inside a building.
Placing of_service(const RunView& run) {
    Placing result{.source = "nec-338-12"};
    if (kind_of(run) != WireKind::service || run.parts.run.inside == false) return result;
    const bool known = run.parts.run.inside.has_value();
    result.may = known ? May::no : May::unknown;
    result.why = known ? say<"run.service_inside">() : say<"run.service_perhaps_inside">();
    if (!known) result.missing = {"run.inside"};
    return result;
}

/// By the metal around it inside a building.
Placing of_inside(const RunView& run) {
    Placing result{.source = "nec-690-31"};
    const bool much =
        run.cold_voltage_v > inside_v || lasting_current_factor * run.code_isc_a > inside_a;
    const Surroundings& around = run.around();
    const bool metal = around.metal_raceway.value_or(false) || run.in_bed() ||
                       kind_of(run) == WireKind::metal_clad;
    const bool iec = run.site.code == WiringCode::iec;
    if (!much || metal || iec || run.parts.run.inside == false) return result;
    const bool outside =
        around.kind == SurroundingsKind::sunlit || around.kind == SurroundingsKind::buried;
    if (!run.parts.run.inside && outside) return result;
    const bool in_pipe = around.kind == SurroundingsKind::conduit;
    if (!run.parts.run.inside) result.missing.emplace_back("run.inside");
    if (in_pipe && !around.metal_raceway) result.missing.emplace_back("surroundings.metal_raceway");
    result.may = result.missing.empty() ? May::no : May::unknown;
    const auto volts = with<"volts">(inside_v, unit::volt);
    const auto amperes = with<"amperes">(inside_a, unit::ampere);
    result.why = result.may == May::no ? say<"run.not_in_metal">(volts, amperes)
                                       : say<"run.metal_unknown">(volts, amperes);
    return result;
}

}  // namespace

Margin placing_margin(const RunView& run) {
    std::vector<Placing> all{of_kind(run), of_service(run), of_inside(run)};
    const auto first = [&all](May may) {
        return std::find_if(all.begin(), all.end(),
                            [may](const Placing& each) { return each.may == may; });
    };
    auto speaks = first(May::no);
    if (speaks == all.end()) speaks = first(May::unknown);
    if (speaks == all.end()) speaks = all.begin();
    Margin margin{.name = "placing",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .said = speaks->why,
                  .source = speaks->source};
    if (speaks->may == May::unknown) {
        margin.missing = speaks->missing;
        return margin;
    }
    margin.severity = speaks->may == May::no ? Severity::warning : Severity::none;
    return margin;
}

bool kind_may_lie(const RunView& run) {
    return of_kind(run).may == May::yes && of_service(run).may != May::no;
}

Margin sunlight_margin(const RunView& run) {
    const auto& resistant = run.parts.wire->sunlight_resistant;
    Margin margin{.name = "sunlight",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .source = "nec-310-10"};
    const bool in_sun = run.around().kind == SurroundingsKind::sunlit && !in_raceway(run);
    if (!in_sun) {
        margin.severity = Severity::none;
        margin.said = say<"run.out_of_sun">();
        return margin;
    }
    if (!resistant) {
        margin.said = say<"run.sunlight_unknown">();
        margin.missing = {"sunlight_resistant"};
        return margin;
    }
    margin.severity = *resistant ? Severity::none : Severity::warning;
    margin.said = *resistant ? say<"run.sunlight">() : say<"run.no_sunlight">();
    return margin;
}

Margin wet_margin(const RunView& run) {
    const auto& insulation = run.parts.insulation;
    Margin margin{.name = "wet place",
                  .subject = run.subject,
                  .consequence = Severity::warning,
                  .source = insulation ? insulation->provenance.source : "nec-310-10"};
    if (run.in_bed() || !run.wet) {
        margin.severity = Severity::none;
        margin.said = run.in_bed() ? say<"run.dry_in_bed">() : say<"run.dry_place">();
        return margin;
    }
    if (!insulation) {
        margin.said = say<"run.insulation_unknown">();
        margin.missing = {"insulation"};
        return margin;
    }
    margin.severity = insulation->limit_wet_c ? Severity::none : Severity::warning;
    margin.said = insulation->limit_wet_c ? say<"run.wet">() : say<"run.not_wet">();
    return margin;
}

}  // namespace heatmatch
