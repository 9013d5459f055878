#include "heatmatch/solar/weather_nodes.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

namespace {

constexpr double usual_rise_per_w_m2 = (45.0 - 20.0) / 800.0;  // of a panel of the usual NOCT

/// Sums over the rows of a bin, from which its two nodes are made.
struct Bin {
    double hours = 0.0;
    double sun = 0.0;
    double sun2 = 0.0;
    double base = 0.0;
    double base_sun = 0.0;
    double warming = 0.0;
    double warming_sun = 0.0;
};

struct Row {
    double irradiance;
    double base;
    double warming;
    double hours;
    [[nodiscard]] double cell() const { return base + warming * usual_rise_per_w_m2; }
};

void append(WeatherNodes& nodes, double irradiance, double base, double warming, double hours) {
    nodes.irradiance_w_m2.push_back(irradiance);
    nodes.base_c.push_back(base);
    nodes.warming_w_m2.push_back(warming);
    nodes.hours.push_back(hours);
}

std::vector<Row> sunlit_rows(const Weather& weather, const NodeOptions& options) {
    std::array<double, 13> factor{};
    factor.fill(options.months.empty() ? 1.0 : 0.0);
    for (int month : options.months) factor[static_cast<std::size_t>(month)] = 1.0;
    if (options.calendar_year) {
        const auto cover = month_cover(weather);
        for (std::size_t m = 1; m <= 12; ++m) factor[m] *= cover[m - 1].factor;
    }
    std::vector<Row> rows;
    rows.reserve(weather.size() / 2);
    for (std::size_t row = 0; row < weather.size(); ++row) {
        const double hours = weather.hours[row] * factor[weather.month[row]];
        if (weather.irradiance_w_m2[row] <= 0.0 || hours <= 0.0) continue;
        rows.push_back({.irradiance = weather.irradiance_w_m2[row],
                        .base = weather.base_c[row],
                        .warming = weather.warming_w_m2[row],
                        .hours = hours});
    }
    return rows;
}

void append_two(WeatherNodes& nodes, const Bin& bin) {
    const double sun = bin.sun / bin.hours;
    const double base = bin.base / bin.hours;
    const double warming = bin.warming / bin.hours;
    const double variance = bin.sun2 / bin.hours - sun * sun;
    constexpr double negligible = 1e-9;
    if (variance <= negligible * sun * sun) {
        append(nodes, sun, base, warming, bin.hours);
        return;
    }
    const double deviation = std::min(std::sqrt(variance), sun);
    const double base_step = (bin.base_sun / bin.hours - base * sun) / deviation;
    const double warming_step = (bin.warming_sun / bin.hours - warming * sun) / deviation;
    for (double side : {-1.0, 1.0}) {
        append(nodes, sun + side * deviation, base + side * base_step,
               warming + side * warming_step, 0.5 * bin.hours);
    }
}

/// Rows that no other one equals or beats in sun and in cold, and in sun and in warmth: one of them
/// gives the largest power, current and voltage into any resistance.
void append_extremes(WeatherNodes& nodes, const std::vector<Row>& rows) {
    std::vector<std::size_t> order(rows.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&rows](std::size_t a, std::size_t b) {
        return rows[a].irradiance > rows[b].irradiance;
    });
    double coldest = HUGE_VAL;
    double warmest = -HUGE_VAL;
    for (std::size_t index : order) {
        const Row& row = rows[index];
        if (row.cell() >= coldest && row.cell() <= warmest) continue;
        coldest = std::min(coldest, row.cell());
        warmest = std::max(warmest, row.cell());
        append(nodes, row.irradiance, row.base, row.warming, 0.0);
    }
}

}  // namespace

double WeatherNodes::sunlit_hours() const {
    return std::accumulate(hours.begin(), hours.end(), 0.0);
}

WeatherNodes weather_nodes(const Weather& weather, const NodeOptions& options) {
    check_months(options.months);
    check_weather(weather);
    if (options.irradiance_bins < 1 || options.temperature_bins < 1) {
        throw InvalidInput(ErrorDetail{.part = "weather nodes",
                                       .field = "irradiance_bins, temperature_bins",
                                       .value = std::to_string(options.irradiance_bins) + ", " +
                                                std::to_string(options.temperature_bins),
                                       .allowed = ">= 1",
                                       .remedy = "14 and 10 are the defaults"});
    }
    const std::vector<Row> rows = sunlit_rows(weather, options);
    if (rows.empty()) {
        throw InvalidInput(ErrorDetail{
            .part = "weather",
            .field = "irradiance_w_m2",
            .value = options.months.empty() ? "no sun" : "no sun in the months asked for",
            .allowed = "above 0 W/m2 in some rows",
            .remedy = "give weather that covers the heating season"});
    }
    WeatherNodes nodes;
    if (options.exact) {
        for (const Row& row : rows) {
            append(nodes, row.irradiance, row.base, row.warming, row.hours);
        }
        return nodes;
    }
    double brightest = 0.0;
    double coldest = HUGE_VAL;
    double warmest = -HUGE_VAL;
    for (const Row& row : rows) {
        brightest = std::max(brightest, row.irradiance);
        coldest = std::min(coldest, row.cell());
        warmest = std::max(warmest, row.cell());
    }
    const auto suns = static_cast<std::size_t>(options.irradiance_bins);
    const auto cells = static_cast<std::size_t>(options.temperature_bins);
    std::vector<Bin> bins(suns * cells);
    const double span = std::max(warmest - coldest, 1e-6);
    for (const Row& row : rows) {
        const double g = std::sqrt(row.irradiance / brightest) * static_cast<double>(suns);
        const double t = (row.cell() - coldest) / span * static_cast<double>(cells);
        Bin& bin = bins[std::min(static_cast<std::size_t>(g), suns - 1) * cells +
                        std::min(static_cast<std::size_t>(t), cells - 1)];
        bin.hours += row.hours;
        bin.sun += row.hours * row.irradiance;
        bin.sun2 += row.hours * row.irradiance * row.irradiance;
        bin.base += row.hours * row.base;
        bin.base_sun += row.hours * row.base * row.irradiance;
        bin.warming += row.hours * row.warming;
        bin.warming_sun += row.hours * row.warming * row.irradiance;
    }
    for (const Bin& bin : bins) {
        if (bin.hours > 0.0) append_two(nodes, bin);
    }
    append_extremes(nodes, rows);
    return nodes;
}

}  // namespace heatmatch
