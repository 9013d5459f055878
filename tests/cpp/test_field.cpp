#include "refusal.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"

using heatmatch::check_value;
using heatmatch::Field;
using heatmatch::FieldKind;
using heatmatch::find_field;
using heatmatch::InvalidInput;
using heatmatch::Range;
using heatmatch::read_quantity;
using heatmatch::Rows;
using heatmatch::set_field;
using heatmatch::TextMap;
using heatmatch::Value;
namespace unit = heatmatch::unit;

namespace {

struct NamedFields {
    std::string name;
    std::span<const Field> fields;
};

std::vector<NamedFields> all_tables() {
    std::vector<NamedFields> tables;
    for (const heatmatch::PartKindInfo& info : heatmatch::part_kinds()) {
        tables.push_back({std::string(info.name), info.fields});
    }
    tables.push_back({"site", heatmatch::site_fields()});
    tables.push_back({"weather", heatmatch::monthly_normals_fields()});
    tables.push_back({"owned panels", heatmatch::owned_panels_fields()});
    tables.push_back({"measured", heatmatch::panel_measurement_fields()});
    tables.push_back({"allowed elements", heatmatch::allowed_elements_fields()});
    tables.push_back({"element filter", heatmatch::element_filter_fields()});
    tables.push_back({"store", heatmatch::store_fields()});
    tables.push_back({"surroundings", heatmatch::surroundings_fields()});
    tables.push_back({"run", heatmatch::wire_run_fields()});
    tables.push_back({"device", heatmatch::device_fields()});
    tables.push_back({"cover area", heatmatch::cover_area_fields()});
    tables.push_back({"space", heatmatch::space_fields()});
    tables.push_back({"goals", heatmatch::goals_fields()});
    tables.push_back({"circuit", heatmatch::existing_circuit_fields()});
    return tables;
}

const Field& panel_field(const char* name) {
    const Field* found = find_field(heatmatch::panel_fields(), name);
    REQUIRE(found != nullptr);
    return *found;
}

std::string field_refusal(const Field& field, const Value& value) {
    return refusal_of<InvalidInput>([&] { check_value(field, value, "panel \"barn\""); });
}

}  // namespace

TEST_CASE("every field table is complete") {
    for (const NamedFields& table : all_tables()) {
        CAPTURE(table.name);
        CHECK_FALSE(table.fields.empty());
        std::set<std::string_view> names;
        for (const Field& field : table.fields) {
            CAPTURE(std::string(field.name));
            CHECK(names.insert(field.name).second);
            CHECK_FALSE(field.meaning.empty());
            const bool reachable = field.get != nullptr && field.set != nullptr;
            CHECK(reachable);
            CHECK(field.words.empty() == (field.kind != FieldKind::choice));
            const bool tabular = field.kind == FieldKind::rows || field.kind == FieldKind::record;
            CHECK(field.columns.empty() != tabular);
            CHECK(field.refers_to.empty() == (field.kind != FieldKind::reference));
            if (!field.refers_to.empty())
                CHECK_NOTHROW(std::ignore = heatmatch::part_kind(field.refers_to));
            const bool numeric = field.kind == FieldKind::number ||
                                 field.kind == FieldKind::count || field.kind == FieldKind::numbers;
            if (numeric) CHECK(std::isfinite(field.range.low));
            if (numeric) CHECK(std::isfinite(field.range.high));
            if (numeric) CHECK(field.range.low < field.range.high);
            for (const heatmatch::Column& column : field.columns) {
                CHECK_FALSE(column.meaning.empty());
                CHECK(column.range.low < column.range.high);
            }
        }
    }
}

TEST_CASE("a range holds its ends unless they are open") {
    const Range closed{.low = 1.0, .high = 8.0};
    CHECK(closed.holds(1.0));
    CHECK(closed.holds(8.0));
    CHECK_FALSE(closed.holds(std::nextafter(1.0, 0.0)));
    CHECK_FALSE(closed.holds(std::nextafter(8.0, 9.0)));
    CHECK_FALSE(closed.holds(std::nan("")));
    const Range open{.low = 0.0, .high = 2000.0, .low_open = true};
    CHECK_FALSE(open.holds(0.0));
    CHECK(open.holds(5e-324));
    CHECK(open.text(unit::volt) == "> 0 V and <= 2000 V");
    CHECK(closed.text(unit::count) == ">= 1 and <= 8");
    CHECK(Range{.low = -5.0}.text(unit::celsius) == ">= -5 °C");
    CHECK(Range{.high = 5.0}.text(unit::celsius) == "<= 5 °C");
    CHECK(Range{}.text(unit::none) == "a finite number");
}

