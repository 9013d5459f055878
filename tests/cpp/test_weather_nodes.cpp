#include "greensboro.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

#include <doctest/doctest.h>

#include "heatmatch/solar/weather_nodes.hpp"

using heatmatch::Weather;
using heatmatch::weather_nodes;
using heatmatch::WeatherNodes;

namespace {

/// Sum over the nodes of hours times a product of powers of sun and air.
double moment(const WeatherNodes& nodes, int sun, int base) {
    double sum = 0.0;
    for (std::size_t k = 0; k < nodes.size(); ++k) {
        double term = nodes.hours[k];
        for (int i = 0; i < sun; ++i) term *= nodes.irradiance_w_m2[k];
        for (int i = 0; i < base; ++i) term *= nodes.base_c[k];
        sum += term;
    }
    return sum;
}

}  // namespace

TEST_CASE("condensed weather keeps hours, means, and the second moments of the sun") {
    const WeatherNodes every = weather_nodes(greensboro(), {.exact = true});
    const WeatherNodes few = weather_nodes(greensboro());
    CHECK(every.size() > 4000);
    CHECK(few.size() < 300);
    CHECK(few.sunlit_hours() == doctest::Approx(every.sunlit_hours()).epsilon(1e-12));
    CHECK(moment(few, 1, 0) == doctest::Approx(moment(every, 1, 0)).epsilon(1e-12));
    CHECK(moment(few, 2, 0) == doctest::Approx(moment(every, 2, 0)).epsilon(1e-12));
    CHECK(moment(few, 0, 1) == doctest::Approx(moment(every, 0, 1)).epsilon(1e-12));
    CHECK(moment(few, 1, 1) == doctest::Approx(moment(every, 1, 1)).epsilon(1e-12));
}

TEST_CASE("months split the year") {
    double sum = 0.0;
    for (int month = 1; month <= 12; ++month) {
        sum += moment(weather_nodes(greensboro(), {.months = {month}}), 1, 0);
    }
    CHECK(sum == doctest::Approx(moment(weather_nodes(greensboro()), 1, 0)).epsilon(1e-12));
}

TEST_CASE("a month with half its days known counts whole in a calendar year") {
    std::vector<double> sun;
    for (int row = 0; row < 24 * 10; ++row) sun.push_back(row % 24 < 12 ? 500.0 : 0.0);
    const std::vector<double> cells(sun.size(), 20.0);
    const std::vector<std::uint8_t> month(sun.size(), 6);
    const Weather ten_days = heatmatch::weather_from_plane(sun, cells, 1.0, month);
    CHECK(weather_nodes(ten_days).sunlit_hours() == doctest::Approx(120.0));
    CHECK(weather_nodes(ten_days, {.calendar_year = true}).sunlit_hours() ==
          doctest::Approx(360.0));
}

TEST_CASE("a season without sun is refused") {
    const std::vector<double> sun(24, 500.0);
    const std::vector<double> cells(sun.size(), 20.0);
    const std::vector<std::uint8_t> month(sun.size(), 6);
    const Weather june = heatmatch::weather_from_plane(sun, cells, 1.0, month);
    CHECK_THROWS_WITH(static_cast<void>(weather_nodes(june, {.months = {1}})),
                      doctest::Contains("no sun in the months asked for"));
}

// Source: by brute force: a moment may give the most that has none brighter and as cold, or none
// brighter and as warm; the node of such a one has its sun and cell, and no hours.
TEST_CASE("the moments that may give the most are kept, whichever rows they are") {
    constexpr std::size_t count = 400;
    for (const std::size_t first : {std::size_t{0}, count / 2, count - 1}) {
        CAPTURE(first);
        std::vector<double> sun;
        std::vector<double> cells;
        for (std::size_t i = 0; i < count; ++i) {
            sun.push_back(50.0 + static_cast<double>(i * 7919 % 7001) / 10.0);
            cells.push_back(static_cast<double>(i * 104729 % 3989) / 100.0);
        }
        sun[first] = 1000.0;  // bright and cold
        cells[first] = -15.0;
        sun[(first + 1) % count] = 990.0;  // bright and warm
        cells[(first + 1) % count] = 60.0;
        sun[(first + 2) % count] = 500.0;  // colder than any
        cells[(first + 2) % count] = -20.0;
        sun[(first + 3) % count] = 985.0;  // nearly as bright, between the two
        cells[(first + 3) % count] = 20.0;
        std::vector<std::pair<double, double>> expected;
        for (std::size_t i = 0; i < count; ++i) {
            bool colder = false;
            bool warmer = false;
            for (std::size_t j = 0; j < count; ++j) {
                if (j == i || sun[j] < sun[i]) continue;
                colder = colder || cells[j] <= cells[i];
                warmer = warmer || cells[j] >= cells[i];
            }
            if (!colder || !warmer) expected.emplace_back(sun[i], cells[i]);
        }
        const WeatherNodes nodes = weather_nodes(heatmatch::weather_from_plane(sun, cells, 1.0));
        std::vector<std::pair<double, double>> kept;
        for (std::size_t k = 0; k < nodes.size(); ++k) {
            if (nodes.hours[k] > 0.0) continue;
            kept.emplace_back(nodes.irradiance_w_m2[k], nodes.base_c[k]);
        }
        std::sort(expected.begin(), expected.end());
        std::sort(kept.begin(), kept.end());
        CHECK(expected.size() == 3);
        CHECK(kept == expected);
    }
}
