#include "refusal.hpp"

#include <functional>
#include <optional>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/parts.hpp"

using heatmatch::check_panel;
using heatmatch::check_part;
using heatmatch::InvalidInput;
using heatmatch::Panel;

namespace {

/// A label near the middle of those in use.
const Panel ordinary_panel{
    .id = "barn",
    .label = "Barn panel",
    .technology = heatmatch::Technology::multi_si,
    .v_oc = 37.5,
    .i_sc = 8.66,
    .v_mp = 30.1,
    .i_mp = 8.14,
    .alpha_isc_pct_per_k = 0.068,
    .beta_voc_pct_per_k = -0.347,
    .gamma_pmp_pct_per_k = -0.461,
    .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}};

std::string panel_refusal(const std::function<void(Panel&)>& change) {
    Panel panel = ordinary_panel;
    change(panel);
    return refusal_of<InvalidInput>([&] { check_part(panel); });
}

}  // namespace

TEST_CASE("an ordinary label is accepted, and so is a torn one") {
    CHECK(panel_refusal([](Panel&) {}) == "(accepted)");
    CHECK(panel_refusal([](Panel& p) {
              p.v_mp.reset();
              p.i_mp.reset();
              p.alpha_isc_pct_per_k.reset();
              p.beta_voc_pct_per_k.reset();
              p.gamma_pmp_pct_per_k.reset();
              p.technology.reset();
          }) == "(accepted)");
}

// Source: a current source with a diode across it cannot deliver more than Isc or hold more than
// Voc, and its curve is concave: it lies above the chord, so Vmp/Voc + Imp/Isc > 1.
TEST_CASE("a label no diode can have is refused by its field") {
    CHECK(holds(panel_refusal([](Panel& p) { p.v_mp = 38.0; }),
                "panel \"barn\": v_mp = 38 V must be below v_oc = 37.5 V; check whether"));
    CHECK(holds(panel_refusal([](Panel& p) { p.v_mp = 37.5; }), "below v_oc"));
    CHECK(holds(panel_refusal([](Panel& p) { p.i_mp = 8.7; }),
                "panel \"barn\": i_mp = 8.7 A must be below i_sc = 8.66 A; check whether"));
    CHECK(holds(panel_refusal([](Panel& p) { p.v_mp = 18.75; }), "above half of v_oc = 37.5 V"));
    CHECK(holds(panel_refusal([](Panel& p) {
                    p.v_mp = 20.0;
                    p.i_mp = 3.0;
                }),
                "v_mp/v_oc + i_mp/i_sc"));
    CHECK(panel_refusal([](Panel& p) {
              p.v_mp = 18.8;
              p.i_mp = 8.6;
          }) == "(accepted)");
}

// Source: the widest coefficients of 19,000 listed modules are -0.59..-0.18 %/K for Voc and
// -0.66..-0.21 %/K for power (0.1 and 99.9 %); 0.12 V/K on a 37.5 V panel is 0.32 %/K.
TEST_CASE("coefficients that are exchanged or in other units are refused with the remedy") {
    const auto expect = [](const std::string& message, const std::string& field) {
        CHECK(holds(message, field));
        CHECK(holds(message, "%/K"));
        CHECK(holds(message, "-120 mV/K"));
    };
    expect(panel_refusal([](Panel& p) {
               p.alpha_isc_pct_per_k = -0.347;
               p.beta_voc_pct_per_k = 0.068;
           }),
           "alpha_isc_pct_per_k = -0.347 %/K");
    expect(panel_refusal([](Panel& p) { p.beta_voc_pct_per_k = 0.347; }),
           "beta_voc_pct_per_k = 0.347");
    expect(panel_refusal([](Panel& p) { p.beta_voc_pct_per_k = -0.12; }),
           "beta_voc_pct_per_k = -0.12");
    expect(panel_refusal([](Panel& p) { p.beta_voc_pct_per_k = -120.0; }),
           "beta_voc_pct_per_k = -120");
    expect(panel_refusal([](Panel& p) { p.beta_voc_pct_per_k = -0.00347; }), "-0.00347");
    expect(panel_refusal([](Panel& p) { p.gamma_pmp_pct_per_k = 0.461; }), "gamma_pmp_pct_per_k");
    expect(panel_refusal([](Panel& p) { p.gamma_pmp_pct_per_k = -1.13; }), "gamma_pmp_pct_per_k");
}

// Source: the public list of rated modules; its gallium arsenide goes to -0.153 %/K for Voc, all
// else ends at -0.171 (edition of 2019, 21,535 modules).
TEST_CASE("gallium arsenide loses less voltage with heat than all others") {
    CHECK(panel_refusal([](Panel& p) {
              p.technology = heatmatch::Technology::gaas;
              p.beta_voc_pct_per_k = -0.153;
          }) == "(accepted)");
    CHECK(panel_refusal([](Panel& p) { p.beta_voc_pct_per_k = -0.171; }) == "(accepted)");
    const auto refused = [](std::optional<heatmatch::Technology> technology) {
        return panel_refusal([technology](Panel& p) {
            p.technology = technology;
            p.beta_voc_pct_per_k = -0.153;
        });
    };
    CHECK(holds(refused(heatmatch::Technology::multi_si), "unless technology is GaAs"));
    CHECK(holds(refused(std::nullopt), "unless technology is GaAs"));
}

TEST_CASE("a price whose ends are exchanged is refused") {
    const std::string message =
        panel_refusal([](Panel& p) { p.price = {.low = 40.0, .high = 15.0, .currency = "USD"}; });
    CHECK(holds(message, "price_low"));
    CHECK(holds(message, "price_high"));
}

TEST_CASE("missing required fields are named") {
    CHECK(holds(panel_refusal([](Panel& p) { p.id.clear(); }), "id = (missing)"));
    CHECK(holds(panel_refusal([](Panel& p) { p.label.clear(); }), "label = (missing)"));
    CHECK(holds(panel_refusal([](Panel& p) { p.v_oc = 0.0; }), "v_oc = 0 V"));
    CHECK(holds(panel_refusal([](Panel& p) { p.i_sc = 0.0; }), "i_sc = 0 A"));
    CHECK(
        holds(panel_refusal([](Panel& p) { p.provenance.source.clear(); }), "source = (missing)"));
    CHECK(holds(panel_refusal([](Panel& p) { p.provenance.source_kind.reset(); }),
                "source_kind = (missing)"));
    CHECK(holds(word_refusal(Panel{}, "source_kind", "guess"), "must be measured, "));
}

TEST_CASE("the middle of a price is between its ends, or the one that is given") {
    CHECK(heatmatch::Price{.low = 10.0, .high = 20.0}.typical() == 15.0);
    CHECK(heatmatch::Price{.low = 10.0}.typical() == 10.0);
    CHECK(heatmatch::Price{.high = 20.0}.typical() == 20.0);
    CHECK_FALSE(heatmatch::Price{}.typical().has_value());
}
