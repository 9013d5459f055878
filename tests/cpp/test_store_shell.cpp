#include "assumed.hpp"
#include "refusal.hpp"
#include "within.hpp"
#include "zero_k.hpp"

#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "heatmatch/heat/store_shell.hpp"

using heatmatch::free_convection_plate;
using heatmatch::Store;
using heatmatch::store_shell;
using heatmatch::StoreShell;

namespace {

Store bare_drum() {
    return {.shape = heatmatch::StoreShape::cylinder, .diameter_m = 0.58, .height_m = 0.85};
}

Store crate() {
    return {.shape = heatmatch::StoreShape::box, .width_m = 0.5, .depth_m = 0.3, .height_m = 0.4};
}

}  // namespace

// Source: ht 1.2.0, Nu_vertical_plate_Churchill (Prandtl 0.70), with conductivity and viscosity of
// the standard atmosphere's formulas and 9.80665 m/s2.
TEST_CASE("free convection at an upright plate agrees with an open library") {
    struct Row {
        double height_m;
        double surface_c;
        double air_c;
        double h_w_m2k;
    };
    for (const Row& row :
         {Row{0.27, 60, 20, 5.296384525781464}, Row{0.27, 150, 20, 7.060508632426119},
          Row{0.45, 40, 5, 4.9661280320143}, Row{0.85, 30, 0, 4.568210690623917},
          Row{1.2, 80, 20, 5.227992413586247}, Row{0.1, 300, 20, 9.238306942688862}}) {
        CAPTURE(row.height_m);
        CAPTURE(row.surface_c);
        CHECK(
            within(free_convection_plate(row.height_m, row.surface_c + zero_k, row.air_c + zero_k),
                   row.h_w_m2k, 1e-6));
    }
}

TEST_CASE("free convection grows with the temperature difference, and has one at rest") {
    double last = 0.0;
    for (double rise_k = 0.0; rise_k < 300.0; rise_k = 2.0 * rise_k + 1.0) {
        const double h = free_convection_plate(0.4, 293.15 + rise_k, 293.15);
        CHECK(h > last);
        last = h;
    }
    CHECK(within(free_convection_plate(0.4, 280.0, 300.0), free_convection_plate(0.4, 300.0, 280.0),
                 0.001));
}

// Source: geometry.
TEST_CASE("volume and areas of a drum and of a box") {
    const StoreShell round = store_shell(bare_drum());
    CHECK(round.volume_m3 == doctest::Approx(std::numbers::pi * 0.29 * 0.29 * 0.85).epsilon(1e-12));
    CHECK(round.side_m2 == doctest::Approx(std::numbers::pi * 0.58 * 0.85).epsilon(1e-12));
    CHECK(round.top_m2 == doctest::Approx(std::numbers::pi * 0.29 * 0.29).epsilon(1e-12));
    CHECK(round.bottom_m2 == round.top_m2);
    CHECK(round.radius_m == doctest::Approx(0.29));
    CHECK(round.length_m == doctest::Approx(0.58));
    const StoreShell box = store_shell(crate());
    CHECK(box.volume_m3 == doctest::Approx(0.06));
    CHECK(box.side_m2 == doctest::Approx(2.0 * (0.5 + 0.3) * 0.4));
    CHECK(box.top_m2 == doctest::Approx(0.15));
    CHECK(box.radius_m == doctest::Approx(0.15));
    CHECK(box.length_m == doctest::Approx(0.5));
    Store turned = crate();
    std::swap(turned.width_m, turned.depth_m);
    CHECK(store_shell(turned).radius_m == box.radius_m);
    CHECK(store_shell(turned).length_m == box.length_m);
}

TEST_CASE("a missing size is refused by name, with its remedy") {
    Store store = bare_drum();
    store.diameter_m.reset();
    std::string message =
        refusal_of<heatmatch::InvalidInput>([&] { static_cast<void>(store_shell(store)); });
    CHECK(holds(message, "store"));
    CHECK(holds(message, "diameter_m"));
    CHECK(holds(message, "0.02"));
    CHECK(holds(message, "measure"));
    store = crate();
    store.depth_m.reset();
    store.height_m.reset();
    CHECK(heatmatch::missing_sizes(store) == std::vector<std::string>{"depth_m", "height_m"});
    CHECK(holds(refusal_of<heatmatch::InvalidInput>([&] { static_cast<void>(store_shell(store)); }),
                "depth_m"));
    CHECK(heatmatch::missing_sizes(crate()).empty());
    CHECK(heatmatch::missing_sizes({.shape = heatmatch::StoreShape::cylinder}) ==
          std::vector<std::string>{"diameter_m", "height_m"});
}

