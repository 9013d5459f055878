#include "answer/start_draft.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/margins/touch_limit.hpp"
#include "heatmatch/solar/monthly_sky.hpp"

namespace heatmatch {

using start_sentences::say;

namespace {

constexpr auto compass = std::to_array<std::pair<std::string_view, double>>({
    {"north", 0.0},   {"n", 0.0},   {"northeast", 45.0},  {"north-east", 45.0},  {"ne", 45.0},
    {"east", 90.0},   {"e", 90.0},  {"southeast", 135.0}, {"south-east", 135.0}, {"se", 135.0},
    {"south", 180.0}, {"s", 180.0}, {"southwest", 225.0}, {"south-west", 225.0}, {"sw", 225.0},
    {"west", 270.0},  {"w", 270.0}, {"northwest", 315.0}, {"north-west", 315.0}, {"nw", 315.0},
});
constexpr auto month_starts = std::to_array<std::string_view>(
    {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"});
constexpr auto month_titles = std::to_array<std::string_view>(
    {"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"});

std::optional<double> direction_of(const PlainAnswer& answer) {
    for (const auto& [word, azimuth_deg] : compass) {
        if (answer.has_word(word)) return azimuth_deg;
    }
    // A bare W after a number is read as watts.
    return answer.of(unit::watt).empty() ? std::nullopt : std::optional(270.0);
}

Sentence months_said(const std::vector<int>& months) {
    return say<"start.months">(
        with<"from">(Name{std::string(month_titles[static_cast<std::size_t>(months.front() - 1)])}),
        with<"to">(Name{std::string(month_titles[static_cast<std::size_t>(months.back() - 1)])}));
}

/// The months named, from the first to the last of them where there are two.
std::vector<int> months_named(const PlainAnswer& answer) {
    std::vector<int> named;
    for (const std::string& word : answer.words) {
        for (std::string_view rest = word; !rest.empty();) {
            const std::size_t dash = rest.find('-');
            const std::string_view one = rest.substr(0, dash);
            for (std::size_t month = 0; month < month_starts.size(); ++month) {
                if (one.starts_with(month_starts[month]))
                    named.push_back(static_cast<int>(month) + 1);
            }
            rest = dash == std::string_view::npos ? std::string_view{} : rest.substr(dash + 1);
        }
    }
    if (named.size() != 2) return named;
    std::vector<int> all{named.front()};
    while (all.back() != named.back()) all.push_back(all.back() % 12 + 1);
    return all;
}

}  // namespace

Sentence open_record_low() {
    return say<"start.record_low.open">(with<"low">(start_record_low_c, unit::celsius));
}

Sentence open_mounting(bool south) {
    return say<"start.mounting.open">(with<"tilt">(start_tilt_deg, unit::degree),
                                      with<"azimuth">(south ? 0.0 : 180.0, unit::degree));
}

Sentence open_months(bool south) {
    const std::vector<int> winter = south ? std::vector<int>{5, 9} : std::vector<int>{11, 3};
    return say<"start.warmth.open">(with<"months">(months_said(winter)));
}

Understanding answer_latitude(StartDraft& draft, const PlainAnswer& answer) {
    const Field& field = start_field(site_fields(), "latitude_deg");
    auto read =
        only_number(draft, QuestionKind::latitude, answer, field, say<"start.what_latitude">());
    if (!read.refused.empty()) return refused(std::move(read.refused));
    const bool south = answer.has_word("s") || answer.has_word("south");
    if (south) read.value = -std::fabs(read.value);
    draft.made.site.latitude_deg = read.value;
    const auto shown = with<"latitude">(Amount{std::fabs(read.value), unit::degree, 4});
    return {.said = read.value < 0.0 ? say<"start.is_south">(shown) : say<"start.is_north">(shown)};
}

Understanding answer_record_low(StartDraft& draft, const PlainAnswer& answer) {
    const Field& field = start_field(site_fields(), "record_low_c");
    auto read = only_number(draft, QuestionKind::record_low, answer, field,
                            say<"start.what_temperature">());
    if (!read.refused.empty()) return refused(std::move(read.refused));
    draft.record_low_c = read.value;
    draft.made.site.record_low_c = read.value;
    return {.said = say<"start.is_low">(
                with<"low">(read.value, unit::celsius),
                with<"other">(
                    Amount{.value = read.value, .unit = unit::celsius, .shown = Shown::other}))};
}

Understanding answer_mounting(StartDraft& draft, const PlainAnswer& answer) {
    std::vector<double> angles = answer.of(unit::degree);
    const std::vector<double> bare = answer.bare();
    angles.insert(angles.end(), bare.begin(), bare.end());
    for (const double west : answer.of(unit::watt)) angles.push_back(west);
    if (angles.empty()) {
        if (answer.has_word("flat")) angles.push_back(0.0);
        for (const char* upright : {"upright", "vertical", "wall"}) {
            if (angles.empty() && answer.has_word(upright)) angles.push_back(90.0);
        }
    }
    std::optional<double> azimuth_deg = direction_of(answer);
    if (!azimuth_deg && angles.size() == 2) azimuth_deg = angles[1];
    const bool flat = !angles.empty() && angles.front() == 0.0;
    if (!azimuth_deg && flat) azimuth_deg = 180.0;
    if (angles.empty() || !azimuth_deg) {
        return not_understood(draft, QuestionKind::mounting, answer);
    }
    const double tilt_deg = angles.front();
    for (const auto& [name, value] :
         {std::pair("tilt_deg", tilt_deg), std::pair("azimuth_deg", *azimuth_deg)}) {
        Sentence beyond =
            out_of_range(start_field(site_fields(), name), value, say<"start.what_tilt">());
        if (!beyond.empty()) return refused(std::move(beyond));
    }
    draft.made.site.tilt_deg = tilt_deg;
    draft.made.site.azimuth_deg = azimuth_deg;
    return {.said = say<"start.is_mounted">(with<"tilt">(tilt_deg, unit::degree),
                                            with<"azimuth">(*azimuth_deg, unit::degree),
                                            with<"north">(0.0), with<"south">(180.0))};
}

Understanding answer_sun(StartDraft& draft, const PlainAnswer& answer) {
    std::vector<double> sums = answer.of(unit::kilowatt_hour_per_m2);
    const std::vector<double> bare = answer.bare();
    sums.insert(sums.begin(), bare.begin(), bare.end());
    if (sums.size() != 12) {
        return refused(say<"start.twelve">(with<"count">(static_cast<double>(sums.size()))));
    }
    const Field& field = start_field(monthly_normals_fields(), "sun_hours");
    for (const double sum : sums) {
        Sentence beyond = out_of_range(field, sum, say<"start.what_sun">());
        if (!beyond.empty()) return refused(std::move(beyond));
    }
    const Site& site = draft.made.site;
    if (site.latitude_deg && site.tilt_deg) {
        // Whether these sums are possible on that plane; the air hardly matters.
        const MonthlyNormals normals{.sun_hours = sums,
                                     .temp_min_c = std::vector<double>(12, 5.0),
                                     .temp_max_c = std::vector<double>(12, 15.0)};
        try {
            static_cast<void>(MonthlySky(normals, site));
        } catch (const InvalidInput& error) {
            return refused(say<"start.refused">(with<"why">(std::string(error.what()))));
        }
    }
    const auto [least, most] = std::minmax_element(sums.begin(), sums.end());
    const Sentence said = say<"start.is_sun">(
        with<"least">(Amount{.value = *least, .shown = Shown::number, .decimals = 1}),
        with<"most">(*most, unit::kilowatt_hour_per_m2, 2));
    draft.made.weather = MonthlyNormals{.sun_hours = std::move(sums)};
    return {.said = said};
}

Understanding answer_warmth(StartDraft& draft, const PlainAnswer& answer) {
    const std::vector<int> months = months_named(answer);
    const bool has_target = !answer.amounts.empty();
    if (months.empty() && !has_target) return not_understood(draft, QuestionKind::warmth, answer);
    if (has_target) {
        auto read =
            only_number(draft, QuestionKind::warmth, answer,
                        start_field(space_fields(), "target_c"), say<"start.what_temperature">());
        if (!read.refused.empty()) return refused(std::move(read.refused));
        draft.target_c = read.value;
    }
    draft.made.goals.months = months;
    const Sentence when = months.empty() ? Sentence{} : months_said(months);
    if (!draft.target_c) return {.said = say<"start.is_months">(with<"months">(when))};
    return {.said = say<"start.is_warm">(with<"target">(*draft.target_c, unit::celsius),
                                         with<"months">(when))};
}

Understanding answer_damp(StartDraft& draft, const PlainAnswer& answer) {
    const bool yes = answer.has_word("yes") || answer.has_word("y") || answer.has_word("damp") ||
                     answer.has_word("wet");
    const bool no = answer.has_word("no") || answer.has_word("n") || answer.has_word("dry");
    if (yes == no) return not_understood(draft, QuestionKind::damp, answer);
    draft.made.site.wet = yes;
    const auto volts = with<"volts">(touch_limit_v(draft.made.site), unit::volt);
    return {.said = yes ? say<"start.is_damp">(volts) : say<"start.is_dry">(volts)};
}

}  // namespace heatmatch
