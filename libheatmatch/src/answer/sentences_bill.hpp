#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Bills.
namespace heatmatch::answer_sentences {

inline constexpr auto bill_table_lines = std::to_array<Template>({
    {"bill.total", "Bill: {typical} ({low} to {high}){budget}."},
    {"bill.nothing_to_buy", "Bill: nothing to buy{budget}."},
    {"bill.not_known", "Bill not known: {reasons}{budget}."},
    {"bill.within", ", within the budget of {money}"},
    {"bill.within_middle",
     ", within the budget of {money} at middle prices; the range reaches beyond it"},
    {"bill.above", ", above the budget of {money}"},
    {"bill.not_within", "; it does not count as within the budget of {money}"},
    {"bill.no_price", "no price for {part}"},
    {"bill.no_such_part", "no part for a need of the circuit"},
    {"bill.in_other", "{part} has a price in {other}, which is not added to {currency}"},
    {"bill.title", "parts of this circuit: owned and to buy"},
    {"bill.part", "part"},
    {"bill.needed", "needed"},
    {"bill.owned", "owned"},
    {"bill.to_buy", "to buy"},
    {"bill.low", "low{currency}"},
    {"bill.typical", "typical{currency}"},
    {"bill.high", "high{currency}"},
    {"bill.what_for", "for"},
    {"bill.in_currency", " {currency}"},
    {"bill.line", "{part}: {to_buy} to buy{owned}, {price}. {why}"},
    {"bill.line_owned", "{part}: owned. {why}"},
    {"bill.line_no_part", "no part: {why}"},
    {"bill.of_it_owned", ", {owned} owned"},
    {"bill.range", "{low} to {high}"},
    {"bill.no_code_devices",
     "Not on the bill: devices for these code requirements, which none here is known to meet: "
     "{duties}."},
});

}  // namespace heatmatch::answer_sentences
