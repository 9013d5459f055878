#include "demo.hpp"
#include "long_run.hpp"
#include "screen_check.hpp"

#include <doctest/doctest.h>

using heatmatch::Candidate;
using heatmatch::Circuit;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;

TEST_CASE("the screen of the demo equals its full margins" * doctest::test_suite("numerical")) {
    check_screen(demo());
}

TEST_CASE("the screen equals the full margins where terminals are hotter than they may be") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.elements = {{.any = heatmatch::ElementFilter{}, .count = 2}};
    if (in_a_slow_build()) installation.elements.front().any->family = {"storage rod"};
    check_screen(installation);
}

// Two rods in parallel; at half the array's watts each they last, at all of them one does not. Four
// hours a day: in six, stagnation would be named first.
TEST_CASE("the screen includes the sheath of the remaining branches when a parallel branch opens") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.panels.front().count = 8;
    installation.store->charge_hours = 4.0;
    installation.elements = {{.element = "storage-rod-1000-240", .count = 4},
                             {.element = "strip-500-240", .count = 3}};
    for (const bool said : {true, false}) {
        CAPTURE(said);
        if (!said) {
            installation.runs.clear();
            installation.devices.clear();
        }
        CHECK(check_screen(installation).contains("survivor sheath"));
    }
}

TEST_CASE("the screen equals the full margins behind long thin wire in the sun") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.panels.front().count = 4;
    installation.elements = {{.element = "tubular-1000-120", .count = 3}};
    installation.site.bright_irradiance_w_m2 = 1200.0;
    installation.runs.front().wire = "pv-wire-12-awg";
    installation.runs.front().length_m = 90.0;
    check_screen(installation);
}

TEST_CASE("the screen equals the full margins with nothing stated about wire and devices") {
    Installation installation = demo();
    installation.panels.resize(1);
    installation.runs.clear();
    installation.devices.clear();
    check_screen(installation);
}

TEST_CASE("the screen equals the full margins where live parts are within reach") {
    Installation installation = demo();
    installation.panels = {{.group = "small", .panel = "silicon-36-cell-90", .count = 2},
                           {.group = "high", .panel = "cdte-100", .count = 2}};
    installation.elements = {{.element = "immersion-dc-200-12", .count = 2}};
    installation.site.live_parts_enclosed = false;
    check_screen(installation);
    installation.runs.clear();
    installation.devices.clear();
    check_screen(installation);
    installation.site.live_parts_enclosed.reset();
    check_screen(installation);
}

TEST_CASE("the screen equals the full margins where one group finds no wire at the element" *
          doctest::test_suite("numerical")) {
    Installation installation = demo();
    installation.runs.back().wire = "choose";
    installation.runs.back().connector.clear();
    installation.panels = {{.group = "one", .panel = "silicon-60-cell-245", .count = 1},
                           {.group = "high", .panel = "cdte-430", .count = 4}};
    check_screen(installation);
}
