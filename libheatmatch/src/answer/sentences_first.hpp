#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// The first screen.
namespace heatmatch::answer_sentences {

inline constexpr auto first_lines = std::to_array<Template>({
    {"open.marked", "{mark} {severity}"},
    {"open.state", "{margin}: state {field}{more}."},
    {"open.more_fields", " and {count} more"},
    {"open.decides", "State {field} ({part}): unstated, it may hide a danger."},
    {"open.one", "Not for building: one condition is open."},
    {"open.many", "Not for building: {count} conditions are open."},

    {"first.danger", "Not for building: {why}"},
    {"first.nothing", "No circuit can be recommended. {lacking}"},
    {"first.estimate", "An estimate, not an approval."},
    {"first.not_recommended", "Circuit {place}not recommended. {why}"},
    {"first.place", "{place} of the ranking, "},
    {"first.recommended", "Recommended: {circuit}."},
    {"first.build", "build"},
    {"first.row", "circuit"},
    {"first.nearest", "nearest"},
    {"first.heat", "heat"},
    {"first.buy", "buy"},
    {"first.limit", "limit"},
    {"first.open", "first"},
    {"first.checks", "checks"},
    {"first.unlooked", "not here"},

    {"first.array", "{array}{match}"},
    {"first.panel", "{group}: {count} panel{match}"},
    {"first.panels_series", "{group}: {count} panels in series{match}"},
    {"first.panels_parallel", "{group}: {count} panels in parallel{match}"},
    {"first.panels_both", "{group}: {strings} strings of {each} panels in series{match}"},
    {"first.elements", "{count} × {kind}{rating}{hookup}"},
    {"first.rating", ", {watts} {volts}"},
    {"first.in_series", ", in series"},
    {"first.in_parallel", ", in parallel"},
    {"first.both", ", {branches} branches of {each} in series"},
    {"first.match", " (Vmp/Imp {ohm})"},
    {"first.into", "into {elements}: {ohm}"},

    {"first.a_day", "{mean} a day{months} ({low} to {high}){darkest}."},
    {"first.months", ", {from} to {to}"},
    {"first.darkest", "; darkest month {month}: {least}"},
    {"first.power", "{mean} averaged over three irradiances ({low} to {high})."},
    {"first.needs", "Heat for {target}: about {need} a day. This is {share}."},
    {"first.no_need", "What the space needs is not known: state its covers and its target."},
    {"first.warmer", "It warms the space by {lift} on average."},
    {"first.hardly", "hardly any of it ({percent})"},
    {"first.small", "a small part of it ({percent})"},
    {"first.part", "part of it ({percent})"},
    {"first.most", "most of it ({percent})"},
    {"first.all", "all of it on average, not on each day"},
    {"first.never_needed", "Outside it is never below {target} in that season."},

    {"first.bill", "Bill {bill}{of_budget}{items}."},
    {"first.no_bill", "Bill not known: a price or a part is missing."},
    {"first.nothing_to_buy", "Nothing to buy."},
    {"first.of_budget", " of {budget}"},
    {"first.of_budget_beyond", " of {budget} ({low} to {high}: may exceed it)"},
    {"first.items", ": {items:; }"},
    {"first.item", "{count} × {part} {money}"},
    {"first.wire", "{length} {part} {money}"},
    {"first.more_items", "{count} more"},

    {"first.nearest_limit", "Nearest: {margin}, {value} of {limit} (headroom {left})."},
    {"first.nearest_only", "Nearest: {margin} (headroom {left})."},
    {"first.cold", "{cold} at the record low: shock from {shock}, series-arc duties from {arc}."},
    {"first.more_open", "{count} more open"},
    {"first.checks_line",
     "Made {made}: {none} no finding, {cautions} caution, {warnings} warning{dangers}; not made "
     "{not_made}."},
    {"first.checks_danger", ", {count} danger"},
    {"first.never", "Permits, connectors, mounting. No part carries a listing for this use."},

    {"first.others", "other ways"},
    {"first.way", "other ways"},
    {"first.circuit", "circuit"},
    {"first.left", "head"},
    {"first.cold_volts", "cold V"},
    {"first.bill_head", "bill"},
    {"first.most_heat", "most heat"},
    {"first.least_money", "least money"},
    {"first.below", "below {volts}"},
    {"first.coolest", "coolest"},
    {"first.all_owned", "all owned"},
    {"first.plan",
     "With everything you own: {heat} a day, {circuits}, {price}, up to {cold}: heatmatch plan."},
    {"first.no_plan", "With everything you own, no circuit can be recommended: heatmatch plan."},
    {"first.plan_pointer", "With everything you own: heatmatch plan."},
    {"first.one_circuit", "{count} circuit"},
    {"first.many_circuits", "{count} circuits"},
    {"first.plan_unpriced", "bill not known"},
    {"first.plan_bill", "{bill} of {budget}"},
    {"first.none", "none of these circuits"},
    {"first.short", "{group} {panels}, {kind} {bank}"},
    {"first.short_rated", "{group} {panels}, {kind} {watts} {bank}"},

    {"unused.element", "Not used: {count} × {element}: {reason}."},
    {"unused.panels", "Not used: {group}: {reason}."},
    {"unused.unknown", "no pairing that is kept has it"},

    {"first.kills", "DC above {dry} ({wet} where wet) can kill; its arcs do not go out."},
    {"first.codes", "Local codes and licensed practice decide."},
});

}  // namespace heatmatch::answer_sentences
