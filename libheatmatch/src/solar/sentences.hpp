#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::solar_sentences {

inline constexpr auto table = std::to_array<Template>({
    // Labels and panels.
    {"solar.not_positive", "{value} is not a positive number"},
    {"solar.not_below", "{value} is not below {field} = {limit}"},
    {"solar.not_above", "{ratio} = {value} is not above {limit}"},
    {"solar.not_negative", "{value} is not negative"},
    {"solar.label_refused", "{part}: {field}: {reason}; read the label again"},
    {"solar.unusual",
     "{name} = {value} is outside what {share} of listed modules have ({low} to {high})"},
    {"solar.measured_volts",
     "panel \"{panel}\": measured voltage is {share} of the label's in those conditions; "
     "one third low suggests a bypassed section"},
    {"solar.measured_amperes",
     "panel \"{panel}\": measured current is {share} of the label's; check the sun "
     "meter, shade and dirt"},
    {"solar.two_meters", "clamp and sun meter, from memory"},

    // Weather.
    {"solar.months_not_used", "The twelve months of weather are not used: the site lacks {field}."},
    {"solar.light_at_night",
     "{rows} rows above {bright} while the sun is down ({share} % of the sunlight). "
     "Check the time zone and the longitude, and whether times are the start or the "
     "end of a step"},
    {"solar.gaps", "{gaps} gaps, {missing} missing"},
    {"solar.gaps_and_night", "{gaps} gaps, {missing} missing besides {night} of night"},
    {"solar.shortened",
     "{rows} rows are closer together than the step of {step}; each counts until the next row"},
    {"solar.small_negative", "{readings} small negative readings of the sun counted as {nothing}"},

    // Assumptions.
    {"solar.class_default", "class default"},
    {"solar.common_practice", "common practice, no source"},
    {"solar.number", "{number}"},
    {"solar.per_cent", "{share} %"},
    {"solar.towards_equator", "{azimuth}, toward the equator"},
    {"solar.wind_of_noct", "{wind}, that of NOCT"},
    {"solar.lowered_wind", "{share} of the wind at {height}, converted to {panels}"},
    {"solar.light_behind", "{rear} on the back, {front} on the front"},
    {"solar.back_is_free", "back unobstructed; no rear irradiance at the low end of the heat band"},
    {"solar.one_row", "single row"},
    {"solar.from_january", "rows begin on January {day}st"},
    {"solar.split_by_clearness", "split from global irradiance by the hour's clearness"},
    {"solar.spread", "spread about the monthly means"},
    {"solar.spread_source", "{source}, with our own coefficients"},

    // Remedies.
    {"solar.wind_height",
     "give the height of the instrument above the ground; {panels} if it is at the panels"},
    {"solar.need_sky", "make the weather from ghi, dni and dhi, which give every plane its sun"},
    {"solar.one_panel", "an array has one panel or more"},
    {"solar.one_sky",
     "make the weather of each plane from one sky: the same rows in the same order"},
    {"solar.one_substring", "a panel without bypass diodes is one substring"},
    {"solar.diode_drop", "a silicon diode has about {drop}, a Schottky diode {low}"},
    {"solar.panel_conditions", "this array has {count} panels"},
    {"solar.sun_of_panel", "give the irradiance on the plane of the panel"},
    {"solar.shade_of_substring",
     "a shade is the share of light that a substring loses: {none} none, {all} all"},
    {"solar.positive_ohms", "a resistance is positive"},
    {"solar.default_points", "{points} is the default"},
    {"solar.label_ohms", "give Vmp/Imp of the label"},
    {"solar.fit_label", "use the fit from the label values"},
    {"solar.default_bins", "{sun} and {air} are the defaults"},
    {"solar.cover_season", "give weather data that cover the heating season"},
    {"solar.check_sum",
     "check the month, the tilt and the latitude; it is the daily sum in {unit}"},
    {"solar.full_sun", "give the mean daily sum in kWh/m² (peak sun hours)"},
    {"solar.check_zone", "check the time zone and the longitude"},
    {"solar.check_plane", "check the time zone, the tilt and the azimuth"},
    {"solar.check_columns", "check the columns and the times"},
    {"solar.check_unit", "check the unit: full sun at noon is about {sun}"},
    {"solar.leave_out", "omit the row, or fill the gap from its neighbors"},
    {"solar.in_celsius", "give it in °C, not in K or °F"},
    {"solar.in_metres_per_second", "give it in m/s"},
    {"solar.same_moments", "give both for the same moments"},
    {"solar.all_moments", "give all for the same moments"},
    {"solar.hour_or_minute", "{one} for hourly means, {one}/{minutes} for minutes"},
    {"solar.january", "{january} for January, {unknown} where it is not known"},
    {"solar.frame_or_months", "make the weather from a frame or from monthly means of a site"},
    {"solar.each_row", "give one for each row"},
    {"solar.months", "write the heating season as in [{months}]"},
    {"solar.north_positive", "read it from a map, north positive"},
    {"solar.east_positive", "read it from a map, east positive"},
    {"solar.tilts", "{flat} for flat panels, {upright} for upright ones"},
    {"solar.count_seconds", "count seconds since {beginning}"},
    {"solar.sort", "sort the rows by time"},
    {"solar.remove_twice", "remove the duplicate row"},
    {"solar.label_of_time",
     "{start} where the time is the start of the step, {end} where it is its end"},
    {"solar.need_air", "panels deliver less when hot"},
    {"solar.need_sun", "give the global horizontal irradiance"},
    {"solar.no_length", "a single time has no duration"},
    {"solar.to_minutes", "average to minutes"},
    {"solar.hourly", "get hourly rows, or use monthly means"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::solar_sentences
