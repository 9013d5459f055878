#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room except for explanations, listed in answer/sentence_tables.cpp.
namespace heatmatch::candidate_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"season.not_covered",
     "The weather data do not cover {months}: the season is computed without them."},
    {"season.partly_covered",
     "The weather data cover a part of {months}: that part represents the whole month."},
    {"season.part_of_month", "{month} ({share})"},
    {"season.no_nights",
     "The weather data have no nights in {months}: rows are counted as they are. Give "
     "nights as {night}."},
    {"season.rows_without_month",
     "{rows} sunlit rows of the weather data have no month and are not counted."},
    {"season.no_months",
     "The weather data have no months: energy is over all rows, not over the season."},
    {"season.rear", "Rear irradiance adds {rear} to the season's heat ({low} to {high})."},
    {"season.rear_not_known",
     "These panels are bifacial, but these weather data have no rear irradiance; none "
     "is counted."},
    {"season.brightest",
     "Margins are judged at {weather}, the highest irradiance on the panels in the weather data, "
     "instead of the site's {site}. Reflection from snow and cloud edges can raise it further."},
    {"season.best_ohm_within_wire",
     "A bank of {best} absorbs the most energy over this season. The wire alone has more "
     "resistance than Vmp/Imp in full sun."},
    {"season.best_ohm_like_noon",
     "A bank of {best} absorbs the most energy over this season. That is about Vmp/Imp in full sun "
     "({noon} today, cells at {cells}). Most of the energy here comes in strong sun."},
    {"season.best_ohm_less",
     "A bank of {best} absorbs the most energy over this season. That is less than Vmp/Imp in full "
     "sun ({noon} today, cells at {cells}). Warm cells lose voltage at nearly the same current."},
    {"season.best_ohm_more",
     "A bank of {best} absorbs the most energy over this season. That is {ratio} times Vmp/Imp in "
     "full sun ({noon} today, cells at {cells}). In weaker sun the current falls but the voltage "
     "hardly "
     "does, so a higher resistance is best."},
    {"season.best_ohm_cloud",
     "With clouds passing within the hour, {best} is best (each hour split into clear "
     "and overcast)."},
    {"season.stc_match_loss",
     "A bank of {noon} (Vmp/Imp in full sun) absorbs {noon_heat}, {loss} % less than the "
     "{best_heat} of the best bank{cloud}."},
    {"season.stc_match_loss_cloud", "; {loss} % less with clouds passing within the hour"},

    {"advice.may_take",
     "Largest power of one {element} in this store: {most} ({density}) every bright day, by its "
     "sheath and coil. It receives up to {takes} in cold, bright weather. Terminals and wire are "
     "judged separately."},
    {"advice.more_elements",
     "With {count} of them sharing the same power, the computed sheath and coil "
     "temperatures are below their limits."},
    {"advice.longer",
     "Heated length needed for the limits of sheath and coil at this power: about {length} each, "
     "now {now}."},
    {"advice.longer_than_fits",
     "Heated length needed for the limits of sheath and coil at this power: about {length} each, "
     "now {now}. That is longer than its present legs can be in this store."},
    {"advice.apart",
     "At a spacing of {spacing}, the computed sheath and coil temperatures are below their "
     "limits."},
    {"advice.nothing",
     "No change that was tried brings it within the limits of sheath and coil. Choose "
     "another element, or a higher resistance."},
    {"advice.no_store", "No store is described."},
    {"advice.missing", "Its temperature cannot be computed without {field}."},
    {"advice.misfit", "It does not fit: {misfit}."},
    {"advice.more_legs",
     "Bent into {legs} legs it would fit; bend it only where the maker allows it."},
    {"advice.liquid", "In a liquid no limit of the sheath was found; burnout is not modeled."},
    {"advice.unknown_sheath", "The material of its sheath is not known."},

    {"assess.together",
     "The store is judged with all {count} circuits at their largest power at the same time."},
    {"assess.together_by_hour",
     "The store is judged for all {count} circuits on a clear day. This circuit has its largest "
     "power; circuits on other planes have the sun of that hour."},
    {"assess.full_sun_at_once", "all planes in full sun at once"},
    {"assess.careful_end", "the careful end of what is not stated"},
    {"assess.all_circuits", "assess all circuits together with assess_circuits()"},
    {"assess.used_by", "{count} of \"{name}\" in circuits {circuits}"},
    {"assess.use_fewer", "correct the circuits, or state how many are owned"},
    {"assess.describe_circuit", "describe the existing circuit: {example}"},
    {"assess.panels_used", "{hookup} ({count} panels)"},
    {"assess.panels_owned", "at most the {count} of group \"{group}\""},
    {"assess.correct_hookup", "correct the hook-up or the count of the group"},
    {"assess.chosen", "chosen: name the existing wire"},

    {"options.range", ">= {low} and <= {high}"},
    {"options.above", "> {low} and <= {high}"},
    {"options.at_most", "<= {high}"},
    {"options.within_max_bank", "with no more elements than max_bank"},
    {"options.none", "none"},
    {"options.some_condition", "at least one irradiance and cell temperature"},
    {"options.usual_banks", "banks of up to four elements are usual"},
    {"options.bank_too_large", "raise max_bank, or choose a smaller bank"},
    {"options.all_threads", "omit it to use all threads of the machine"},
    {"options.condition_example", "for example ({irradiance}, {cells})"},
    {"options.full_sun", "full sun is {irradiance}"},
    {"options.cells_above_air", "cells in full sun are {low} to {high} above the air"},
    {"options.touch_voltage", "{volts} is the touch voltage of a dry place"},
    {"options.default_temperature", "{temperature} is the default"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::candidate_sentences
