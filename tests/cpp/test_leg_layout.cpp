#include "assumed.hpp"
#include "demo.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/heat/leg_layout.hpp"

using heatmatch::Element;
using heatmatch::leg_layout;
using heatmatch::LegLayout;
using heatmatch::Store;
using heatmatch::store_shell;

namespace {

Element bent(double heated_mm, int legs, double spacing_mm = 50.0) {
    return {.id = "rod",
            .sheath_diameter_mm = 8.0,
            .heated_length_mm = heated_mm,
            .legs = legs,
            .leg_spacing_mm = spacing_mm};
}

Store spaced_drum() {
    return {.shape = heatmatch::StoreShape::cylinder,
            .diameter_m = 0.58,
            .height_m = 0.85,
            .element_spacing_mm = 60.0};
}

Store spaced_box() {
    return {.shape = heatmatch::StoreShape::box,
            .width_m = 2.0,
            .depth_m = 0.2,
            .height_m = 0.25,
            .element_spacing_mm = 60.0};
}

std::string layout_refusal(const Element& element, int elements, const Store& store) {
    return refusal_of<heatmatch::InvalidInput>(
        [&] { static_cast<void>(leg_layout(element, elements, store)); });
}

}  // namespace

// Source: geometry: a hairpin of 0.8 m has two legs of 0.4 m, 80 mm apart, each 4 mm thick.
TEST_CASE("a hairpin has two legs that see each other at their spacing") {
    const LegLayout layout = leg_layout(bent(800.0, 2, 80.0), 1, spaced_drum());
    REQUIRE(layout.legs.size() == 2);
    CHECK(layout.leg_length_m == doctest::Approx(0.4));
    CHECK(layout.heated_length_m() == doctest::Approx(0.8));
    CHECK(layout.radius_m == doctest::Approx(0.004));
    CHECK(layout.outer_radius_m() == doctest::Approx(0.04));
    const auto distances = layout.distances_m();
    REQUIRE(distances.size() == 2);
    CHECK(distances[0] == doctest::Approx(0.004));
    CHECK(distances[1] == doctest::Approx(0.08));
    CHECK(layout.misfit.empty());
    CHECK(layout.assumed.empty());
}

// Source: geometry: of five legs in a row the middle one is hottest, with 45, 45, 90 and 90 mm to
// the others; of two hairpins of 50 mm at 60 mm in a square grid all four are alike.
TEST_CASE("the hottest leg is the inner one") {
    auto row = leg_layout(bent(1000.0, 5, 45.0), 1, spaced_drum()).distances_m();
    std::sort(row.begin(), row.end());
    REQUIRE(row.size() == 5);
    CHECK(row[0] == doctest::Approx(0.004));
    CHECK(row[1] == doctest::Approx(0.045));
    CHECK(row[2] == doctest::Approx(0.045));
    CHECK(row[3] == doctest::Approx(0.090));
    CHECK(row[4] == doctest::Approx(0.090));

    auto grid = leg_layout(bent(800.0, 2), 2, spaced_drum()).distances_m();
    std::sort(grid.begin(), grid.end());
    REQUIRE(grid.size() == 4);
    CHECK(grid[1] == doctest::Approx(0.050));
    CHECK(grid[2] == doctest::Approx(0.060));
    CHECK(grid[3] == doctest::Approx(std::hypot(0.050, 0.060)));
}

TEST_CASE("all elements have their legs, none nearer than the spacings, the whole centred") {
    for (int elements = 1; elements <= 9; ++elements) {
        for (const int legs : {1, 2, 3}) {
            CAPTURE(elements);
            CAPTURE(legs);
            const LegLayout layout =
                leg_layout(bent(200.0 * legs, legs, 40.0), elements, spaced_drum());
            REQUIRE(layout.legs.size() == static_cast<std::size_t>(elements * legs));
            double x = 0.0;
            for (std::size_t i = 0; i < layout.legs.size(); ++i) {
                x += layout.legs[i].x_m;
                for (std::size_t j = 0; j < i; ++j) {
                    CHECK(std::hypot(layout.legs[i].x_m - layout.legs[j].x_m,
                                     layout.legs[i].y_m - layout.legs[j].y_m) > 0.0399);
                }
            }
            CHECK(x == doctest::Approx(0.0));
            CHECK(layout.heated_length_m() == doctest::Approx(0.2 * legs * elements));
        }
    }
}

