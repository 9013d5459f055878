#include <doctest/doctest.h>

#include "heatmatch/solar/cell_temperature.hpp"

using heatmatch::faiman_cell_temperature_c;
using heatmatch::noct_cell_temperature_c;
using heatmatch::wind_factor;

// By hand: 30 + 1000 (47 - 20)/800 = 63.75.
TEST_CASE("a cell warms by its NOCT") {
    CHECK(noct_cell_temperature_c(1000.0, 30.0, 47.0) == doctest::Approx(63.75));
    CHECK(noct_cell_temperature_c(0.0, -12.0, 45.0) == -12.0);
    // What the NOCT is defined by: 800 W/m2 and 20 °C of air.
    CHECK(noct_cell_temperature_c(800.0, 20.0, heatmatch::usual_noct_c) ==
          doctest::Approx(heatmatch::usual_noct_c));
}

// By hand: 20 + 800/25 = 52; 20 + 800/31.84 = 45.1256; 20 + 800/45.52 = 37.5747.
TEST_CASE("wind cools a panel as Faiman has it") {
    CHECK(faiman_cell_temperature_c(800.0, 20.0, 0.0) == doctest::Approx(52.0));
    CHECK(faiman_cell_temperature_c(800.0, 20.0, 1.0) == doctest::Approx(45.1256).epsilon(1e-6));
    CHECK(faiman_cell_temperature_c(800.0, 20.0, 3.0) == doctest::Approx(37.5747).epsilon(1e-6));
    CHECK(faiman_cell_temperature_c(600.0, 10.0, 2.0,
                                    {.still_w_m2k = 20.0, .wind_w_m2k_per_ms = 5.0}) ==
          doctest::Approx(30.0));
}

TEST_CASE("at 1 m/s both models warm an open rack alike") {
    const double ross = noct_cell_temperature_c(900.0, 5.0, heatmatch::usual_noct_c);
    CHECK(faiman_cell_temperature_c(900.0, 5.0, 1.0) == doctest::Approx(ross).epsilon(0.01));
}

// Source: FAO Irrigation and Drainage Paper 56, example 14: 3.2 m/s at 10 m are 2.4 m/s at 2 m; its
// equation 47 by hand: 4.87/ln(678 - 5.42) = 0.748.
TEST_CASE("wind is less at the panels than at a mast") {
    using heatmatch::wind_share_at_panels;
    CHECK(3.2 * wind_share_at_panels(10.0) == doctest::Approx(2.4).epsilon(0.01));
    CHECK(wind_share_at_panels(10.0) == doctest::Approx(0.748).epsilon(0.001));
    CHECK(wind_share_at_panels(2.0) == 1.0);
    CHECK(wind_share_at_panels(0.5) == 1.0);
    for (double height = 2.0; height < 200.0; height *= 1.3) {
        CHECK(wind_share_at_panels(1.3 * height) < wind_share_at_panels(height));
    }
}

// By hand: 31.84/25 = 1.2736, 31.84/45.52 = 0.69947.
TEST_CASE("the factor of the wind is 1 where the NOCT is measured") {
    CHECK(wind_factor(1.0) == doctest::Approx(1.0));
    CHECK(wind_factor(0.0) == doctest::Approx(1.2736).epsilon(1e-6));
    CHECK(wind_factor(3.0) == doctest::Approx(0.69947).epsilon(1e-5));
}
