#include "demo.hpp"
#include "screen_check.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/candidate/two_sided_season.hpp"
#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/rear_light.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::OwnedPanels;
using heatmatch::Panel;
using heatmatch::Severity;

namespace {

/// The demo with one more group: two clear-backed panels over snow-free ground.
Installation with_bifacial_group(std::optional<double> bifaciality) {
    Installation installation = demo();
    Panel panel = heatmatch::find_panel(starter(), "half-cut-144-cell-545");
    panel.id = "clear-back";
    panel.bifaciality = bifaciality;
    installation.parts.panels.push_back(panel);
    installation.panels = {{.group = "clear pair", .panel = "clear-back", .count = 2}};
    installation.circuit->group = "clear pair";
    installation.circuit->panels = "1S1P";
    return installation;
}

double value_of(const Candidate& candidate, std::string_view name) {
    for (const heatmatch::Margin& margin : candidate.margins()) {
        if (margin.name == name && margin.value) return *margin.value;
    }
    FAIL("no value of " << name);
    return 0.0;
}

}  // namespace

// Before, a bifaciality of 0 and of 0.9 gave the same bytes.
TEST_CASE("rear light is included in the heat of the demo, its band and its highest current") {
    const Candidate none = assess(starter(), with_bifacial_group(0.0));
    const Candidate much = assess(starter(), with_bifacial_group(0.9));
    REQUIRE(none.season);
    REQUIRE(much.season);
    CHECK(none.season->rear_kwh == 0.0);
    CHECK(much.season->rear_kwh > 0.02 * none.season->kwh);
    CHECK(much.season->rear_kwh < 0.6 * none.season->kwh);
    CHECK(much.season->kwh ==
          doctest::Approx(none.season->kwh + much.season->rear_kwh).epsilon(0.01));
    // The back is not stated to be free: without its light at the low end.
    CHECK(much.season->kwh_low == doctest::Approx(none.season->kwh_low).epsilon(0.01));
    CHECK(much.season->kwh_high > none.season->kwh_high + much.season->rear_kwh);
    CHECK(much.circuit.short_circuit_current_a() ==
          doctest::Approx(1.27 * none.circuit.short_circuit_current_a()));
    for (const char* name : {"run current", "dc breaking", "joint current"}) {
        CAPTURE(std::string(name));
        CHECK(value_of(much, name) > 1.25 * value_of(none, name));
    }
    CHECK(much.bright.element_power_w > none.bright.element_power_w);
    bool said = false;
    for (const auto& remark : much.season->remarks) said |= remark.id() == "season.rear";
    CHECK(said);
}

TEST_CASE("a ranking counts the light on the backs as an assessment does") {
    const Installation installation = with_bifacial_group(0.8);
    heatmatch::RankOptions options = keep_all();
    options.element = installation.circuit->element;
    const heatmatch::Ranking ranking = heatmatch::rank(starter(), installation, options);
    const Candidate alone = assess(starter(), installation);
    bool found = false;
    for (const auto* list : {&ranking.candidates, &ranking.rejected}) {
        for (const Candidate& candidate : *list) {
            if (candidate.circuit.title() != alone.circuit.title()) continue;
            found = true;
            CHECK(candidate.season->kwh == doctest::Approx(alone.season->kwh).epsilon(1e-9));
            CHECK(candidate.season->rear_kwh ==
                  doctest::Approx(alone.season->rear_kwh).epsilon(1e-9));
        }
    }
    CHECK(found);
}

TEST_CASE("the screen assesses backs as margins do, stated and unstated") {
    for (const std::optional<double> bifaciality :
         {std::optional<double>{}, std::optional(0.0), std::optional(0.8)}) {
        Installation installation = with_bifacial_group(bifaciality);
        installation.elements.resize(2);
        check_screen(installation, merged_parts(starter(), installation));
        installation.runs.clear();
        installation.devices.clear();
        check_screen(installation, merged_parts(starter(), installation));
    }
}

// Unstated facts are assessed at the careful end, and never better than stated ones.
TEST_CASE("an unstated back equals a clear one in the worst case, and likely has no light") {
    const auto at = [](std::optional<double> bifaciality) {
        return assess(starter(), with_bifacial_group(bifaciality));
    };
    const Candidate untold = at(std::nullopt);
    const Candidate clear = at(1.0);
    const Candidate opaque = at(0.0);
    CHECK(untold.season->kwh == opaque.season->kwh);
    CHECK(untold.worst_severity() >= clear.worst_severity());
    std::size_t worse = 0;
    REQUIRE(untold.margins().size() == clear.margins().size());
    for (std::size_t i = 0; i < clear.margins().size(); ++i) {
        const heatmatch::Margin& of_clear = clear.margins()[i];
        const heatmatch::Margin& of_untold = untold.margins()[i];
        CAPTURE(of_clear.name);
        REQUIRE(of_clear.name == of_untold.name);
        CHECK(of_untold.worst_severity >= of_clear.worst_severity);
        // A wire that is chosen is chosen for what is likely, and so is the air it lies in.
        constexpr double chosen = 5e-3;
        if (of_clear.careful_headroom && of_untold.careful_headroom)
            CHECK(*of_untold.careful_headroom <= *of_clear.careful_headroom + chosen);
        worse += of_untold.careful_headroom < opaque.margins()[i].careful_headroom ? 1 : 0;
    }
    CHECK(worse > 5);
}

// Source: the sum over rows, with the light on the backs added to each.
TEST_CASE("a season with light on the backs is that of its rows") {
    const Installation installation = with_bifacial_group(0.8);
    const heatmatch::Weather weather = heatmatch::clear_days(installation.site, std::nullopt);
    const Panel& label = installation.parts.panels.back();
    const auto panel =
        heatmatch::panel_in_service(installation.panels[0], label, installation.site.record_low_c);
    heatmatch::SeasonWeather season = heatmatch::season_weather(weather, {});
    const double brightest = season.brightest_w_m2;
    add_two_sided(season, weather, {}, false, panel);
    add_two_sided(season, weather, {}, false, panel);
    REQUIRE(season.two_sided.size() == 1);
    CHECK(season.for_panel(panel).brightest_w_m2 == brightest);
    const auto curves = heatmatch::season_curves(panel, season);
    constexpr double ohm = 5.0;
    const heatmatch::Weather both = heatmatch::with_rear_irradiance(weather, 0.8);
    CHECK(curves.season.delivered_kwh(ohm) ==
          doctest::Approx(heatmatch::exact_kwh(panel.today, *panel.panel.noct_c, both, ohm))
              .epsilon(1e-3));
    CHECK(curves.front->delivered_kwh(ohm) ==
          doctest::Approx(heatmatch::exact_kwh(panel.today, *panel.panel.noct_c, weather, ohm))
              .epsilon(1e-3));
    // Weather made without a site has no rear light, and reports that.
    const auto plain =
        heatmatch::weather_from_plane(std::vector<double>{500.0}, std::vector<double>{20.0}, 1.0);
    heatmatch::SeasonWeather dark = heatmatch::season_weather(plain, {});
    add_two_sided(dark, plain, {}, false, panel);
    CHECK(dark.for_panel(panel).remarks.back().id() == "season.rear_not_known");
    CHECK(dark.for_panel(panel).rear_ends.empty());
}