TEST_CASE("legs fit upright, or horizontally, or the reason is reported") {
    CHECK(
        leg_layout(bent(1600.0, 2), 1, spaced_drum()).misfit.empty());  // 0.80 m upright in 0.85 m
    // 0.5 m lying across 0.58 m, in a bed lower than that.
    Store low = spaced_drum();
    low.height_m = 0.2;
    CHECK(leg_layout(bent(1000.0, 2), 1, low).misfit.empty());
    // 0.575 m across 0.58 m: 100 mm off the middle the drum is narrower.
    // Stacked, the legs are 208 mm high.
    CHECK(
        holds(leg_layout(bent(1150.0, 2, 200.0), 1, low).misfit, "do not fit a store 580 mm wide"));
    CHECK(holds(leg_layout(bent(2000.0, 2), 1, spaced_drum()).misfit,
                "legs of 1000 mm fit neither the height of 850 mm nor the width of 580 mm"));
    CHECK(holds(leg_layout(bent(2800.0, 4, 200.0), 1, spaced_drum()).misfit, "4 legs of 700 mm"));
}

// Source: geometry: a bench of 2.0 x 0.2 m takes a rod of 1.5 m along it, and ten hairpins upright
// in a row, though a drum as wide as it is deep takes neither.
TEST_CASE("a long box has room for legs along it and side by side") {
    CHECK(leg_layout(bent(3000.0, 2), 1, spaced_box()).misfit.empty());
    CHECK_FALSE(leg_layout(bent(4400.0, 2), 1, spaced_box()).misfit.empty());
    const LegLayout row = leg_layout(bent(400.0, 2), 10, spaced_box());
    CHECK(row.legs.size() == 20);
    CHECK(row.misfit.empty());
    CHECK_FALSE(leg_layout(bent(400.0, 2), 100, spaced_box()).misfit.empty());
    const Store narrow_drum{.shape = heatmatch::StoreShape::cylinder,
                            .diameter_m = 0.2,
                            .height_m = 0.25,
                            .element_spacing_mm = 60.0};
    CHECK_FALSE(leg_layout(bent(3000.0, 2), 1, narrow_drum).misfit.empty());
    CHECK_FALSE(leg_layout(bent(400.0, 2), 10, narrow_drum).misfit.empty());
}

TEST_CASE("legs that overlap are reported") {
    CHECK(
        holds(leg_layout(bent(800.0, 2, 7.0), 1, spaced_drum()).misfit, "legs 7 mm apart overlap"));
    CHECK(holds(leg_layout(bent(800.0, 2, 7.0), 1, spaced_drum()).misfit, "8 mm thick"));
    // Source: 25.4 mm are an inch.
    CHECK(
        leg_layout(bent(800.0, 2, 7.0), 1, spaced_drum()).misfit.text(heatmatch::UnitSystem::us) ==
        "legs 0.2756 in apart overlap: each is 0.315 in thick");
    Store tight = spaced_drum();
    tight.element_spacing_mm = 5.0;
    CHECK(leg_layout(bent(800.0, 2), 1, tight).misfit.empty());
    CHECK(holds(leg_layout(bent(800.0, 2), 2, tight).misfit, "legs 5 mm apart overlap"));
    Store pipes = spaced_drum();
    pipes.spreader_diameter_mm = 60.0;
    CHECK(holds(leg_layout(bent(800.0, 2), 1, pipes).misfit, "60 mm thick"));
}

