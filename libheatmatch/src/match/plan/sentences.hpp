#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::plan_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"plan.list_panels", "list what you own: {example}"},
    {"plan.list_elements", "list what you own or may buy: {example} allows all"},
    {"plan.give_weather", "add \"weather\" to the installation, or pass weather data"},

    {"plan.answer", "{count} circuits deliver {heat} a day of the season, for {price}."},
    {"plan.answer_of_one", "One circuit delivers {heat} a day of the season, for {price}."},
    {"plan.beside_single", "The best circuit alone delivers {heat} a day."},
    {"plan.of_one_group", "One circuit of one group of panels: {heat} a day, for {price}."},
    {"plan.none_of_one_group", "No circuit of one group of panels meets the goals."},
    {"plan.in_one_array", "All panels in one array: {heat} a day, for {price}."},
    {"plan.none_in_one_array", "No array of all panels meets the goals."},
    {"plan.none_found_of_one_group",
     "No circuit of one group of panels was found that meets the goals; not all were tried."},
    {"plan.none_found_in_one_array",
     "No array of all panels was found that meets the goals; not all were tried."},
    {"plan.required_headroom",
     "Every check that was made and whose limit means danger has a headroom of {headroom} or "
     "more."},
    {"plan.bounds",
     "No plan exceeds {panels} a day, whatever the wiring of the panels; {store} with any bill; "
     "{bill} without the heat of other circuits in the store."},
    {"plan.idle", "Left out: {count} of group \"{group}\". {why}"},

    {"plan.more_heat", "{more} more heat at headroom {headroom}, for {price}."},
    {"plan.same_heat", "No more heat at headroom {headroom}."},
    {"plan.below_volts", "At most {volts} at the record low: {heat} a day, for {price}."},
    {"plan.below_volts_at_least",
     "At most {volts} at the record low: {heat} a day or more, for {price} (not proven)."},
    {"plan.none_below_volts", "No plan with at most {volts} at the record low meets the goals."},
    {"plan.none_found_below_volts",
     "No plan with at most {volts} at the record low was found (not proven)."},
    {"plan.no_array_below_volts", "Each of these panels exceeds {volts} at the record low."},
    {"plan.price", "{price} {currency}"},
    {"plan.price_not_known", "a bill that is not known"},

    {"plan.idle_danger", "The best circuit of them alone has a danger: {margin}."},
    {"plan.idle_not_assessed", "A check of their circuits could not be made: {margin}."},
    {"plan.idle_budget", "With a circuit of their own, the bill exceeds the budget."},
    {"plan.idle_together", "With a circuit of their own, {margin} would be too near its limit."},
    {"plan.idle_circuits", "They need a circuit of their own, and the plan has all {count}."},
    {"plan.idle_bound", "No plan that includes them has more heat."},

    {"plan.none", "No plan meets the goals."},
    {"plan.none_found", "No plan that meets the goals was found; not all were tried."},
    {"plan.none_because", "No plan meets the goals; most circuits failed by {margin}."},
    {"plan.nearest", "{goal}, {heat} a day is possible, for {price} at headroom {headroom}."},
    {"plan.goal_larger_budget", "With a budget of {budget} {currency}"},
    {"plan.goal_budget", "Without the budget"},
    {"plan.goal_volts", "Without the voltage limit"},
    {"plan.goal_headroom", "With a required headroom of {headroom}"},
    {"plan.goal_parts", "Without the limit on parts"},
    {"plan.goal_all", "Without budget, voltage limit, required headroom and limit on parts"},
    {"plan.lacks", "Circuits cannot be judged without {fact}: state it."},

    {"plan.proven", "No other plan of the {arrays} arrays considered has more heat."},
    {"plan.proven_tie",
     "Another plan of the {arrays} arrays considered has {gap} more heat, and a larger bill."},
    {"plan.not_proven", "A plan of the {arrays} arrays considered may have up to {gap} more heat."},
    {"plan.equal_panels", "Each array has panels of one group in equal strings."},
    {"plan.equal_strings", "Each array has equal strings, because there are too many others."},
    {"plan.few_unlike",
     "Banks of elements that differ have at most {count} elements, because there are too many "
     "others."},
    {"plan.idle_misfit", "Their elements do not fit in the store beside the others."},
    {"unlock.add", "Add device \"{device}\", duty \"{duty}\""},
    {"unlock.add_in_run", "Add device \"{device}\" to run \"{run}\", duty \"{duty}\""},
    {"unlock.replace", "Replace device \"{old}\" by \"{device}\""},
    {"unlock.wire", "Replace wire \"{wire}\" of run \"{run}\" by a suitable one"},
    {"unlock.budget", "Spend more than the budget"},
    {"unlock.volts", "Allow more than volts_max"},
    {"unlock.parts", "Allow more than parts_max"},
    {"unlock.circuits", "Allow {count} circuits"},
    {"unlock.said", "{change}: {heat} a day more; the bill changes by {price} {currency}."},
    {"unlock.said_unpriced", "{change}: {heat} a day more; the bill is not known."},
    {"unlock.none", "No single change that was tried adds {least} of heat."},
    {"unlock.numbered", "({number}) {said}"},
    {"unlock.by_money", "By money, in {currency} for each kWh of one season: {order}."},
    {"unlock.crosses", "The array then exceeds {volts} at the record low, which brings duties."},

    {"plan.pattern", "Every circuit has the runs and devices of circuit \"{circuit}\"."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::plan_sentences
