#include <algorithm>
#include <array>
#include <regex>
#include <set>
#include <string>
#include <variant>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/text/part_json.hpp"
#include "heatmatch/text/starter.hpp"

using heatmatch::Catalog;
using heatmatch::Field;
using heatmatch::FieldKind;
using heatmatch::Part;
using heatmatch::SourceKind;
using heatmatch::starter_parts;

namespace {

std::vector<Part> rows() {
    return heatmatch::list_parts(starter_parts());
}

bool is_source_key(const std::string& key) {
    const std::string opening = "\n  \"" + key + "\": {";
    return heatmatch::sources_json().find(opening) != std::string_view::npos;
}

/// A single word of small letters, digits, points and strokes is meant as a key.
bool looks_like_key(const std::string& source) {
    static const std::regex key("[a-z0-9.-]+");
    return std::regex_match(source, key);
}

const heatmatch::Provenance& provenance_of(const Part& part) {
    return std::visit(
        [](const auto& record) -> const auto& { return record.provenance; }, part);
}

const heatmatch::Price& price_of(const Part& part) {
    return std::visit(
        [](const auto& record) -> const auto& { return record.price; }, part);
}

bool between(double value, double low, double high) {
    const bool fits = value >= low && value <= high;
    if (!fits) MESSAGE("value: ", value, ", expected: ", low, " to ", high);
    return fits;
}

}  // namespace

TEST_CASE("the starter holds enough of each kind to begin with") {
    CHECK(starter_parts().elements.size() >= 60);
    CHECK(starter_parts().panels.size() >= 30);
    CHECK(starter_parts().wires.size() >= 25);
    CHECK(starter_parts().controls.size() >= 20);
    CHECK(starter_parts().connectors.size() >= 10);
    for (const heatmatch::PartKindInfo& info : heatmatch::part_kinds()) {
        CAPTURE(std::string(info.name));
        const auto all = rows();
        CHECK(std::any_of(all.begin(), all.end(),
                          [&info](const Part& part) { return part_kind(part).kind == info.kind; }));
    }
}

TEST_CASE("every row of the starter is one the library would take from a user") {
    std::set<std::string> titles;
    for (const Part& part : rows()) {
        CAPTURE(heatmatch::part_title(part));
        CHECK_NOTHROW(check_part(part));
        CHECK(titles.insert(heatmatch::part_title(part)).second);
        const std::string text = heatmatch::part_to_json(part, -1);
        CHECK((heatmatch::part_from_json(part_kind(part).kind, text) == part));
        for (const char* sign : {"\u00ae", "\u2122", "\u00a9", "(R)", "(TM)"}) {
            CHECK(text.find(sign) == std::string::npos);
        }
    }
}

TEST_CASE("every row of the starter states the source of its numbers") {
    for (const Part& part : rows()) {
        CAPTURE(heatmatch::part_title(part));
        const heatmatch::Provenance& from = provenance_of(part);
        CAPTURE(from.source);
        if (looks_like_key(from.source)) CHECK(is_source_key(from.source));
        for (const auto& [field, source] : from.source_of) {
            const auto shown_field = field;  // clang 14 captures no structured binding
            CAPTURE(shown_field);
            const auto shown_source = source;  // clang 14 captures no structured binding
            CAPTURE(shown_source);
            const Field* known = heatmatch::find_field(part_kind(part).fields, field);
            REQUIRE(known != nullptr);
            // Nothing is told of a field that is not there.
            CHECK_FALSE(
                std::holds_alternative<std::monostate>(known->get(heatmatch::part_record(part))));
            if (looks_like_key(source)) CHECK(is_source_key(source));
        }
        // No maker's part is in the starter, and values from memory are marked.
        CHECK(*from.source_kind > SourceKind::nameplate);  // nor measured
        if (from.source.find("from memory") != std::string::npos || from.source == "from-memory") {
            CHECK(*from.source_kind >= SourceKind::representative);  // or from memory
        }
    }
}

TEST_CASE("prices of the starter have two ends in their order and a currency") {
    for (const Part& part : rows()) {
        CAPTURE(heatmatch::part_title(part));
        const heatmatch::Price& price = price_of(part);
        CHECK(price.low.has_value() == price.high.has_value());
        CHECK(price.low.has_value() != price.currency.empty());
        if (price.low && price.high) CHECK(*price.low <= *price.high);
        if (!price.currency.empty()) CHECK(price.currency == "USD");
    }
}