TEST_CASE("a pipe over the legs counts as their radius, unless it is thinner than they are") {
    Store pipes = spaced_drum();
    pipes.spreader_diameter_mm = 42.0;
    const LegLayout layout = leg_layout(bent(800.0, 2), 1, pipes);
    CHECK(layout.radius_m == doctest::Approx(0.021));
    CHECK(layout.sheath_radius_m == doctest::Approx(0.004));
    CHECK(layout.distances_m().front() == doctest::Approx(0.021));
    pipes.spreader_diameter_mm = 5.0;
    CHECK(leg_layout(bent(800.0, 2), 1, pipes).radius_m == doctest::Approx(0.004));
}

// Source: geometry: 3 m of wire in a drum 0.85 m high, less 20 mm at either end, is bent in four.
TEST_CASE("an unknown number of legs is the smallest that fits") {
    Element wire{.id = "wire", .sheath_diameter_mm = 1.0, .heated_length_mm = 3000.0};
    const LegLayout layout = leg_layout(wire, 1, spaced_drum());
    CHECK(layout.legs.size() == 4);
    CHECK(layout.leg_length_m == doctest::Approx(0.75));
    CHECK(layout.misfit.empty());
    CHECK(assumes(layout, "legs"));
    CHECK(assumes(layout, "leg_spacing_mm"));
    CHECK(layout.distances_m()[1] >= 0.0499);
    CHECK(leg_layout(wire, 3, spaced_drum()).legs.size() == 12);
    wire.heated_length_mm = 1500.0;
    CHECK(leg_layout(wire, 1, spaced_box()).legs.size() == 1);
}

// Source: the definition: one wire bent back and forth, or several: no leg is nearer to another
// than the smaller of both spacings, and the nearest are that near, which is the hotter way.
TEST_CASE("legs that may be bent freely are at the smaller of both spacings") {
    Element wire{.id = "wire", .sheath_diameter_mm = 1.0, .heated_length_mm = 3000.0};
    const auto nearest_mm = [&](double leg_mm, double element_mm) {
        wire.leg_spacing_mm = leg_mm;
        Store store = spaced_drum();
        store.element_spacing_mm = element_mm;
        const LegLayout layout = leg_layout(wire, 2, store);
        REQUIRE(layout.legs.size() == 8);
        auto distances = layout.distances_m();
        std::sort(distances.begin(), distances.end());
        return 1000.0 * distances[1];
    };
    CHECK(nearest_mm(30.0, 80.0) == doctest::Approx(30.0));
    CHECK(nearest_mm(80.0, 30.0) == doctest::Approx(30.0));
    CHECK(nearest_mm(40.0, 40.0) == doctest::Approx(40.0));
}

// Source: geometry: of three legs at -50, 0 and 200 mm the middle one is the hottest, the one at
// 200 the outermost and the nearest to the wall, whichever is named first.
TEST_CASE("the worst of several legs is found wherever it is among them") {
    std::vector<LegLayout::Leg> legs{{-0.05, 0.0}, {0.0, 0.0}, {0.2, 0.0}};
    const auto by_place = [](const LegLayout::Leg& a, const LegLayout::Leg& b) {
        return a.x_m < b.x_m;
    };
    const double r = 0.29;
    // At the wall beside the outermost, in line with each: (r + b)/(r - b).
    const double around = (1.0 + 0.24 / 0.34 + 0.49 / 0.09) / 3.0;
    const auto shell = store_shell(spaced_drum());
    const double areas = (shell.side_m2 + shell.top_m2 + shell.bottom_m2) /
                         (2.0 * 3.14159265358979 * r * 0.4 * std::sqrt(1.0 + 4.0 * r * r / 0.16));
    int orders = 0;
    do {
        LegLayout layout{.legs = legs, .leg_length_m = 0.4, .radius_m = 0.004};
        auto distances = layout.distances_m();
        CHECK(distances.front() == 0.004);
        std::sort(distances.begin(), distances.end());
        CHECK(distances[1] == doctest::Approx(0.05));
        CHECK(distances[2] == doctest::Approx(0.2));
        CHECK(layout.outer_radius_m() == doctest::Approx(0.2));
        CHECK(layout.wall_concentration(shell) ==
              doctest::Approx(around * std::max(1.0, areas)).epsilon(1e-9));
        ++orders;
    } while (std::next_permutation(legs.begin(), legs.end(), by_place));
    CHECK(orders == 6);
}

