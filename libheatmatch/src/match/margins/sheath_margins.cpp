#include "heatmatch/match/margins/sheath_margins.hpp"

#include "said.hpp"
#include "sentences.hpp"
#include "sentences_of_stores.hpp"
#include "store_view.hpp"
#include "survivors.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"

namespace heatmatch {

using margins_sentences::of_stores::say;

namespace {

constexpr auto names_of_element =
    std::to_array<const char*>({"sheath temperature", "coil temperature", "settled sand"});
constexpr auto names_of_store = std::to_array<const char*>({"stagnation"});

/// `At 2.1 W/cm for 6 h a day`
Sentence load_of(const StoreView& view) {
    return say<"sheath.load">(with<"load">(view.point.w_per_cm, unit::watt_per_cm),
                              with<"hours">(view.heat.store->charge_hours, unit::hour));
}

Sentence reach_of(const StoreView& view, const std::optional<Sheath>& sheath) {
    if (!sheath) return say<"sheath.unknown">(with<"load">(load_of(view)));
    if (view.heat.liquid) {
        return say<"sheath.in_liquid">(with<"load">(load_of(view)), with<"sheath">(sheath->label));
    }
    return say<"sheath.in_fill">(with<"load">(load_of(view)), with<"sheath">(sheath->label));
}

std::optional<BankHeat::Judged> damp_of(const StoreView& view) {
    const double power_w = 100.0 * view.point.w_per_cm * view.heat.heated_length_m;
    return view.heat.damp_at(power_w / view.heat.elements);
}

/// A bed stated as damp is assessed as damp; its temperature once dry is a warning.
void warn_if_dry(Margin& margin, double dry_c) {
    if (!margin.limit || margin.severity == Severity::danger || dry_c <= *margin.limit) return;
    margin.severity = Severity::warning;
}

Sentence fit_said(const BankHeat& heat) {
    if (heat.misfit.empty()) {
        return heat.liquid ? say<"sheath.fits_in_liquid">() : say<"sheath.fits">();
    }
    return heat.liquid ? say<"sheath.sticks_out_of_liquid">(with<"misfit">(heat.misfit))
                       : say<"sheath.sticks_out">(with<"misfit">(heat.misfit));
}

Margin fit_margin(const Circuit& circuit) {
    const BankHeat& heat = *circuit.heat;
    const bool fits = heat.misfit.empty();
    return {.name = "fit in store",
            .subject = "element \"" + circuit.bank.element.id + '"',
            .severity = fits ? Severity::none : Severity::danger,
            .headroom = fits ? 1.0 : -1.0,
            .said = fit_said(heat),
            .source = "common-practice",
            .assumed = heat.assumed};
}

Margin sheath_margin(const StoreView& view) {
    const auto& sheath = view.heat.sheath;
    Margin margin =
        heat_margin(view, "sheath temperature", Severity::danger, view.point.sheath_c,
                    sheath ? std::optional(sheath->verdict_limit_c) : std::nullopt,
                    reach_of(view, sheath), sheath ? sheath->provenance.source : "ul-1030");
    margin.subject = view.element;
    margin.value_low = view.point.sheath_band.low_c;
    margin.value_high = view.point.sheath_band.high_c;
    if (!sheath) margin.missing = {"sheath"};
    const auto damp = damp_of(view);
    if (sheath && damp) {
        margin.value = damp->sheath_c;
        margin.value_low.reset();
        margin.value_high = view.point.sheath_c;
        margin.said =
            say<"sheath.in_damp_fill">(with<"load">(load_of(view)), with<"sheath">(sheath->label));
    }
    if (view.point.gap_k > 0.0) {
        add(margin,
            say<"sheath.gap">(with<"adds">(view.point.gap_k, unit::kelvin),
                              with<"gap">(1000.0 * view.heat.careful.gap_m, unit::millimetre)));
    }
    grade(margin, room_c);
    if (damp) warn_if_dry(margin, view.point.sheath_c);
    return margin;
}

Margin coil_margin(const StoreView& view) {
    Margin margin = heat_margin(view, "coil temperature", Severity::danger, view.point.coil_c,
                                view.heat.coil_limit_c, say<"sheath.coil">(), "from-memory");
    margin.subject = view.element;
    if (!margin.limit) {
        margin.said = say<"sheath.coil_alone">();
        margin.missing = {"alloy"};
    } else if (view.circuit.bank.alloy) {
        margin.source = view.circuit.bank.alloy->provenance.source;
    }
    grade(margin, room_c);
    return margin;
}

/// Sand settles and rods expand: where grains no longer touch, the sheath is hotter.
Margin settled_margin(const StoreView& view) {
    const auto& sheath = view.heat.sheath;
    Margin margin = heat_margin(view, "settled sand", Severity::warning, view.point.void_c,
                                sheath ? std::optional(sheath->hard_limit_c) : std::nullopt,
                                say<"sheath.settled">(), "common-practice");
    margin.subject = view.element;
    if (!sheath) margin.missing = {"sheath"};
    if (view.heat.liquid || view.heat.store->medium.form == MediumForm::solid) {
        margin.said = view.heat.liquid ? say<"sheath.liquid_does_not_settle">()
                                       : say<"sheath.nothing_settles">();
        margin.value.reset();
        margin.limit.reset();
        margin.missing.clear();
        margin.severity = Severity::none;
        return margin;
    }
    if (!sheath) margin.said = say<"sheath.settled_alone">();
    grade(margin, room_c);
    return margin;
}

}  // namespace

std::optional<HeatPoint> heat_of(const Circuit& circuit, const Extremes& extremes) {
    if (!circuit.heat || !circuit.heat->known()) return std::nullopt;
    if (circuit.bank.unlike) return hottest_of(elements_seen(circuit, extremes));
    return circuit.heat->at(extremes.element_power_w);
}

namespace {

constexpr auto survivor_name = std::to_array<const char*>({"survivor sheath"});

}  // namespace

Margin survivor_sheath_margin(const Circuit& circuit, const Extremes& extremes) {
    const Bank& bank = circuit.bank;
    if (bank.hookup.parallel < 2) {
        return {.name = survivor_name.front(),
                .subject = "element \"" + bank.element.id + '"',
                .severity = Severity::none,
                .said = margins_sentences::say<"bank.one_branch">(),
                .source = "common-practice"};
    }
    return survivor_sheath_in(circuit, survivors_of(circuit).get(), extremes.survivor_power_w);
}

Margin survivor_sheath_in(const Circuit& circuit, const BankHeat* left, double survivor_w) {
    if (left == nullptr || !circuit.heat || !circuit.heat->known()) {
        return margins_without_heat(circuit, survivor_name).front();
    }
    if (!left->known())
        return not_assessed(survivor_name.front(), "element \"" + circuit.bank.element.id + '"',
                            say<"sheath.survivors_misfit">(), {"store"});
    const HeatPoint point = left->at(survivor_w);
    const StoreView view(circuit, point);
    const auto& sheath = left->sheath;
    const double judged_c = left->judged_at(survivor_w).sheath_c;
    Margin margin =
        heat_margin(view, "survivor sheath", Severity::danger, judged_c,
                    sheath ? std::optional(sheath->hard_limit_c) : std::nullopt,
                    say<"sheath.survivors">(), sheath ? sheath->provenance.source : "ul-1030");
    margin.subject = view.element;
    if (!sheath) {
        margin.said = say<"sheath.survivors_alone">();
        margin.missing = {"sheath"};
        return margin;
    }
    grade(margin, room_c);
    // Its temperature once dry is a warning too.
    const double hottest_c = std::max(judged_c, point.sheath_c);
    if (margin.severity == Severity::danger || hottest_c <= sheath->verdict_limit_c) return margin;
    margin.severity = Severity::warning;
    margin.said = say<"sheath.survivors_not_for_years">(
        with<"reached">(hottest_c, unit::celsius),
        with<"years">(sheath->verdict_limit_c, unit::celsius));
    return margin;
}

Margin stagnation_margin(const Circuit& circuit, const HeatPoint& point, bool limited) {
    const StoreView view(circuit, point);
    const auto& sheath = view.heat.sheath;
    const Sentence stop = limited ? say<"sheath.limit_has_to_stop">() : Sentence{};
    Margin margin = heat_margin(
        view, "stagnation", limited ? Severity::warning : Severity::danger,
        view.point.stagnation_sheath_c,
        sheath ? std::optional(sheath->verdict_limit_c) : std::nullopt,
        view.heat.liquid
            ? say<"sheath.stagnation_in_liquid">(with<"stop">(stop))
            : say<"sheath.stagnation">(with<"least">(view.point.stagnation_least_c, unit::celsius),
                                       with<"stop">(stop)),
        "common-practice");
    margin.value_low = view.point.stagnation_wall_c;
    const auto damp = damp_of(view);
    if (sheath && damp) {
        margin.value = damp->stagnation_sheath_c;
        margin.said = say<"sheath.stagnation_damp">(
            with<"dry">(view.point.stagnation_sheath_c, unit::celsius));
    }
    add(margin,
        say<"sheath.stagnation_wall">(with<"lid">(view.point.stagnation_lid_c, unit::celsius)));
    if (!sheath) {
        margin.said = say<"sheath.stagnation_alone">();
        margin.missing = {"sheath"};
    }
    grade(margin, room_c);
    if (damp) warn_if_dry(margin, view.point.stagnation_sheath_c);
    return margin;
}

std::shared_ptr<const BankHeat> survivors_of(const Circuit& circuit) {
    const Bank& bank = circuit.bank;
    if (!circuit.heat || bank.hookup.parallel < 2) return nullptr;
    return bank_heat(circuit.heat->store, bank.element, bank.sheath, bank.alloy,
                     bank.hookup_left().count());
}

std::optional<double> survivor_headroom(const BankHeat& left, double survivor_w) {
    if (!left.known() || !left.sheath) return std::nullopt;
    return headroom_of(left.judged_at(survivor_w).sheath_c, left.sheath->hard_limit_c, room_c);
}

std::vector<Margin> sheath_margins_in_use(const Circuit& circuit,
                                          const std::optional<HeatPoint>& point) {
    std::vector<Margin> margins;
    const auto append = [&margins](const std::vector<Margin>& more) {
        margins.insert(margins.end(), more.begin(), more.end());
    };
    if (circuit.heat && circuit.heat->missing.empty()) {
        margins.push_back(fit_margin(circuit));
    } else {
        constexpr auto fit = std::to_array<const char*>({"fit in store"});
        append(margins_without_heat(circuit, fit));
    }
    if (point) {
        const StoreView view(circuit, *point);
        append({sheath_margin(view), coil_margin(view), settled_margin(view)});
    } else {
        append(margins_without_heat(circuit, names_of_element));
    }
    return margins;
}

std::vector<Margin> sheath_margins(const Circuit& circuit, const std::optional<HeatPoint>& point,
                                   const OpeningSite& site) {
    std::vector<Margin> margins = sheath_margins_in_use(circuit, point);
    if (point) {
        const BankHeat& heat = *circuit.heat;
        const double element_w = 100.0 * point->w_per_cm * heat.heated_length_m / heat.elements;
        margins.push_back(
            stagnation_margin(circuit, *point, limit_counts(circuit, element_w, site)));
    } else {
        margins.push_back(margins_without_heat(circuit, names_of_store, Of::store).front());
    }
    return margins;
}

}  // namespace heatmatch
