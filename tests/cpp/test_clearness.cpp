#include "solar/clearness.hpp"

#include <initializer_list>

#include <doctest/doctest.h>

using heatmatch::clearest_month;
using heatmatch::SkyIndices;
using heatmatch::turbidity_of_clear_hours;

namespace {

constexpr int fine = 20000;

double mean_of(const SkyIndices& indices) {
    double sum = 0.0;
    for (int i = 0; i < fine; ++i) sum += indices.at((i + 0.5) / fine);
    return sum / fine;
}

double share_above(const SkyIndices& indices, double index) {
    int above = 0;
    for (int i = 0; i < fine; ++i) above += indices.at((i + 0.5) / fine) > index ? 1 : 0;
    return static_cast<double>(above) / fine;
}

}  // namespace

TEST_CASE("sky indices have the required mean and rise with share and mean") {
    for (double mean = 0.02; mean <= clearest_month; mean += 0.03) {
        const SkyIndices indices(mean);
        CHECK(mean_of(indices) == doctest::Approx(mean).epsilon(2e-3));
        double last = 0.0;
        for (double share = 0.01; share < 1.0; share += 0.01) {
            const double index = indices.at(share);
            CHECK(index >= last);
            CHECK(index <= clearest_month);
            CHECK(SkyIndices(mean - 0.01).at(share) <= index + 1e-9);
            last = index;
        }
    }
}

// Suehrcke, Solar Energy 68 (2000) 417-425: share of bright sunshine = (K/Kclear)^2. Bright
// sunshine counts from 120 W/m2 of beam on, so hours near the clear sky are somewhat fewer.
TEST_CASE("about the square of the mean index is clear") {
    for (const double mean : {0.5, 0.6, 0.7, 0.8, 0.9}) {
        const double clear = share_above(SkyIndices(mean), 0.85);
        CHECK(clear < mean * mean);
        CHECK(clear > mean * mean - 0.12);
    }
}

TEST_CASE("ends of the mean are those of the sky") {
    CHECK(SkyIndices(0.0).at(0.5) < 0.01);
    CHECK(SkyIndices(clearest_month).at(0.03) == doctest::Approx(clearest_month));
    CHECK(SkyIndices(9.0).at(0.97) == doctest::Approx(clearest_month));
    CHECK(SkyIndices(1.0).at(0.0) == doctest::Approx(2.0 - clearest_month));
}

// Common practice, no source: 2 is clean and cold, 3 usual, 5 and more humid or dusty.
TEST_CASE("cold air is clean") {
    CHECK(turbidity_of_clear_hours(-40.0) == doctest::Approx(1.5));
    CHECK(turbidity_of_clear_hours(0.0) == doctest::Approx(2.0).epsilon(0.1));
    CHECK(turbidity_of_clear_hours(10.0) == doctest::Approx(3.0).epsilon(0.1));
    CHECK(turbidity_of_clear_hours(60.0) == doctest::Approx(5.5));
}
