#include "degrees.hpp"
#include "reference_csv.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/solar/clear_sky.hpp"
#include "heatmatch/solar/sun_position.hpp"

using heatmatch::ClearAir;
using heatmatch::haurwitz_ghi_w_m2;
using heatmatch::ineichen_clear_sky;
using heatmatch::SkyIrradiance;

// Source: pvlib; tests/reference/sun_positions.csv tells how the rows were made.
TEST_CASE("clear skies agree with pvlib") {
    for (const ReferenceRow& row : read_reference("sun_positions.csv")) {
        CAPTURE(row.at("case"));
        const double zenith = number(row, "apparent_zenith_deg");
        const double height = number(row, "altitude_m");
        // The file prints four decimals; its angle has six.
        const auto as_printed = [&row](const char* column) {
            return doctest::Approx(number(row, column)).epsilon(2e-4);
        };
        CHECK(haurwitz_ghi_w_m2(zenith) == as_printed("haurwitz_ghi"));
        const SkyIrradiance sky =
            ineichen_clear_sky(zenith, {.elevation_m = height,
                                        .linke_turbidity = 3.0,
                                        .extraterrestrial_w_m2 = number(row, "dni_extra_W_m2")});
        CHECK(sky.ghi_w_m2 == as_printed("ineichen_ghi"));
        CHECK(sky.dni_w_m2 == as_printed("ineichen_dni"));
        CHECK(sky.dhi_w_m2 == as_printed("ineichen_dhi"));
        if (zenith > 90.0) continue;
        CHECK(heatmatch::relative_air_mass(zenith) * heatmatch::standard_pressure_pa(height) /
                  101325.0 ==
              as_printed("airmass_absolute"));
    }
}

TEST_CASE("global light is direct and diffuse light together, and night is dark") {
    for (double zenith = 0.0; zenith < 90.0; zenith += 2.5) {
        CAPTURE(zenith);
        for (double turbidity : {1.5, 3.0, 7.0}) {
            const SkyIrradiance sky =
                ineichen_clear_sky(zenith, {.elevation_m = 300.0, .linke_turbidity = turbidity});
            CHECK(sky.ghi_w_m2 ==
                  doctest::Approx(sky.dni_w_m2 * cosine_deg(zenith) + sky.dhi_w_m2).epsilon(1e-12));
            CHECK(sky.dhi_w_m2 > 0.0);
            CHECK(sky.ghi_w_m2 < 1366.1 * cosine_deg(zenith));
        }
    }
    for (double zenith : {90.01, 95.0, 150.0, 180.0}) {
        const SkyIrradiance sky = ineichen_clear_sky(zenith, ClearAir{});
        CHECK(sky.ghi_w_m2 == 0.0);
        CHECK(sky.dni_w_m2 == 0.0);
        CHECK(sky.dhi_w_m2 == 0.0);
        CHECK(haurwitz_ghi_w_m2(zenith) == 0.0);
        CHECK(std::isinf(heatmatch::relative_air_mass(zenith)));
    }
}

TEST_CASE("haze dims the sun and brightens the sky; height does the reverse") {
    const SkyIrradiance clean = ineichen_clear_sky(40.0, {.linke_turbidity = 2.0});
    const SkyIrradiance hazy = ineichen_clear_sky(40.0, {.linke_turbidity = 6.0});
    CHECK(hazy.dni_w_m2 < clean.dni_w_m2);
    CHECK(hazy.dhi_w_m2 > clean.dhi_w_m2);
    CHECK(hazy.ghi_w_m2 < clean.ghi_w_m2);
    CHECK(ineichen_clear_sky(40.0, {.elevation_m = 2500.0, .linke_turbidity = 2.0}).dni_w_m2 >
          clean.dni_w_m2);
}

// Source: the table of Kasten and Young (kasten-young-1989), from memory.
TEST_CASE("air mass is that of the published table") {
    CHECK(heatmatch::relative_air_mass(0.0) == doctest::Approx(1.0).epsilon(1e-3));
    CHECK(heatmatch::relative_air_mass(60.0) == doctest::Approx(1.994).epsilon(1e-3));
    CHECK(heatmatch::relative_air_mass(90.0) == doctest::Approx(38.09).epsilon(0.005));
}