TEST_CASE("every reference of the starter leads to a part of it") {
    int followed = 0;
    for (const Part& part : rows()) {
        CAPTURE(heatmatch::part_title(part));
        for (const Field& field : part_kind(part).fields) {
            if (field.kind != FieldKind::reference) continue;
            const heatmatch::Value value = field.get(heatmatch::part_record(part));
            if (std::holds_alternative<std::monostate>(value)) continue;
            const auto kind = heatmatch::part_kind(field.refers_to).kind;
            CHECK(starter_parts().find(kind, std::get<std::string>(value)).has_value());
            ++followed;
        }
    }
    CHECK(followed >= static_cast<int>(starter_parts().wires.size()));
    for (const heatmatch::Wire& wire : starter_parts().wires) CHECK_FALSE(wire.insulation.empty());
}

// Source: listed modules have fill factors of 0.58 to 0.81 and efficiencies of 4 to 23 %; cells of
// crystalline silicon 0.55 to 0.75 V; the name carries the watts, rounded to the label's step.
TEST_CASE("every panel of the starter fits a single diode and agrees with its name") {
    for (const heatmatch::Panel& panel : starter_parts().panels) {
        CAPTURE(panel.id);
        CHECK_NOTHROW(static_cast<void>(heatmatch::fit_single_diode(panel)));
        REQUIRE((panel.v_mp && panel.i_mp && panel.beta_voc_pct_per_k));
        const double watts = *panel.v_mp * *panel.i_mp;
        CHECK(between(watts / (panel.v_oc * panel.i_sc), 0.55, 0.83));
        if (panel.area_m2) CHECK(between(watts / (1000.0 * *panel.area_m2), 0.04, 0.24));
        const bool crystalline =
            panel.technology && *panel.technology <= heatmatch::Technology::heterojunction;
        if (crystalline && panel.cells_in_series) {
            CHECK(between(panel.v_oc / *panel.cells_in_series, 0.55, 0.76));
        }
        std::smatch name;
        if (std::regex_search(panel.id, name, std::regex("-([0-9]+)$"))) {
            CHECK(between(watts, 0.96 * std::stod(name[1]), 1.04 * std::stod(name[1])));
        }
        if (panel.max_series_fuse_a) CHECK(*panel.max_series_fuse_a > panel.i_sc);
        if (panel.max_system_voltage_v) CHECK(*panel.max_system_voltage_v > panel.v_oc);
    }
}

// Source: arithmetic, V²/P; tubular elements carry 0.05 (cables) to 30 W/cm2 (copper in water);
// the name carries watts and volts.
TEST_CASE("every element of the starter agrees with itself") {
    for (const heatmatch::Element& element : starter_parts().elements) {
        CAPTURE(element.id);
        const bool rated = element.rated_v && element.rated_w;
        if (rated && element.resistance_ohm) {
            const double by_rating = *element.rated_v * *element.rated_v / *element.rated_w;
            const bool moves =
                !element.alloy.empty() && !heatmatch::find_alloy(starter_parts(), element.alloy)
                                               .fixed_resistance.value_or(true);
            if (!moves) CHECK(between(*element.resistance_ohm / by_rating, 0.85, 1.15));
        }
        std::smatch name;
        if (std::regex_search(element.id, name, std::regex("-([0-9]+)-([0-9]+)$"))) {
            REQUIRE(rated);
            CHECK(*element.rated_w == std::stod(name[1]));
            CHECK(*element.rated_v == std::stod(name[2]));
        }
        const auto density = element.watt_density_w_cm2();
        if (density) CHECK(between(*density, 0.03, 30.0));
        CHECK_FALSE(element.measured_resistance_ohm.has_value());
        if (element.leg_spacing_mm && element.sheath_diameter_mm && element.legs.value_or(1) > 1) {
            CHECK(*element.leg_spacing_mm >= *element.sheath_diameter_mm);
        }
    }
}

// Source: ASTM B258 for the gauge in the name; a covered wire is thicker than its strands, which
// fill at most all of their circle.
TEST_CASE("every wire of the starter has the size in its name and a cover around it") {
    for (const heatmatch::Wire& wire : starter_parts().wires) {
        CAPTURE(wire.id);
        std::smatch name;
        if (std::regex_search(wire.id, name, std::regex("-([0-9]+)-awg$"))) {
            CHECK(wire.area_mm2 ==
                  doctest::Approx(heatmatch::awg_area_mm2(std::stod(name[1]))).epsilon(1e-6));
        }
        if (wire.outer_diameter_mm) {
            CHECK(*wire.outer_diameter_mm > heatmatch::conductor_diameter_mm(wire));
        }
        const heatmatch::Insulation& cover =
            heatmatch::find_insulation(starter_parts(), wire.insulation);
        // EN 50618 tabulates its cable at 120 °C, which its insulation stands for 20,000 hours.
        const double tabulated_c = cover.id == "xlpo-pv-cable" ? 120.0 : cover.limit_c;
        if (wire.ampacity_conductor_c) CHECK(*wire.ampacity_conductor_c <= tabulated_c);
        if (wire.resistance_ohm_per_km) {
            heatmatch::Wire computed = wire;
            computed.resistance_ohm_per_km.reset();
            const double per_km = 1000.0 * heatmatch::resistance_ohm_per_m(computed, 20.0);
            CHECK(between(*wire.resistance_ohm_per_km / per_km, 0.95, 1.2));
        }
    }
}

