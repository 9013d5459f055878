#include "dice.hpp"
#include "figure.hpp"
#include "heat/charge_moments.hpp"
#include "joint_pairs.hpp"
#include "long_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/heat/bed_field.hpp"

TEST_SUITE_BEGIN("numerical");

namespace {

using heatmatch::HeatDay;
using heatmatch::verdict_factor;

/// A clear day with its sun around some hour, over so many hours.
HeatDay bell_day(double middle_h, double long_h) {
    HeatDay day;
    for (std::size_t hour = 0; hour < day.share.size(); ++hour) {
        const double from_middle = static_cast<double>(hour) + 0.5 - middle_h;
        if (std::fabs(from_middle) > 0.5 * long_h) continue;
        day.share[hour] = std::cos(heatmatch::pi * from_middle / long_h);
    }
    const double most = *std::max_element(day.share.begin(), day.share.end());
    for (double& share : day.share) share /= most;
    return day;
}

/// The same bed seen by the other circuit.
heatmatch::BedCharge seen_by_other(const RandomPair& pair) {
    heatmatch::BedCharge seen = pair.charge;
    seen.legs = pair.charge.others.front().legs;
    seen.others.front() = {.legs = pair.charge.legs, .power_w = pair.power_w};
    return seen;
}

heatmatch::BedCharge on_days(heatmatch::BedCharge charge, const HeatDay& own,
                             const HeatDay& other) {
    charge.others.front().day_share = heatmatch::share_of_hours({&other, 1}, charge.hours);
    charge.moments = heatmatch::charge_moments(
        charge, {.own = {&own, 1}, .others = {{&other, 1}}, .of_same_circuit = {false}});
    return charge;
}

}  // namespace

// Source: the field of the bed, within 6 % of solutions in three dimensions for two circuits
// (test_joint_bed_numerical.cpp), driven hour by hour over three days.
TEST_CASE("circuits with the sun at other hours are never judged below what they reach") {
    Dice dice(20261203U);
    const int count = in_the_long_run() ? 60 : 20;
    double least = 1e9;
    double most = 0.0;
    double most_at_once = 0.0;
    for (int i = 0; i < count; ++i) {
        CAPTURE(i);
        RandomPair pair = random_pair(dice, i);
        const HeatDay first = bell_day(dice.between(8.0, 13.0), dice.between(5.0, 11.0));
        const HeatDay second = bell_day(dice.between(11.0, 17.0), dice.between(5.0, 11.0));
        // A circuit alone is judged by the hours of the charge.
        pair.charge.hours = std::max(first.full_hours(), second.full_hours());
        pair.charge.days = 3.0;
        const std::array<heatmatch::BedCharge, 2> at_once{pair.charge, seen_by_other(pair)};
        const std::array<heatmatch::BedCharge, 2> by_hour{on_days(at_once[0], first, second),
                                                          on_days(at_once[1], second, first)};
        const std::array<double, 2> full_w{pair.power_w, pair.charge.others.front().power_w};
        const double air_c = pair.charge.air_c;
        heatmatch::BedField field(
            pair.charge.fill, pair.charge.shell,
            std::vector<heatmatch::LegLayout>{at_once[0].legs, at_once[1].legs}, air_c, air_c);
        std::array<double, 2> peak_k{};
        for (int hour = 0; hour < 72; ++hour) {
            const auto of_day = static_cast<std::size_t>(hour % 24);
            const std::array<double, 2> now_w{full_w[0] * first.share[of_day],
                                              full_w[1] * second.share[of_day]};
            field.step(now_w, 3600.0);
            for (std::size_t k = 0; k < 2; ++k) {
                peak_k[k] = std::max(peak_k[k], field.sheath_c(k) - air_c);
            }
        }
        for (std::size_t k = 0; k < 2; ++k) {
            const double ours_k =
                heatmatch::bed_temperatures(by_hour[k], full_w[k]).sheath_c - air_c;
            const double at_once_k =
                heatmatch::bed_temperatures(at_once[k], full_w[k]).sheath_c - air_c;
            heatmatch::BedCharge alone = at_once[k];
            alone.others.clear();
            const double alone_k = heatmatch::bed_temperatures(alone, full_w[k]).sheath_c - air_c;
            CAPTURE(ours_k);
            CAPTURE(peak_k[k]);
            CHECK(verdict_factor * ours_k > peak_k[k]);
            CHECK(ours_k <= at_once_k + 1e-6);
            CHECK(ours_k >= alone_k - 1e-6);
            least = std::min(least, ours_k / peak_k[k]);
            most = std::max(most, ours_k / peak_k[k]);
            most_at_once = std::max(most_at_once, at_once_k / peak_k[k]);
        }
    }
    figure("two circuits by the hour, over the highest of a field: ", least, " to ", most,
           "; all at once up to ", most_at_once);
}

TEST_SUITE_END();