TEST_CASE("a number out of range is refused with its unit and its range") {
    const std::string message = field_refusal(panel_field("v_oc"), -3.0);
    CHECK(message ==
          "panel \"barn\": v_oc = -3 V must be > 0 V and <= 2000 V; read Voc from the "
          "label");
    CHECK(holds(field_refusal(panel_field("v_oc"), 2000.5), "2000.5 V"));
    CHECK(holds(field_refusal(panel_field("v_oc"), std::nan("")), "nan"));
    CHECK(holds(field_refusal(panel_field("v_oc"), std::numeric_limits<double>::infinity()),
                "infinite"));
    CHECK(holds(field_refusal(panel_field("noct_c"), 15.0), ">= 30 °C"));
}

TEST_CASE("a count must be whole") {
    CHECK(holds(field_refusal(panel_field("cells_in_series"), 59.5), "a whole number"));
    CHECK(field_refusal(panel_field("cells_in_series"), 60.0) == "(accepted)");
    CHECK(holds(field_refusal(panel_field("cells_in_series"), 1e300), "<= 1000"));
}

TEST_CASE("whole numbers inside lists and tables must be whole too") {
    const Field* months = find_field(heatmatch::goals_fields(), "months");
    REQUIRE(months != nullptr);
    CHECK(holds(field_refusal(*months, std::vector<double>{11.0, 1.5}), "whole"));
    const Field* ratings = find_field(heatmatch::control_fields(), "dc_ratings");
    REQUIRE(ratings != nullptr);
    CHECK(holds(field_refusal(*ratings, Rows{{600.0, 25.0, 1.5}}), "whole"));
}

TEST_CASE("a missing field is refused only where it is required") {
    CHECK(holds(field_refusal(panel_field("v_oc"), Value{}), "v_oc = (missing) must be given"));
    CHECK(field_refusal(panel_field("v_mp"), Value{}) == "(accepted)");
    // An empty text counts as missing.
    CHECK(holds(field_refusal(panel_field("label"), std::string()), "(missing)"));
    CHECK(field_refusal(panel_field("technology"), std::string()) == "(accepted)");
}

TEST_CASE("a choice names its words and the nearest of them") {
    const std::string message = field_refusal(panel_field("technology"), std::string("mono"));
    CHECK(holds(message, "technology = \"mono\""));
    CHECK(holds(message, "mono-Si, multi-Si"));
    CHECK(holds(message, "choices: mono-Si"));
}

TEST_CASE("an id is a slug of at most eighty letters") {
    for (const std::string good : {"a", "60-cell_245.b", "0"}) {
        CAPTURE(good);
        CHECK(field_refusal(panel_field("id"), good) == "(accepted)");
    }
    for (const std::string bad : {"Barn", "a b", "bärn", "a/b", "a'b", "a\nb", "*"}) {
        CAPTURE(bad);
        CHECK(holds(field_refusal(panel_field("id"), bad), "lowercase letters, digits"));
    }
    CHECK(field_refusal(panel_field("id"), std::string(80, 'a')) == "(accepted)");
    CHECK(holds(field_refusal(panel_field("id"), std::string(81, 'a')), "1 to 80"));
}

TEST_CASE("a text may be long, but not endless") {
    CHECK(field_refusal(panel_field("notes"), std::string(20000, 'a')) == "(accepted)");
    const std::string message = field_refusal(panel_field("notes"), std::string(20001, 'a'));
    CHECK(holds(message, "20000 bytes"));
    CHECK(message.size() < 400);
}

TEST_CASE("a value of another kind is refused by InvalidInput") {
    const std::vector<Value> values{true,
                                    1.0,
                                    std::string("text"),
                                    std::vector<double>{1.0},
                                    std::vector<std::string>{"a"},
                                    Rows{{1.0}},
                                    TextMap{{"a", "b"}}};
    for (const NamedFields& table : all_tables()) {
        for (const Field& field : table.fields) {
            CAPTURE(table.name + "." + std::string(field.name));
            int accepted = 0;
            for (const Value& value : values) {
                try {
                    check_value(field, value, table.name);
                    ++accepted;
                } catch (const InvalidInput& error) {
                    CHECK(holds(error.what(), std::string(field.name)));
                }
            }
            CHECK(accepted <= 1);
        }
    }
}

