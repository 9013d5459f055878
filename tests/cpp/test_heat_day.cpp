#include "dice.hpp"
#include "heat/charge_moments.hpp"
#include "heat_beds.hpp"
#include "joint_pairs.hpp"

#include <cmath>
#include <vector>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <doctest/doctest.h>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/heat/heat_day.hpp"

using heatmatch::BedCharge;
using heatmatch::charge_moments;
using heatmatch::HeatDay;
using heatmatch::HeatMoment;
using heatmatch::share_of_hours;
using heatmatch::worst_moments;

namespace {

HeatDay full_between(std::size_t first, std::size_t last, double share = 1.0) {
    HeatDay day;
    for (std::size_t hour = first; hour < last; ++hour) day.share[hour] = share;
    return day;
}

/// A leg in the middle of a drum and another one beside it.
BedCharge leg_beside(double apart_m) {
    Dice dice(20261202U);
    BedCharge charge = random_pair(dice, 0).charge;
    charge.hours = 6.0;
    charge.legs.legs = {{0.0, 0.0}};
    charge.others.front().legs.legs = {{apart_m, 0.0}};
    return charge;
}

}  // namespace

TEST_CASE("a day has as many hours at full power as its heat, and the longest day counts") {
    CHECK(full_between(8, 12).full_hours() == doctest::Approx(4.0).epsilon(1e-12));
    CHECK(full_between(8, 18, 0.25).full_hours() == doctest::Approx(2.5).epsilon(1e-12));
    const std::vector<HeatDay> days{full_between(8, 12), full_between(8, 18, 0.25)};
    CHECK(share_of_hours(days, 5.0) == doctest::Approx(0.8).epsilon(1e-12));
    CHECK(share_of_hours(days, 3.0) == 1.0);
    CHECK(share_of_hours({}, 3.0) == 1.0);
}

TEST_CASE("a moment stays only where something is more than at every other one") {
    const std::vector<HeatMoment> kept = worst_moments({{.own = 0.5, .others = {0.2}},
                                                        {.own = 1.0, .others = {0.2}},
                                                        {.own = 0.4, .others = {0.9}},
                                                        {.own = 0.4, .others = {0.8}},
                                                        {.own = 1.0, .others = {0.2}}});
    REQUIRE(kept.size() == 2);
    CHECK(kept[0] == HeatMoment{.own = 1.0, .others = {0.2}});
    CHECK(kept[1] == HeatMoment{.own = 0.4, .others = {0.9}});
}

TEST_CASE("banks that have their power at the same hours are judged at once") {
    const BedCharge charge = leg_beside(0.05);
    const std::vector<HeatDay> noon{full_between(9, 15)};
    // After six hours at full power in the hours of the charge all local heat is that of the
    // charge.
    CHECK(charge_moments(charge, {.own = noon, .others = {noon}, .of_same_circuit = {false}})
              .empty());
    CHECK(
        charge_moments(charge, {.own = noon, .others = {{}}, .of_same_circuit = {false}}).empty());
    CHECK(
        charge_moments(charge, {.own = {}, .others = {noon}, .of_same_circuit = {false}}).empty());
    const std::vector<HeatDay> morning{full_between(5, 11)};
    CHECK(charge_moments(charge, {.own = noon, .others = {morning}, .of_same_circuit = {true}})
              .empty());
}

TEST_CASE("heat of a far leg lasts longer than that of a near one, and none comes before it") {
    const std::vector<HeatDay> morning{full_between(6, 10)};
    const std::vector<HeatDay> afternoon{full_between(12, 16)};
    double before = 0.0;
    for (const double apart_m : {0.02, 0.05, 0.10}) {
        const auto moments =
            charge_moments(leg_beside(apart_m),
                           {.own = afternoon, .others = {morning}, .of_same_circuit = {false}});
        REQUIRE(!moments.empty());
        double late = 0.0;
        for (const HeatMoment& moment : moments) {
            if (moment.own >= 1.0) late = std::max(late, moment.others.front());
        }
        CHECK(late > before);
        CHECK(late < 1.0);
        before = late;
        const auto early =
            charge_moments(leg_beside(apart_m),
                           {.own = morning, .others = {afternoon}, .of_same_circuit = {false}});
        for (const HeatMoment& moment : early) {
            if (moment.own >= 1.0) CHECK(moment.others.front() == 0.0);
        }
    }
}

// Source: the line source in an infinite solid (Carslaw and Jaeger 1959, 10.4): a power q(t') adds
// `q dt'/(4 pi k (t - t')) exp(-d²/(4 a (t - t')))`, here integrated numerically.
TEST_CASE("the local heat of a day is the integral over its line source") {
    BedCharge charge = leg_beside(0.03);
    // A large bed, so that its finite size does not limit the reach.
    charge.shell.volume_m3 = 500.0;
    charge.legs.leg_length_m = 20.0;
    charge.others.front().legs.leg_length_m = 20.0;
    const double air_k = charge.air_c + 273.15;
    double most = 0.0;
    for (const double rise_k : {50.0, 600.0}) {
        const double a = charge.fill.conductivity.mean(air_k, air_k + rise_k) /
                         charge.fill.mean_capacity_j_m3k(air_k, air_k + rise_k);
        const auto kernel = [a](double seconds) {
            constexpr double apart_m = 0.03;
            return seconds > 0.0 ? std::exp(-apart_m * apart_m / (4.0 * a * seconds)) / seconds
                                 : 0.0;
        };
        using Rule = boost::math::quadrature::gauss_kronrod<double, 61>;
        // At 16 h, of 6 to 10 h; against the six hours of the charge.
        const double late = Rule::integrate(kernel, 6 * 3600.0, 10 * 3600.0, 8, 1e-10);
        const double whole = Rule::integrate(kernel, 0.0, 6 * 3600.0, 8, 1e-10);
        most = std::max(most, late / whole);
    }
    const std::vector<HeatDay> morning{full_between(6, 10)};
    const std::vector<HeatDay> afternoon{full_between(12, 16)};
    const auto moments =
        charge_moments(charge, {.own = afternoon, .others = {morning}, .of_same_circuit = {false}});
    double found = 0.0;
    for (const HeatMoment& moment : moments) {
        if (moment.own >= 1.0) found = std::max(found, moment.others.front());
    }
    constexpr double step = 0.02;  // shares are rounded upwards
    CHECK(found > most - 0.005);
    CHECK(found < most + step + 0.005);
}
