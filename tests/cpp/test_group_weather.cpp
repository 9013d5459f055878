#include "demo.hpp"
#include "within.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/rank/rank.hpp"
#include "heatmatch/solar/group_weather.hpp"
#include "heatmatch/solar/monthly_sky.hpp"
#include "heatmatch/solar/sky.hpp"
#include "heatmatch/text/installation_json.hpp"

using heatmatch::group_weather;
using heatmatch::Installation;
using heatmatch::InvalidInput;
using heatmatch::OwnedPanels;
using heatmatch::Ranking;
using heatmatch::Weather;

namespace {

std::shared_ptr<const Weather> year() {
    static const auto made = std::make_shared<const Weather>(
        heatmatch::MonthlySky(*demo().weather, demo().site).weather());
    return made;
}

/// The sun on one plane only.
std::shared_ptr<const Weather> plane_only() {
    Weather rows = *year();
    rows.sky = {};
    return std::make_shared<const Weather>(rows);
}

Ranking ranked(const Installation& installation, std::shared_ptr<const Weather> weather = {}) {
    return heatmatch::rank(starter(), installation, {.weather = std::move(weather), .top = 20});
}

OwnedPanels shaded_by(std::vector<double> shade_pct) {
    OwnedPanels owned = demo().panels.front();
    owned.shade_pct = std::move(shade_pct);
    return owned;
}

}  // namespace

TEST_CASE("a group in the site's plane without shade has the weather that is given") {
    OwnedPanels owned = demo().panels.front();
    CHECK_FALSE(group_weather(*year(), owned, demo().site));
    owned.tilt_deg = demo().site.tilt_deg;
    owned.azimuth_deg = demo().site.azimuth_deg;
    CHECK_FALSE(group_weather(*plane_only(), owned, demo().site));
}

TEST_CASE("a group in the site's plane ranks bit for bit as one that states nothing") {
    const Ranking plain = ranked(small());
    Installation stated = small();
    for (OwnedPanels& owned : stated.panels) owned.tilt_deg = stated.site.tilt_deg;
    const Ranking same = ranked(stated);
    REQUIRE(same.candidates.size() == plain.candidates.size());
    for (std::size_t i = 0; i < plain.candidates.size(); ++i) {
        CHECK(same.candidates[i].season->kwh == plain.candidates[i].season->kwh);
        CHECK(same.candidates[i].smallest_headroom() == plain.candidates[i].smallest_headroom());
    }
}

// Source: arithmetic: the plane of a group is a plane of the same sky.
TEST_CASE("a group on its own plane ranks as on a site with that plane under one sky") {
    Installation own = small();
    for (OwnedPanels& owned : own.panels) {
        owned.tilt_deg = 30.0;
        owned.azimuth_deg = 120.0;
    }
    Installation moved = small();
    moved.site.tilt_deg = 30.0;
    moved.site.azimuth_deg = 120.0;
    const auto turned = std::make_shared<const Weather>(heatmatch::on_plane(*year(), 30.0, 120.0));
    const Ranking a = ranked(own, year());
    const Ranking b = ranked(moved, turned);
    REQUIRE(!a.candidates.empty());
    REQUIRE(a.candidates.size() == b.candidates.size());
    for (std::size_t i = 0; i < a.candidates.size(); ++i) {
        CHECK(a.candidates[i].season->kwh == b.candidates[i].season->kwh);
    }
    CHECK(a.candidates[0].season->kwh < ranked(small(), year()).candidates[0].season->kwh);
    // The installation's own twelve months give the same.
    CHECK(ranked(own).candidates[0].season->kwh == a.candidates[0].season->kwh);
}

TEST_CASE("an existing circuit has the weather of its group") {
    Installation own = small();
    own.circuit = heatmatch::ExistingCircuit{.group = own.panels.front().group,
                                             .panels = "1S1P",
                                             .element = own.elements.front().element,
                                             .bank = "1S1P"};
    const double site = heatmatch::assess(starter(), own).season->kwh;
    own.panels.front().azimuth_deg = 60.0;
    const double turned = heatmatch::assess(starter(), own).season->kwh;
    own.panels.front().shade_pct = {30.0};
    CHECK(turned < site);
    CHECK(heatmatch::assess(starter(), own).season->kwh < turned);
}

