#include "refusal.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/heat/joint_layout.hpp"

using heatmatch::BankInStore;
using heatmatch::Element;
using heatmatch::joint_layout;
using heatmatch::LegLayout;
using heatmatch::Store;

namespace {

Element straight_rod(double heated_mm, int legs, double thick_mm = 8.0) {
    return {.id = "rod",
            .sheath_diameter_mm = thick_mm,
            .heated_length_mm = heated_mm,
            .legs = legs,
            .leg_spacing_mm = 50.0};
}

Store wide_drum(double spacing_mm = 60.0) {
    return {.shape = heatmatch::StoreShape::cylinder,
            .diameter_m = 0.58,
            .height_m = 0.85,
            .element_spacing_mm = spacing_mm};
}

std::vector<LegLayout::Leg> all_legs(const std::vector<LegLayout>& layouts) {
    std::vector<LegLayout::Leg> legs;
    for (const LegLayout& each : layouts) {
        legs.insert(legs.end(), each.legs.begin(), each.legs.end());
    }
    std::sort(legs.begin(), legs.end(), [](const LegLayout::Leg& a, const LegLayout::Leg& b) {
        constexpr double same_m = 1e-9;
        return std::fabs(a.y_m - b.y_m) > same_m ? a.y_m < b.y_m : a.x_m < b.x_m;
    });
    return legs;
}

}  // namespace

TEST_CASE("banks of equal elements lie as one bank of all of them") {
    for (int of_a = 1; of_a <= 4; ++of_a) {
        for (int of_b = 1; of_b <= 4; ++of_b) {
            CAPTURE(of_a);
            CAPTURE(of_b);
            const Element rod = straight_rod(800.0, 2);
            const std::vector<BankInStore> banks{{.element = rod, .elements = of_a},
                                                 {.element = rod, .elements = of_b}};
            const auto apart = all_legs(joint_layout(banks, wide_drum()));
            const auto together = all_legs({leg_layout(rod, of_a + of_b, wide_drum())});
            REQUIRE(apart.size() == together.size());
            for (std::size_t i = 0; i < apart.size(); ++i) {
                CHECK(apart[i].x_m == doctest::Approx(together[i].x_m).epsilon(1e-12));
                CHECK(apart[i].y_m == doctest::Approx(together[i].y_m).epsilon(1e-12));
            }
        }
    }
}

// Source: geometry: rods of one leg, 100 mm apart, side by side or one behind the other, around
// the axis.
TEST_CASE("two banks are the stated spacing apart and centered together") {
    const std::vector<BankInStore> banks{{.element = straight_rod(500.0, 1)},
                                         {.element = straight_rod(300.0, 1, 12.0)}};
    const auto layouts = joint_layout(banks, wide_drum(100.0));
    REQUIRE(layouts.size() == 2);
    REQUIRE(layouts[0].legs.size() == 1);
    REQUIRE(layouts[1].legs.size() == 1);
    const auto& a = layouts[0].legs.front();
    const auto& b = layouts[1].legs.front();
    CHECK(std::hypot(a.x_m - b.x_m, a.y_m - b.y_m) == doctest::Approx(0.1));
    CHECK(a.x_m + b.x_m == doctest::Approx(0.0));
    CHECK(a.y_m + b.y_m == doctest::Approx(0.0));
    CHECK(layouts[0].leg_length_m == doctest::Approx(0.5));
    CHECK(layouts[1].leg_length_m == doctest::Approx(0.3));
    CHECK(layouts[1].radius_m == doctest::Approx(0.006));
    CHECK(layouts[0].misfit.empty());
}

TEST_CASE("all banks are upright, or all are horizontal") {
    const std::vector<BankInStore> banks{{.element = straight_rod(500.0, 1)},
                                         {.element = straight_rod(200.0, 1)}};
    Store low = wide_drum();
    low.height_m = 0.3;  // the longer one has to lie
    for (const LegLayout& each : joint_layout(banks, low)) CHECK(each.lies);
    for (const LegLayout& each : joint_layout(banks, wide_drum())) CHECK_FALSE(each.lies);
}

TEST_CASE("banks that fit alone may not fit together, nor where they overlap") {
    Store narrow = wide_drum();
    narrow.diameter_m = 0.06;
    narrow.height_m = 0.45;
    const Element rod = straight_rod(400.0, 1);
    const std::vector<BankInStore> many{{.element = rod}, {.element = rod, .elements = 2}};
    CHECK(leg_layout(rod, 1, narrow).misfit.empty());
    for (const LegLayout& each : joint_layout(many, narrow)) CHECK_FALSE(each.misfit.empty());
    const std::vector<BankInStore> thick{{.element = straight_rod(400.0, 1, 30.0)},
                                         {.element = straight_rod(400.0, 1, 30.0)}};
    for (const LegLayout& each : joint_layout(thick, wide_drum(25.0))) {
        CHECK_FALSE(each.misfit.empty());
    }
}

TEST_CASE("a stated distance from the axis moves all banks alike") {
    const std::vector<BankInStore> banks{{.element = straight_rod(400.0, 2)},
                                         {.element = straight_rod(300.0, 1)}};
    Store aside = wide_drum();
    aside.from_axis_mm = 70.0;
    const auto centered = joint_layout(banks, wide_drum());
    const auto moved = joint_layout(banks, aside);
    for (std::size_t i = 0; i < banks.size(); ++i) {
        REQUIRE(moved[i].legs.size() == centered[i].legs.size());
        for (std::size_t k = 0; k < moved[i].legs.size(); ++k) {
            CHECK(moved[i].legs[k].x_m - centered[i].legs[k].x_m == doctest::Approx(0.07));
        }
    }
}

TEST_CASE("a layout without banks, elements or lengths is refused in one sentence") {
    const auto refusal = [](std::vector<BankInStore> banks) {
        return refusal_of<heatmatch::InvalidInput>(
            [&] { static_cast<void>(joint_layout(banks, wide_drum())); });
    };
    CHECK(refusal({}).find("elements") != std::string::npos);
    CHECK(refusal({{.element = straight_rod(400.0, 1)},
                   {.element = straight_rod(400.0, 1), .elements = 0}})
              .find("elements") != std::string::npos);
    Element unknown = straight_rod(400.0, 1);
    unknown.heated_length_mm.reset();
    CHECK(refusal({{.element = straight_rod(400.0, 1)}, {.element = unknown}})
              .find("heated_length_mm") != std::string::npos);
}