TEST_CASE("assumptions about a store are listed, and nothing else") {
    const StoreShell bare = store_shell(bare_drum());
    CHECK(assumes(bare, "wall_emissivity"));
    CHECK(assumes(bare, "top_u_w_m2k"));
    CHECK(assumes(bare, "bottom_u_w_m2k"));
    CHECK(bare.assumed.size() == 3);
    Store told = bare_drum();
    told.wall_emissivity = 0.3;
    told.top_u_w_m2k = 1.0;
    told.bottom_u_w_m2k = 2.0;
    const StoreShell known = store_shell(told);
    CHECK(known.assumed.empty());
    CHECK(known.wall_emissivity == 0.3);
    CHECK(known.top_u_w_m2k == 1.0);
    CHECK(known.bottom_u_w_m2k == 2.0);
    Store insulated = bare_drum();
    insulated.side_u_w_m2k = 0.6;
    CHECK_FALSE(assumes(store_shell(insulated), "wall_emissivity"));
}

// Source: heat transfer of walls at room temperature (from memory): 5 to 6 W/m2K bright, 10 to 11
// painted, free convection and radiation together.
TEST_CASE("a bare wall loses heat as walls are known to") {
    Store store = bare_drum();
    store.wall_emissivity = 0.3;
    const double bright = store_shell(store).side_w_m2k(320.0, 293.15);
    CHECK(bright > 5.0);
    CHECK(bright < 7.0);
    store.wall_emissivity = 0.9;
    const double painted = store_shell(store).side_w_m2k(320.0, 293.15);
    CHECK(painted > 9.0);
    CHECK(painted < 11.5);
}

// Source: the sum over the areas, put together here.
TEST_CASE("a store loses heat through side, lid and floor") {
    Store store = bare_drum();
    store.side_u_w_m2k = 0.6;
    store.top_u_w_m2k = 1.5;
    store.bottom_u_w_m2k = 2.5;
    const StoreShell shell = store_shell(store);
    const double top = std::numbers::pi * 0.29 * 0.29;
    CHECK(shell.loss_w_k(350.0, 293.15) ==
          doctest::Approx(0.6 * std::numbers::pi * 0.58 * 0.85 + (1.5 + 2.5) * top).epsilon(1e-12));
    store.side_u_w_m2k.reset();
    const StoreShell bare = store_shell(store);
    CHECK(bare.loss_w_k(350.0, 293.15) > shell.loss_w_k(350.0, 293.15));
    CHECK(bare.loss_w_k(450.0, 293.15) > bare.loss_w_k(350.0, 293.15));
}

TEST_CASE("insulation makes the surface cooler, and never cooler than the air") {
    constexpr double edge_k = 400.0;
    constexpr double air_k = 293.15;
    const StoreShell bare = store_shell(bare_drum());
    CHECK(bare.side_surface_k(edge_k, air_k) == doctest::Approx(edge_k));
    double last = edge_k + 1.0;
    for (const double u : {20.0, 5.0, 2.0, 1.0, 0.3}) {
        Store store = bare_drum();
        store.side_u_w_m2k = u;
        store.top_u_w_m2k = u;
        const StoreShell shell = store_shell(store);
        const double side_k = shell.side_surface_k(edge_k, air_k);
        CAPTURE(u);
        CHECK(side_k < last);
        CHECK(side_k > air_k);
        CHECK(shell.lid_surface_k(edge_k, air_k) == doctest::Approx(side_k));
        last = side_k;
    }
    // Source: what passes the insulation leaves its surface through a film of 8 W/m2K (from
    // memory).
    Store store = bare_drum();
    store.side_u_w_m2k = 2.0;
    const double surface_k = store_shell(store).side_surface_k(edge_k, air_k);
    CHECK(8.0 * (surface_k - air_k) == doctest::Approx(2.0 * (edge_k - air_k)));
}

// Source: the definition: a measured loss over what is computed counts for each way out alike.
TEST_CASE("a measured loss scales wall, lid and floor") {
    for (const bool insulated : {false, true}) {
        Store store = bare_drum();
        if (insulated) store.side_u_w_m2k = 0.6;
        store.top_u_w_m2k = 1.5;
        store.bottom_u_w_m2k = 2.5;
        const StoreShell told = store_shell(store);
        for (const double factor : {0.5, 1.0, 1.8}) {
            store.loss_factor = factor;
            const StoreShell measured = store_shell(store);
            CAPTURE(insulated);
            CAPTURE(factor);
            CHECK(within(measured.side_w_m2k(350.0, 293.15),
                         factor * told.side_w_m2k(350.0, 293.15), 1e-12));
            CHECK(within(measured.top_u_w_m2k, factor * 1.5, 1e-12));
            CHECK(within(measured.bottom_u_w_m2k, factor * 2.5, 1e-12));
            CHECK(within(measured.loss_w_k(350.0, 293.15), factor * told.loss_w_k(350.0, 293.15),
                         1e-12));
        }
    }
}