TEST_CASE("a table whose rows are too short is refused by InvalidInput") {
    heatmatch::Alloy alloy;
    CHECK_THROWS_AS(
        set_field(heatmatch::alloy_fields(), &alloy, "resistance_factor", Rows{{20.0}}, "alloy"),
        InvalidInput);
    heatmatch::Panel panel;
    CHECK_THROWS_AS(set_field(heatmatch::panel_fields(), &panel, "listed_fit", Rows{}, "panel"),
                    InvalidInput);
}

TEST_CASE("a table over temperature must rise") {
    const Field* table = find_field(heatmatch::alloy_fields(), "resistance_factor");
    REQUIRE(table != nullptr);
    CHECK(field_refusal(*table, Rows{{20.0, 1.0}, {500.0, 1.05}}) == "(accepted)");
    CHECK(holds(field_refusal(*table, Rows{{20.0, 1.0}, {20.0, 1.05}}), "sort the table"));
    CHECK(holds(field_refusal(*table, Rows{{500.0, 1.0}, {20.0, 1.05}}),
                "resistance_factor = 20 °C"));
    CHECK(holds(field_refusal(*table, Rows{{20.0, 1.0}, {500.0, -1.0}}),
                "resistance_factor[1].factor = -1"));
}

TEST_CASE("a field is set by name after it was checked") {
    heatmatch::Panel panel;
    set_field(heatmatch::panel_fields(), &panel, "v_oc", 37.5, "panel");
    CHECK(panel.v_oc == 37.5);
    set_field(heatmatch::panel_fields(), &panel, "bypass_diodes", 3.0, "panel");
    CHECK(panel.bypass_diodes == 3);
    set_field(heatmatch::panel_fields(), &panel, "bypass_diodes", Value{}, "panel");
    CHECK_FALSE(panel.bypass_diodes.has_value());
    CHECK_THROWS_AS(set_field(heatmatch::panel_fields(), &panel, "v_oc", -1.0, "panel"),
                    InvalidInput);
    CHECK(panel.v_oc == 37.5);
    CHECK(holds(refusal_of<InvalidInput>([&] {
                    set_field(heatmatch::panel_fields(), &panel, "voc", 1.0, "panel \"b\"");
                }),
                "did you mean \"v_oc\"?"));
}

// Source: arithmetic, -0.120 V/K over 37.5 V is -0.32 %/K; 4 mA/K over 8 A is 0.05 %/K.
TEST_CASE("a coefficient may be written in volts or amperes per kelvin") {
    CHECK(read_quantity(panel_field("beta_voc_pct_per_k"), "-120 mV/K", "p", 37.5) == -0.32);
    CHECK(read_quantity(panel_field("beta_voc_pct_per_k"), "-0.12 V/°C", "p", 37.5) == -0.32);
    CHECK(read_quantity(panel_field("alpha_isc_pct_per_k"), "4 mA/K", "p", 8.0) == 0.05);
    CHECK(read_quantity(panel_field("beta_voc_pct_per_k"), "-0.32 %/K", "p", 37.5) == -0.32);
    CHECK(read_quantity(panel_field("beta_voc_pct_per_k"), "-0.32", "p") == -0.32);
    const std::string message = refusal_of<InvalidInput>([] {
        static_cast<void>(read_quantity(panel_field("beta_voc_pct_per_k"), "-120 mV/K", "p \"b\""));
    });
    CHECK(holds(message, "p \"b\": beta_voc_pct_per_k = \"-120 mV/K\""));
    CHECK(holds(message, "or give v_oc as well"));
}

TEST_CASE("a coefficient of amperes is no coefficient of volts") {
    const std::string message = refusal_of<InvalidInput>([] {
        static_cast<void>(read_quantity(panel_field("beta_voc_pct_per_k"), "-4 mA/K", "p", 37.5));
    });
    CHECK(holds(message, "a current per kelvin"));
    CHECK(holds(refusal_of<InvalidInput>([] {
                    static_cast<void>(
                        read_quantity(panel_field("alpha_isc_pct_per_k"), "3 mV/K", "p", 8.0));
                }),
                "a voltage per kelvin"));
}
