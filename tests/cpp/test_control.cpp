#include "refusal.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/parts.hpp"

using heatmatch::breaking_current_a;
using heatmatch::check_part;
using heatmatch::Control;
using heatmatch::InvalidInput;
using heatmatch::is_fuse;
using heatmatch::is_semiconductor;
using heatmatch::operated_of;
using heatmatch::poles_of;

namespace {

const Control isolator{
    .id = "isolator",
    .label = "Isolator",
    .family = "isolator",
    .dc_ratings = {{.v_dc = 300.0, .a_dc = 32.0, .poles = 1},
                   {.v_dc = 600.0, .a_dc = 32.0, .poles = 2},
                   {.v_dc = 1000.0, .a_dc = 16.0, .poles = 2}},
    .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}};

}  // namespace

// Source: the three printed pairs above; between them nothing is printed.
TEST_CASE("a device breaks the largest printed current with sufficient voltage and poles") {
    CHECK(breaking_current_a(isolator, 100.0, 1) == 32.0);
    CHECK(breaking_current_a(isolator, 300.0, 1) == 32.0);
    CHECK_FALSE(breaking_current_a(isolator, 301.0, 1).has_value());
    CHECK(breaking_current_a(isolator, 600.0, 2) == 32.0);
    CHECK(breaking_current_a(isolator, 601.0, 2) == 16.0);
    CHECK(breaking_current_a(isolator, 1000.0, 4) == 16.0);
    CHECK_FALSE(breaking_current_a(isolator, 1000.1, 4).has_value());
    CHECK_FALSE(breaking_current_a(isolator, 100.0, 0).has_value());
}

TEST_CASE("a device without a printed pair breaks nothing") {
    Control control = isolator;
    control.dc_ratings.clear();
    CHECK_FALSE(breaking_current_a(control, 12.0, 2).has_value());
    CHECK(part_refusal(control) == "(accepted)");
}

TEST_CASE("an ac-only device has no dc ratings") {
    Control control = isolator;
    control.ac_only = true;
    CHECK(holds(part_refusal(control),
                "control \"isolator\": ac_only = yes must be no where dc_ratings are given; keep"));
    control.ac_only = false;
    CHECK(part_refusal(control) == "(accepted)");
    control.ac_only = true;
    control.dc_ratings.clear();
    CHECK(part_refusal(control) == "(accepted)");
}

TEST_CASE("set points are in order") {
    Control control = isolator;
    control.sense_low_c = 90.0;
    control.sense_high_c = 30.0;
    CHECK(holds(part_refusal(control), "sense_low_c = 90 °C must be <= sense_high_c = 30 °C"));
    control.sense_low_c = 30.0;
    CHECK(part_refusal(control) == "(accepted)");
}

TEST_CASE("a pair is checked by its place in the list") {
    Control control = isolator;
    control.dc_ratings[1].v_dc = 0.0;
    CHECK(holds(part_refusal(control), "dc_ratings[1].v_dc = 0 V must be > 0 V"));
    control = isolator;
    control.dc_ratings[2].poles = 9;
    CHECK(holds(part_refusal(control), "dc_ratings[2].poles = 9 must be >= 1 and <= 8"));
}

TEST_CASE("words of a control are those of its glossary") {
    CHECK(holds(word_refusal(isolator, "reset", "manually"), "did you mean \"manual\"?"));
    CHECK(word_refusal(isolator, "reset", "manual") == "(accepted)");
    CHECK(holds(word_refusal(isolator, "failure", "welded"), "closed, open, either or none known"));
    Control control = isolator;
    control.reset = static_cast<heatmatch::ResetKind>(9);
    CHECK(holds(part_refusal(control), "reset = \"choice 9\" must be automatic, manual"));
}

// Source: common practice, no source: what the trade means by these words.
TEST_CASE("a family determines what makes a control open, unless the record does") {
    using heatmatch::OperatedKind;
    Control control = isolator;
    CHECK(operated_of(control) == OperatedKind::by_hand);
    control.operated = OperatedKind::by_coil;
    CHECK(operated_of(control) == OperatedKind::by_coil);
    control = {.family = "solid-state relay"};
    CHECK(operated_of(control) == OperatedKind::by_signal);
    CHECK(is_semiconductor(control) == true);
    CHECK(is_semiconductor(isolator) == false);
    control.family = "gizmo";
    CHECK_FALSE(operated_of(control).has_value());
    CHECK_FALSE(is_semiconductor(control).has_value());
    control.semiconductor = true;
    CHECK(is_semiconductor(control) == true);
    control.sense_high_c = 90.0;
    CHECK(operated_of(control) == OperatedKind::by_temperature);
}

TEST_CASE("a holder of fuses is a fuse, a switch with fuses inside is none") {
    Control control{.family = "fuse"};
    CHECK(is_fuse(control));
    control.family = "fuse holder";
    control.reset = heatmatch::ResetKind::by_hand;
    CHECK(is_fuse(control));
    control.family = "switch-disconnector with fuses";
    control.contains_fuses = true;
    CHECK_FALSE(is_fuse(control));
    control.family = "combiner";
    control.reset.reset();
    CHECK(is_fuse(control));
    control.operated = heatmatch::OperatedKind::by_hand;
    CHECK_FALSE(is_fuse(control));
    CHECK_FALSE(is_fuse(isolator));
}

TEST_CASE("poles are as stated, or at least those of the printed pairs") {
    Control control = isolator;
    CHECK(poles_of(control) == 2);
    control.poles = 4;
    CHECK(poles_of(control) == 4);
    CHECK(part_refusal(control) == "(accepted)");
    control.poles = 1;
    CHECK(holds(part_refusal(control), "poles = 1 must be >= 2, the poles of a pair"));
    CHECK_FALSE(poles_of(Control{}).has_value());
}