TEST_CASE("unknown spacings are assumed and listed") {
    Element rod = bent(800.0, 2);
    rod.leg_spacing_mm.reset();
    Store store = spaced_drum();
    store.element_spacing_mm.reset();
    const LegLayout one = leg_layout(rod, 1, store);
    CHECK(assumes(one, "leg_spacing_mm"));
    CHECK_FALSE(assumes(one, "element_spacing_mm"));
    CHECK(one.distances_m()[1] == doctest::Approx(0.05));
    CHECK(assumes(leg_layout(rod, 2, store), "element_spacing_mm"));
}

TEST_CASE("missing lengths and no element are refused by name") {
    Element rod = bent(800.0, 2);
    rod.heated_length_mm.reset();
    CHECK(heatmatch::missing_lengths(rod) == std::vector<std::string>{"heated_length_mm"});
    const std::string message = layout_refusal(rod, 1, spaced_drum());
    CHECK(holds(message, "element \"rod\""));
    CHECK(holds(message, "heated_length_mm"));
    CHECK(holds(message, "> 0 mm"));
    CHECK(holds(message, "measure"));
    rod = bent(800.0, 2);
    rod.sheath_diameter_mm.reset();
    CHECK(holds(layout_refusal(rod, 1, spaced_drum()), "sheath_diameter_mm"));
    for (const int elements : {0, -3}) {
        const std::string none = layout_refusal(bent(800.0, 2), elements, spaced_drum());
        CHECK(holds(none, "elements = " + std::to_string(elements)));
        CHECK(holds(none, "at least 1"));
    }
    CHECK(holds(layout_refusal(bent(800.0, 2), 1,
                               {.shape = heatmatch::StoreShape::cylinder, .height_m = 1.0}),
                "diameter_m"));
}

// Source: a line source on the axis of a long cylinder heats its wall evenly; nearer the wall the
// nearest spot gets (R + b)/(R - b) of the mean (the formula of the header, cos = 1).
TEST_CASE("heat reaches the wall evenly from the axis, and more where a leg is near") {
    Store tall{.shape = heatmatch::StoreShape::cylinder, .diameter_m = 0.2, .height_m = 20.0};
    const auto shell = store_shell(tall);
    LegLayout layout = leg_layout(bent(19900.0, 1), 1, tall);
    CHECK(layout.wall_concentration(shell) == doctest::Approx(1.0).epsilon(0.006));
    const double even = layout.wall_concentration(shell);
    for (const double b : {0.01, 0.05, 0.08}) {
        layout.legs[0] = {.x_m = 0.0, .y_m = -b};
        CHECK(layout.wall_concentration(shell) ==
              doctest::Approx(even * (0.1 + b) / (0.1 - b)).epsilon(1e-9));
    }
    layout.legs[0] = {.x_m = 0.099, .y_m = 0.0};
    CHECK(layout.wall_concentration(shell) == doctest::Approx(even * 1.95 / 0.05).epsilon(1e-9));
    // Source: common sense: two hairpins and a short leg never heat the nearest spot less than
    // evenly.
    for (const int elements : {1, 2, 5}) {
        const LegLayout bank = leg_layout(bent(600.0, 2), elements, spaced_drum());
        CHECK(bank.wall_concentration(store_shell(spaced_drum())) >= 1.0);
    }
    const LegLayout hairpin = leg_layout(bent(800.0, 2, 80.0), 1, spaced_drum());
    const LegLayout shorter = leg_layout(bent(200.0, 2, 80.0), 1, spaced_drum());
    CHECK(shorter.wall_concentration(store_shell(spaced_drum())) >
          hairpin.wall_concentration(store_shell(spaced_drum())));
}
