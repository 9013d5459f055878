#include "heatmatch/match/margins/sheath_margins.hpp"

#include "store_view.hpp"

#include <array>

#include "heatmatch/match/margins/device_margins.hpp"

namespace heatmatch {

namespace {

constexpr auto names_of_heat = std::to_array<const char*>(
    {"sheath temperature", "coil temperature", "settled sand", "stagnation"});

/// `At 2.1 W/cm (5.3 W/in) for 6 h a day`
std::string load_of(const StoreView& view) {
    constexpr double cm_per_inch = 2.54;
    return "At " + format_number(view.point.w_per_cm, 3) + " W/cm (" +
           format_number(view.point.w_per_cm * cm_per_inch, 3) + " W/in) for " +
           format_number(view.heat.store->charge_hours, 3) + " h a day";
}

Margin fit_margin(const Circuit& circuit) {
    const BankHeat& heat = *circuit.heat;
    const bool fits = heat.misfit.empty();
    return {
        .name = "fit in store",
        .subject = "element \"" + circuit.bank.element.id + '"',
        .severity = fits ? Severity::none : Severity::danger,
        .headroom = fits ? 1.0 : -1.0,
        .said = fits
                    ? Sentence(
                          "Its heated length fits the store; what stuck out would glow in the air.")
                    : Sentence("It does not fit: " + heat.misfit +
                               ". What sticks out of the fill glows in the air."),
        .source = "common-practice",
        .assumed = heat.assumed};
}

Margin sheath_margin(const StoreView& view) {
    const auto& sheath = view.heat.sheath;
    const std::string load = load_of(view);
    const std::string fill = view.heat.liquid
                                 ? " the sheath reaches {value} in the liquid; "
                                 : " the sheath reaches {value}, the fill at its worst and the "
                                   "model's error counted ({low} to {high} by the fill alone); ";
    Margin margin =
        heat_margin(view, "sheath temperature", Severity::danger, view.point.sheath_c,
                    sheath ? std::optional(sheath->verdict_limit_c) : std::nullopt,
                    load + fill + (sheath ? sheath->label + " stands {limit} for years." : ""),
                    sheath ? sheath->provenance.source : "ul-1030");
    margin.subject = view.element;
    margin.value_low = view.point.sheath_band.low_c;
    margin.value_high = view.point.sheath_band.high_c;
    if (!sheath) {
        margin.said = load + " the sheath reaches {value}; what it is made of is not known.";
        margin.missing = {"sheath"};
    }
    grade(margin, room_c);
    return margin;
}

Margin coil_margin(const StoreView& view) {
    Margin margin = heat_margin(
        view, "coil temperature", Severity::danger, view.point.coil_c, view.heat.coil_limit_c,
        "Inside, the coil reaches {value}; its alloy stands {limit}.", "from-memory");
    margin.subject = view.element;
    if (!margin.limit) {
        margin.said = "Inside, the coil reaches {value}; its alloy is not known.";
        margin.missing = {"alloy"};
    } else if (view.circuit.bank.alloy) {
        margin.source = view.circuit.bank.alloy->provenance.source;
    }
    grade(margin, room_c);
    return margin;
}

/// Sand settles, rods grow: where grains no longer touch, the sheath is hotter.
Margin settled_margin(const StoreView& view) {
    const auto& sheath = view.heat.sheath;
    Margin margin = heat_margin(
        view, "settled sand", Severity::warning, view.point.void_c,
        sheath ? std::optional(sheath->hard_limit_c) : std::nullopt,
        "Where the fill settles away from the sheath, the spot reaches {value}; the tube "
        "fails soon above {limit}. Tamp it, and look again after the first weeks.",
        "common-practice");
    margin.subject = view.element;
    if (!sheath) margin.missing = {"sheath"};
    if (view.heat.liquid || view.heat.store->medium.form == "solid") {
        margin.said = "Nothing here settles; a bored brick or block wants its gap packed.";
        margin.value.reset();
        margin.limit.reset();
        margin.missing.clear();
        margin.severity = Severity::none;
        return margin;
    }
    if (!sheath) margin.said = "A settled spot reaches {value}; the sheath is not known.";
    grade(margin, room_c);
    return margin;
}

Margin stagnation_margin(const StoreView& view) {
    const auto& sheath = view.heat.sheath;
    const bool limited = has_independent_limit(view.circuit.devices);
    Margin margin = heat_margin(
        view, "stagnation", limited ? Severity::warning : Severity::danger,
        view.point.stagnation_sheath_c,
        sheath ? std::optional(sheath->verdict_limit_c) : std::nullopt,
        std::string("Fourteen bright days in the air of high summer, no heat taken out, the "
                    "thermostat welded and the fill at its worst: the sheath reaches {value}, its "
                    "limit is {limit}") +
            (limited ? "; the independent limit has to stop it before." : "."),
        "common-practice");
    margin.value_low = view.point.stagnation_wall_c;
    margin.said += " The wall reaches {low} then.";
    if (!sheath) {
        margin.said =
            "After fourteen bright days without a thermostat the sheath reaches {value}; "
            "what it is made of is not known.";
        margin.missing = {"sheath"};
    }
    grade(margin, room_c);
    return margin;
}

}  // namespace

std::optional<HeatPoint> heat_of(const Circuit& circuit, const Extremes& extremes) {
    if (!circuit.heat || !circuit.heat->known()) return std::nullopt;
    return circuit.heat->at(extremes.element_power_w);
}

Margin survivor_sheath_margin(const Circuit& circuit, const Extremes& extremes) {
    const Bank& bank = circuit.bank;
    constexpr auto name = std::to_array<const char*>({"survivor sheath"});
    if (bank.hookup.parallel < 2) {
        return {.name = name.front(),
                .subject = "element \"" + bank.element.id + '"',
                .severity = Severity::none,
                .said = "One branch: if an element opens, nothing heats.",
                .source = "common-practice"};
    }
    if (!circuit.heat || !circuit.heat->known()) {
        return margins_without_heat(circuit, name).front();
    }
    const auto left = bank_heat(circuit.heat->store, bank.element, bank.sheath, bank.alloy,
                                bank.hookup.count() - bank.hookup.series);
    if (!left->known())
        return not_assessed(name.front(), "element \"" + bank.element.id + '"',
                            "What is left does not fit the store.", {"store"});
    const HeatPoint point = left->at(extremes.survivor_power_w);
    const StoreView view(circuit, point);
    const auto& sheath = view.heat.sheath;
    Margin margin = heat_margin(view, "survivor sheath", Severity::warning, point.sheath_c,
                                sheath ? std::optional(sheath->verdict_limit_c) : std::nullopt,
                                "If one parallel branch opens, the sheath of the others reaches "
                                "{value}; it stands {limit}.",
                                sheath ? sheath->provenance.source : "ul-1030");
    margin.subject = view.element;
    if (!sheath) {
        margin.said =
            "If one parallel branch opens, the sheath of the others reaches {value}; what "
            "it is made of is not known.";
        margin.missing = {"sheath"};
    }
    grade(margin, room_c);
    return margin;
}

std::vector<Margin> sheath_margins(const Circuit& circuit, const std::optional<HeatPoint>& point) {
    std::vector<Margin> margins;
    if (circuit.heat && circuit.heat->missing.empty()) {
        margins.push_back(fit_margin(circuit));
    } else {
        constexpr auto fit = std::to_array<const char*>({"fit in store"});
        margins = margins_without_heat(circuit, fit);
    }
    if (!point) {
        const std::vector<Margin> more = margins_without_heat(circuit, names_of_heat);
        margins.insert(margins.end(), more.begin(), more.end());
        return margins;
    }
    const StoreView view(circuit, *point);
    margins.insert(margins.end(), {sheath_margin(view), coil_margin(view), settled_margin(view),
                                   stagnation_margin(view)});
    return margins;
}

}  // namespace heatmatch
