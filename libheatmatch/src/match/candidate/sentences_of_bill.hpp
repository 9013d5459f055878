#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on bills, listed in answer/sentence_tables.cpp.
namespace heatmatch::candidate_sentences::of_bill {

inline constexpr auto table = std::to_array<Template>({
    {"bill.rate", "Prices in USD are converted at {rate} {currency} for each."},
    {"bill.elements", "Elements of the bank."},
    {"bill.wire", "Wire of \"{run}\", there and back."},
    {"bill.no_wire", "Wire of \"{run}\": none in the catalog suits it."},
    {"bill.wire_not_named",
     "Owned wire of \"{run}\" is not counted: its wire is chosen. Name the wire that you own."},
    {"bill.connectors", "Joints at both ends of \"{run}\"."},
    {"bill.listed", "Listed: {duty}{place}."},
    {"bill.place", ", in \"{run}\""},
    {"bill.not_used", "\"{device}\" is listed, but not on the bill: {why}"},
    {"bill.out_of_range",
     "Its set point of {set} is outside its range. Another one is on the bill."},
    {"bill.no_fuse", "It cannot protect a string here. Another one is on the bill."},
    {"bill.disconnect",
     "Disconnect: opens {volts} and {amperes} by hand, in all conductors. No listed device does."},
    {"bill.limit", "Overtemperature limit that stays open. No listed device is one here."},
    {"bill.limit_breaker",
     "Opens {volts} and {amperes} for the overtemperature limit. No listed device does."},
    {"bill.thermostat", "Thermostat. The listed one cannot act here."},
    {"bill.thermostat_breaker",
     "Opens {volts} and {amperes} for the thermostat. No listed device does."},
    {"bill.fuse",
     "One for each string: the other strings feed up to {fed} into a faulty one, more than the "
     "panel's fuse rating of {rated}."},
    {"bill.fuse_unstated",
     "One for each string: the other strings feed up to {fed} into a faulty one, and "
     "{field} of the panel is not stated."},
    {"bill.no_part", "{why} No part of the catalog can do it here."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::candidate_sentences::of_bill