TEST_CASE("insulations of the starter have a lower limit when wet, and none above its family") {
    for (const heatmatch::Insulation& insulation : starter_parts().insulations) {
        CAPTURE(insulation.id);
        if (insulation.limit_wet_c) CHECK(*insulation.limit_wet_c <= insulation.limit_c);
        // Common practice, no source: PVC softens, polymers char.
        if (insulation.family == "PVC") CHECK(insulation.limit_c <= 105.0);
        if (insulation.family == "PTFE") CHECK(insulation.limit_c <= 260.0);
        if (insulation.family == "silicone rubber") CHECK(insulation.limit_c <= 200.0);
    }
}

// Source: UL 1030 as tabulated for heater sheaths: long service and upper limit [°C].
TEST_CASE("sheath limits are those of the standard's table") {
    struct Limits {
        const char* id;
        double verdict;
        double hard;
    };
    for (const Limits& limits : std::to_array<Limits>({{"copper", 150.0, 177.0},
                                                       {"carbon-steel", 370.0, 399.0},
                                                       {"stainless", 540.0, 649.0},
                                                       {"alloy-800", 760.0, 871.0},
                                                       {"alloy-840", 760.0, 871.0},
                                                       {"alloy-600", 815.0, 927.0}})) {
        CAPTURE(std::string(limits.id));
        const heatmatch::Sheath& sheath = heatmatch::find_sheath(starter_parts(), limits.id);
        CHECK(sheath.verdict_limit_c == limits.verdict);
        CHECK(sheath.hard_limit_c == limits.hard);
    }
}

// Source: quartz by table with its transition at 573 °C; volumetric heat capacities of solids and
// beds lie between 0.9 and 4.2 MJ/m3K (water).
TEST_CASE("every medium of the starter holds a plausible amount of heat") {
    for (const heatmatch::Medium& medium : starter_parts().media) {
        CAPTURE(medium.id);
        const auto& table = medium.heat_capacity_j_kgk;
        REQUIRE_FALSE(table.empty());
        CHECK(std::is_sorted(table.begin(), table.end(),
                             [](const auto& a, const auto& b) { return a.t_c < b.t_c; }));
        const double at_20 = heatmatch::interpolate(table, 20.0, 0.0);
        CHECK(between(at_20 * medium.density_kg_m3 / 1e6, 0.9, 4.25));
        CHECK(medium.k20_low_w_mk.value_or(medium.k20_w_mk) <= medium.k20_w_mk);
        CHECK((medium.form == heatmatch::MediumForm::granular) == medium.grain_mm.has_value());
        CHECK(medium.ceiling_c.has_value());
    }
    const heatmatch::Medium& sand = heatmatch::find_medium(starter_parts(), "dry-sand");
    CHECK(sand.k20_w_mk == 0.27);
    // Source: Kiyohashi, Sasaki and Masuda, the lowest of loose silica sand.
    CHECK(sand.k20_low_w_mk == 0.17);
    CHECK(sand.k20_high_w_mk == 0.35);
    CHECK(heatmatch::interpolate(sand.heat_capacity_j_kgk, 20.0, 0.0) == 737.0);
    CHECK(heatmatch::interpolate(sand.heat_capacity_j_kgk, 573.0, 0.0) == 1650.0);
}

TEST_CASE("alloys of the starter have a factor of one at room temperature, and lamps are marked") {
    for (const heatmatch::Alloy& alloy : starter_parts().alloys) {
        CAPTURE(alloy.id);
        if (alloy.resistance_factor.empty()) continue;
        CHECK(between(heatmatch::interpolate(alloy.resistance_factor, 20.0, 0.0), 0.98, 1.02));
        const double largest =
            heatmatch::largest_between(alloy.resistance_factor, -50.0, 3000.0, 1.0);
        if (alloy.fixed_resistance.value_or(true)) CHECK(largest < 1.5);
    }
    CHECK(heatmatch::find_alloy(starter_parts(), "tungsten").fixed_resistance == false);
    CHECK(heatmatch::find_alloy(starter_parts(), "ptc-ceramic").fixed_resistance == false);
}

TEST_CASE("some control of the starter breaks direct current, and none that is for ac alone") {
    int breaking = 0;
    for (const heatmatch::Control& control : starter_parts().controls) {
        CAPTURE(control.id);
        const auto amperes = heatmatch::breaking_current_a(control, 48.0, 2);
        if (control.ac_only.value_or(false)) CHECK_FALSE(amperes.has_value());
        if (amperes) ++breaking;
        if (control.v_ac) CHECK(control.a_ac.has_value());
    }
    CHECK(breaking >= 3);
}
