#include "solar/clearness.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

using heatmatch::hour_over_day;
using heatmatch::SitePlane;
using heatmatch::SkyMoment;

namespace {

double hour_over_day_at(double latitude_deg, double declination_deg, double hour_angle_deg) {
    SitePlane site;
    site.place.latitude_deg = latitude_deg;
    SkyMoment moment;
    moment.sun.declination_deg = declination_deg;
    moment.sun.hour_angle_deg = hour_angle_deg;
    return hour_over_day(site, moment);
}

}  // namespace

// Source: Collares-Pereira and Rabl 1979: an hour has r_t/r_d = a + b cos w times the clearness of
// its day, a = 0.409 + 0.5016 sin(ws - 60°), b = 0.6609 - 0.4767 sin(ws - 60°); put over the mean
// of the day's light, which a midpoint rule outside this library found.
TEST_CASE("clearness through the day is that of Collares-Pereira and Rabl") {
    struct Row {
        double latitude_deg;
        double declination_deg;
        double noon;
        double two_hours_on;
        double four_hours_on;
    };
    for (const Row& row : {Row{0, 0, 1.0914417, 1.0343552, 0.8783920},
                           Row{40, 23.45, 1.0874885, 1.0488846, 0.9434167},
                           Row{45, -23, 1.0742237, 0.9909449, 0.7634228},
                           Row{-30, 20, 1.0864124, 1.0168981, 0.8269817}}) {
        CAPTURE(row.latitude_deg);
        CAPTURE(row.declination_deg);
        const auto at = [&row](double hours) {
            return hour_over_day_at(row.latitude_deg, row.declination_deg, 15.0 * hours);
        };
        CHECK(within(at(0.0), row.noon, 1e-6));
        CHECK(within(at(2.0), row.two_hours_on, 1e-6));
        CHECK(within(at(4.0), row.four_hours_on, 1e-6));
        CHECK(at(-2.0) == doctest::Approx(at(2.0)));
    }
}
