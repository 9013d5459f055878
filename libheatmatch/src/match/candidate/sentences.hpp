#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says but for the steps of an explanation; the answer lists it.
namespace heatmatch::candidate_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"season.not_covered", "The weather does not cover {months}: the season is counted without."},
    {"season.partly_covered",
     "The weather covers a part of {months}: that part stands for the whole month."},
    {"season.part_of_month", "{month} ({share})"},
    {"season.no_nights",
     "The weather has no nights in {months}: its rows are counted as they are; give the nights as "
     "{night}."},
    {"season.rows_without_month",
     "{rows} sunlit rows of the weather tell no month and are not counted."},
    {"season.no_months",
     "The weather tells no months: energy is over all of it, not over the season."},
    {"season.rear", "Rear light adds {rear} to the season's heat ({low} to {high})."},
    {"season.rear_not_known",
     "These panels are bifacial, but this weather does not report rear light; none is counted."},
    {"season.brightest",
     "Margins are judged at {weather}, the most that the weather has on the panels, not at the "
     "{site} of the site: snow and cloud edges add to the sun."},
    {"season.best_ohm_within_wire",
     "A bank of {best} takes the most over this season; in full sun the wire alone has more ohms "
     "than the panels want (Vmp/Imp)."},
    {"season.best_ohm_like_noon",
     "A bank of {best} takes the most over this season, about the {noon} of full sun (Vmp/Imp "
     "today, cells at {cells}): here most of the energy comes in strong sun."},
    {"season.best_ohm_less",
     "A bank of {best} takes the most over this season, less than the {noon} of full sun (Vmp/Imp "
     "today, cells at {cells}): warm cells give fewer volts at hardly fewer amperes."},
    {"season.best_ohm_more",
     "A bank of {best} takes the most over this season, {ratio} times the {noon} of full sun "
     "(Vmp/Imp today, cells at {cells}): in weaker sun the amperes fall and the volts hardly do, "
     "so the panels want more ohms."},
    {"season.best_ohm_cloud",
     "Cloud that comes and goes within the hour moves that towards {best} (each hour split into "
     "clear and overcast)."},
    {"season.noon_loss",
     "A bank of the {noon} of full sun takes {noon_heat}, {loss} % less than the {best_heat} of "
     "the best{cloud}."},
    {"season.noon_loss_cloud", "; {loss} % less where cloud comes and goes"},

    {"advice.may_take",
     "By its sheath and coil one {element} may take {most}, {density}, in this store every bright "
     "day; terminal and wire are judged apart. In bright cold it takes up to {takes}."},
    {"advice.more_elements", "{count} of them would pass sharing the same power."},
    {"advice.longer",
     "Heated length that would pass at this power: about {length} each, now {now}."},
    {"advice.longer_than_fits",
     "Heated length that would pass at this power: about {length} each, now {now}: longer than "
     "fits in the legs it has."},
    {"advice.apart", "They would pass {spacing} apart."},
    {"advice.nothing", "Nothing tried lets it pass: another element, or more ohms."},
    {"advice.no_store", "No store is described."},
    {"advice.missing", "How hot it gets needs {field}."},
    {"advice.misfit", "It does not fit: {misfit}."},
    {"advice.more_legs", "Bent into {legs} legs it would; bend only where the maker allows it."},
    {"advice.liquid", "In a liquid no limit of the sheath was found; burnout is not in the model."},
    {"advice.unknown_sheath", "What its sheath is made of is not known."},

    {"assess.describe_circuit", "describe the circuit that stands: {example}"},
    {"assess.panels_used", "{hookup} ({count} panels)"},
    {"assess.panels_owned", "at most the {count} of group \"{group}\""},
    {"assess.correct_hookup", "correct the hook-up or the count of the group"},
    {"assess.chosen", "chosen: name the wire that is there"},

    {"options.range", ">= {low} and <= {high}"},
    {"options.above", "> {low} and <= {high}"},
    {"options.at_most", "<= {high}"},
    {"options.within_max_bank", "of no more elements than max_bank"},
    {"options.none", "none"},
    {"options.some_condition", "at least one sun and cell temperature"},
    {"options.usual_banks", "banks of up to four elements are usual"},
    {"options.bank_too_large", "raise max_bank, or take a smaller bank"},
    {"options.all_threads", "leave it out: as many as the machine has"},
    {"options.condition_example", "for example ({irradiance}, {cells})"},
    {"options.full_sun", "full sun is {irradiance}"},
    {"options.cells_above_air", "cells in full sun are {low} to {high} above the air"},
    {"options.default_temperature", "{temperature} is the default"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::candidate_sentences
