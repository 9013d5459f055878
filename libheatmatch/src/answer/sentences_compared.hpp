#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Two rankings side by side.
namespace heatmatch::answer_sentences {

inline constexpr auto compared_lines = std::to_array<Template>({
    {"compared.now", "now"},
    {"compared.was", "was"},
    {"compared.change", "change"},
    {"compared.danger", "danger"},
    {"compared.danger_of", "danger: {margin}"},
    {"compared.a_danger", "a {danger}"},
    {"compared.now_a_danger", "now a {danger}"},
    {"compared.at_place", "at place {place}"},
    {"compared.now_at_place", "now at place {place}"},
    {"compared.not_kept", "not kept"},
    {"compared.no_longer_kept", "no longer kept"},
    {"compared.none_before", "Before, every pairing had a danger."},
    {"compared.none_before_one_now", "Before, every pairing had a danger; {pairing} is first now."},
    {"compared.none_now", "Now every pairing has a danger; {pairing}, which was first, is {fate}."},
    {"compared.stays", "{pairing} stays first, {change} {unit}."},
    {"compared.another",
     "{pairing} is now first (before: {was}); {other}, which was first, is {where}."},
    {"compared.now_dangers", "Now a {danger}: {pairings}."},
    {"compared.before_dangers", "Before a {danger}: {pairings}."},
    {"compared.reason", "{margin} {count}"},
    {"compared.no_reason", "none"},
    {"compared.reasons", "Pairings rejected now: {now}. They were: {were}."},
    {"compared.legend",
     "now: place in {after}; was: in {before}; {heat} into the elements. head: smallest headroom "
     "to a limit that is dangerous to exceed. buy: present purchase price{money}. danger: rejected "
     "for one. -: not known, or not among those kept."},
    {"compared.by_season", "kWh: heat of the season"},
    {"compared.by_power", "W: averaged over the conditions"},
    {"compared.money", " in {currency}"},
    {"compared.unlike",
     "Only one of the two rankings has a season; its heat is compared as power averaged over its "
     "conditions."},
});

}  // namespace heatmatch::answer_sentences
