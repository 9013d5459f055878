#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::circuit_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"circuit.hookup", "{example} is two in series, one string"},
    {"circuit.warmest_month", "daily high of the warmest month"},
    {"circuit.above_warmest_month", "daily high of the warmest month + {rise}"},
    {"circuit.run_in_bed", "the run at the element is said to lie in the bed"},
    {"circuit.around_run", "from what is around the run at the element"},
    {"circuit.air_around_store", "air around the store"},
    {"circuit.chosen_as_for", "chosen as for {air} around it: nothing is stated"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::circuit_sentences
