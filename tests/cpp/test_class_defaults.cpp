#include "assumed.hpp"

#include <algorithm>
#include <array>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/parts/class_defaults.hpp"

using heatmatch::fill_class_defaults;
using heatmatch::FilledPanel;
using heatmatch::Panel;
using heatmatch::panel_class;
using heatmatch::PanelClass;
using heatmatch::Technology;

namespace {

struct Medians {
    Technology technology;
    double alpha;
    double beta;
    double gamma;
};

// Source: medians over the public module list of the CEC, edition of 2017 [%/K]; the amorphous
// row is that of single junctions.
constexpr auto listed_medians =
    std::to_array<Medians>({{Technology::mono_si, 0.050, -0.340, -0.457},
                            {Technology::multi_si, 0.058, -0.339, -0.452},
                            {Technology::heterojunction, 0.036, -0.240, -0.300},
                            {Technology::cdte, 0.043, -0.263, -0.264},
                            {Technology::cigs, 0.007, -0.330, -0.350},
                            {Technology::cis, 0.010, -0.330, -0.340},
                            {Technology::a_si, 0.088, -0.349, -0.259}});

}  // namespace

TEST_CASE("a panel of two numbers gets a NOCT, and its season is not that of cells at 0 °C") {
    const heatmatch::Panel bare{.id = "bare", .v_oc = 37.2, .i_sc = 8.6};
    const heatmatch::FilledPanel filled = heatmatch::fill_class_defaults(bare);
    REQUIRE(filled.panel.noct_c);
    CHECK(*filled.panel.noct_c > 40.0);
    CHECK(std::any_of(filled.assumed.begin(), filled.assumed.end(),
                      [](const auto& assumption) { return assumption.field == "noct_c"; }));
}

TEST_CASE("class medians are those of the module list") {
    for (const Medians& median : listed_medians) {
        CAPTURE(std::string(word_of(median.technology)));
        const PanelClass values = panel_class(median.technology);
        CHECK(values.alpha_isc_pct_per_k == median.alpha);
        CHECK(values.beta_voc_pct_per_k == median.beta);
        CHECK(values.gamma_pmp_pct_per_k == median.gamma);
    }
}

// Source: band gaps at 25 °C as De Soto 2006 and its followers use them [eV].
TEST_CASE("band gaps are those of the material") {
    for (const auto silicon :
         {Technology::mono_si, Technology::multi_si, Technology::heterojunction}) {
        CHECK(panel_class(silicon).band_gap_ev == 1.121);
    }
    CHECK(panel_class(std::nullopt).band_gap_ev == 1.121);
    CHECK(panel_class(Technology::cdte).band_gap_ev == 1.475);
    CHECK(panel_class(Technology::cis).band_gap_ev == 1.010);
    CHECK(panel_class(Technology::cigs).band_gap_ev == 1.15);
    CHECK(panel_class(Technology::a_si).band_gap_ev == 1.7);
    CHECK(panel_class(Technology::gaas).band_gap_ev == 1.424);
}

// Source: an open-circuit voltage falls and a current rises with temperature in every class; all
// classes lie inside the ranges a panel may have.
TEST_CASE("every technology a panel may have has a class that a panel may have") {
    const heatmatch::Field* technology =
        heatmatch::find_field(heatmatch::panel_fields(), "technology");
    REQUIRE(technology != nullptr);
    for (const std::string_view word : technology->words) {
        CAPTURE(std::string(word));
        Panel panel{
            .id = "a",
            .label = "a",
            .technology = heatmatch::find_choice<Technology>(word),
            .v_oc = 40.0,
            .i_sc = 5.0,
            .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}};
        const FilledPanel filled = fill_class_defaults(panel);
        CHECK_NOTHROW(check_panel(filled.panel));
        for (const heatmatch::Field& field : heatmatch::panel_fields()) {
            CHECK_NOTHROW(check_value(field, field.get(&filled.panel), "panel"));
        }
        CHECK(filled.assumed.size() == 6);
    }
}

// Source: arithmetic, 0.808 of 37.5 V and 0.938 of 8.66 A to four digits.
TEST_CASE("unknown values are set from the class and listed") {
    const FilledPanel filled = fill_class_defaults(
        {.id = "torn", .technology = Technology::multi_si, .v_oc = 37.5, .i_sc = 8.66});
    CHECK(filled.panel.v_mp == 30.3);
    CHECK(filled.panel.i_mp == 8.123);
    CHECK(filled.panel.beta_voc_pct_per_k == -0.339);
    CHECK(filled.beta_is_default);
    REQUIRE(filled.assumed.size() == 6);
    CHECK(filled.assumed[3].said().text() ==
          "panel \"torn\": beta_voc_pct_per_k = -0.339 %/K (class default, cec-module-list)");
}

TEST_CASE("known values are kept and not listed") {
    const FilledPanel filled = fill_class_defaults({.id = "whole",
                                                    .technology = Technology::mono_si,
                                                    .v_oc = 37.5,
                                                    .i_sc = 8.66,
                                                    .v_mp = 30.1,
                                                    .i_mp = 8.14,
                                                    .alpha_isc_pct_per_k = 0.06,
                                                    .beta_voc_pct_per_k = -0.31,
                                                    .gamma_pmp_pct_per_k = -0.41,
                                                    .noct_c = 45.0});
    CHECK(filled.assumed.empty());
    CHECK_FALSE(filled.beta_is_default);
    CHECK(filled.panel.beta_voc_pct_per_k == -0.31);
    CHECK(filled.band_gap_ev == 1.121);
}

TEST_CASE("an unknown technology is taken for silicon and that is listed") {
    const FilledPanel filled = fill_class_defaults({.id = "nameless", .v_oc = 37.5, .i_sc = 8.66});
    CHECK(assumes(filled, "technology"));
    CHECK(assumes(filled, "beta_voc_pct_per_k"));
    CHECK_FALSE(filled.panel.technology);
    CHECK(filled.band_gap_ev == 1.121);
    CHECK(filled.assumed.size() == 7);
}
