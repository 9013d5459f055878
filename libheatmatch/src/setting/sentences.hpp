#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::setting_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"setting.each_month", "give one for each month"},
    {"setting.ask_station", "ask the nearest weather station for its lowest temperature on record"},
    {"setting.rows_apart", "measure along the ground from one lower edge to the next"},
    {"setting.minus_sign",
     "mind the minus sign: the record is the coldest morning ever, and sets the volts"},
    {"setting.no_panels", "the installation lists no panels"},
    {"setting.say_what_was_read", "say what the meter read, or leave measured out"},
    {"setting.write_either", "write {one} or {other}"},
    {"setting.describe_run", "describe the run under \"runs\""},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::setting_sentences
