#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/interpolation.hpp"

using heatmatch::interpolate;
using heatmatch::largest_between;
using heatmatch::TablePoint;

namespace {

// Quartz around its transition at 573 °C, as it stands in tables of heat capacity [J/kgK].
const std::vector<TablePoint> quartz_peak{
    {540.0, 1225.0}, {560.0, 1400.0}, {573.0, 1650.0}, {587.0, 1400.0}, {600.0, 1130.0}};

}  // namespace

// Source: arithmetic between neighbouring points.
TEST_CASE("a table is linear between its points and equals them there") {
    for (const TablePoint& point : quartz_peak)
        CHECK(interpolate(quartz_peak, point.t_c, 0.0) == point.value);
    CHECK(interpolate(quartz_peak, 550.0, 0.0) == doctest::Approx(1312.5));
    CHECK(interpolate(quartz_peak, 580.0, 0.0) == doctest::Approx(1525.0));
}

TEST_CASE("a table is constant beyond its ends") {
    CHECK(interpolate(quartz_peak, -273.0, 0.0) == 1225.0);
    CHECK(interpolate(quartz_peak, 2000.0, 0.0) == 1130.0);
    CHECK(interpolate({{20.0, 700.0}}, 300.0, 0.0) == 700.0);
}

TEST_CASE("an empty table gives the default value") {
    CHECK(interpolate({}, 20.0, 840.0) == 840.0);
    CHECK(largest_between({}, 0.0, 100.0, 840.0) == 840.0);
}

// Source: arithmetic, straight lines between the points above.
TEST_CASE("the largest value between two temperatures sees the peak inside") {
    CHECK(largest_between(quartz_peak, 550.0, 590.0, 0.0) == 1650.0);
    CHECK(largest_between(quartz_peak, 540.0, 550.0, 0.0) == doctest::Approx(1312.5));
    CHECK(largest_between(quartz_peak, 573.0, 573.0, 0.0) == 1650.0);
    CHECK(largest_between(quartz_peak, 700.0, 800.0, 0.0) == 1130.0);
}