TEST_CASE("a plane that the weather does not have is refused by name in one sentence") {
    Installation own = small();
    own.panels.front().azimuth_deg = 90.0;
    CHECK_THROWS_WITH_AS(static_cast<void>(ranked(own, plane_only())),
                         doctest::Contains("from ghi, dni and dhi"), InvalidInput);
    CHECK_THROWS_WITH_AS(static_cast<void>(ranked(own, plane_only())),
                         doctest::Contains(own.panels.front().group.c_str()), InvalidInput);
}

// Source: arithmetic: a share of the light is lost.
TEST_CASE("shade takes its share of every light by month and hour of mean solar time") {
    const Weather& rows = *year();
    const auto half = group_weather(rows, shaded_by({50.0}), demo().site);
    REQUIRE(half);
    std::vector<double> by_month(12, 0.0);
    by_month[11] = 100.0;
    const auto december = group_weather(rows, shaded_by(by_month), demo().site);
    std::vector<double> by_hour(288, 0.0);
    by_hour[6 * 24 + 9] = 25.0;
    const auto july_at_nine = group_weather(rows, shaded_by(by_hour), demo().site);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const double sun = rows.irradiance_w_m2[row];
        REQUIRE(half->irradiance_w_m2[row] == 0.5 * sun);
        REQUIRE(half->rear_w_m2[row] == 0.5 * rows.rear_w_m2[row]);
        REQUIRE(december->irradiance_w_m2[row] == (rows.month[row] == 12 ? 0.0 : sun));
        const bool lost = rows.month[row] == 7 && row % 24 == 9;  // the rows begin at midnight
        REQUIRE(july_at_nine->irradiance_w_m2[row] == (lost ? 0.75 : 1.0) * sun);
    }
    CHECK_THROWS_WITH_AS(
        static_cast<void>(group_weather(*plane_only(), shaded_by(by_hour), demo().site)),
        doctest::Contains("from ghi, dni and dhi"), InvalidInput);
    CHECK(group_weather(*plane_only(), shaded_by({50.0}), demo().site));
}

TEST_CASE("shade is not counted on in the sun at which margins are judged") {
    const OwnedPanels dark = shaded_by({90.0});
    double most = 0.0;
    for (const double sun : year()->irradiance_w_m2) most = std::max(most, sun);
    CHECK(heatmatch::brightest_of_group(*year(), dark, demo().site) == most);
}

TEST_CASE("a table of shade of another shape or above its range is refused") {
    for (const std::size_t count : {2U, 11U, 24U, 287U}) {
        const OwnedPanels owned = shaded_by(std::vector<double>(count, 10.0));
        CHECK_THROWS_WITH_AS(heatmatch::check_owned_panels(owned, "panels"),
                             doctest::Contains("1, 12 or 12 times 24 numbers"), InvalidInput);
    }
    CHECK_THROWS_WITH_AS(heatmatch::check_owned_panels(shaded_by({101.0}), "panels"),
                         doctest::Contains("shade_pct"), InvalidInput);
    CHECK_THROWS_WITH_AS(heatmatch::check_owned_panels(shaded_by({100.0}), "panels"),
                         doctest::Contains("all the time"), InvalidInput);
}

TEST_CASE("a file may write the shade as a number, a list or a list of lists") {
    const std::string head =
        R"({"heatmatch_installation": 1, "name": "x", "site": {"record_low_c": -20}, "panels": [)"
        R"({"group": "a", "panel": "silicon-60-cell-245", "tilt_deg": 40, "shade_pct": )";
    const auto shade_in = [&head](const std::string& text) {
        return heatmatch::installation_from_json(head + text + "}]}", "file")
            .panels.front()
            .shade_pct;
    };
    CHECK(shade_in("20") == std::vector<double>{20.0});
    CHECK(shade_in("[20]") == std::vector<double>{20.0});
    std::string hours = "[0";
    for (int hour = 1; hour < 24; ++hour) hours += ", " + std::to_string(hour);
    std::string table = hours + "]";
    for (int month = 1; month < 12; ++month) table += ", " + hours + "]";
    const std::vector<double> flat = shade_in("[" + table + "]");
    REQUIRE(flat.size() == 288);
    CHECK(flat[24 + 5] == 5.0);
    CHECK_THROWS_AS(static_cast<void>(shade_in("\"much\"")), InvalidInput);
}
