#include "demo.hpp"
#include "within.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/monthly_sky.hpp"
#include "heatmatch/solar/plane_nodes.hpp"

using heatmatch::Weather;

namespace {

const heatmatch::MonthlySky& kept_sky() {
    static const heatmatch::MonthlySky made(*demo().weather, demo().site);
    return made;
}
const Weather& south() {
    static const Weather made = kept_sky().weather(60.0, 180.0);
    return made;
}
const Weather& west() {
    static const Weather made = kept_sky().weather(40.0, 260.0);
    return made;
}
const std::vector<const Weather*>& two() {
    static const std::vector<const Weather*> planes{&south(), &west()};
    return planes;
}

}  // namespace

TEST_CASE("from three planes on every sunlit row is a node") {
    const Weather north = kept_sky().weather(30.0, 350.0);
    const std::vector<const Weather*> planes{&south(), &west(), &north};
    const auto nodes = heatmatch::plane_nodes(planes, {.months = {12}});
    REQUIRE(nodes.size() == 3);
    CHECK(nodes[0].hours == nodes[2].hours);
    CHECK(nodes[0].size() > 250);
}

// Source: arithmetic: bins keep hours and irradiation.
TEST_CASE("the nodes of two planes keep hours and irradiation of both") {
    const auto nodes = heatmatch::plane_nodes(two());
    for (std::size_t p = 0; p < 2; ++p) {
        double kwh = 0.0;
        for (std::size_t k = 0; k < nodes[p].size(); ++k) {
            kwh += nodes[p].hours[k] * nodes[p].irradiance_w_m2[k] / 1000.0;
        }
        CHECK(within(kwh, two()[p]->irradiation_kwh_m2(), 1e-12));
    }
}

TEST_CASE("one plane has the nodes of its weather") {
    const std::vector<const Weather*> one{&south()};
    const auto nodes = heatmatch::plane_nodes(one);
    REQUIRE(nodes.size() == 1);
    CHECK(nodes[0].irradiance_w_m2 == heatmatch::weather_nodes(south()).irradiance_w_m2);
}

TEST_CASE("a panel without a plane is refused") {
    const auto panel =
        heatmatch::string_panel(heatmatch::find_panel(starter(), "silicon-60-cell-245"));
    const auto array = heatmatch::MixedArray::of({{.panels = {panel}}});
    const std::vector<heatmatch::PanelPlace> far{{.plane = 2}};
    CHECK_THROWS_WITH_AS(heatmatch::check_places(array, far, two()), doctest::Contains("plane"),
                         heatmatch::InvalidInput);
    CHECK_THROWS_WITH_AS(heatmatch::check_places(array, far, {}), doctest::Contains("one plane"),
                         heatmatch::InvalidInput);
}
