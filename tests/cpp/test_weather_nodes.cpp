#include "greensboro.hpp"
#include "refusal.hpp"

#include <numeric>

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
