#include "heatmatch/solar/weather_nodes.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/plane_nodes.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double usual_rise_per_w_m2 = (45.0 - 20.0) / 800.0;  // of a panel of the usual NOCT

/// Sums over the rows of a bin, for its two nodes.
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
    double cell_c;  //!< of a panel of the usual NOCT
};

void append(WeatherNodes& nodes, double irradiance, double base, double warming, double hours) {
    nodes.irradiance_w_m2.push_back(irradiance);
    nodes.base_c.push_back(base);
    nodes.heating_irradiance_w_m2.push_back(warming);
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
                        .warming = weather.heating_irradiance_w_m2[row],
                        .hours = hours,
                        .cell_c = weather.base_c[row] +
                                  weather.heating_irradiance_w_m2[row] * usual_rise_per_w_m2});
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

/// Coldest and warmest cells of rows.
struct Span {
    double coldest = HUGE_VAL;
    double warmest = -HUGE_VAL;

    void take(double cell_c) {
        coldest = std::min(coldest, cell_c);
        warmest = std::max(warmest, cell_c);
    }
    [[nodiscard]] bool holds(double cell_c) const { return cell_c >= coldest && cell_c <= warmest; }
};

/// Rows that no other row equals or exceeds in irradiance and in cold, or in irradiance and in
/// warmth: one of them gives the largest power, current and voltage into any resistance.
void append_extremes(WeatherNodes& nodes, const std::vector<Row>& rows, double brightest) {
    // Few rows remain to be sorted after removing those within the span of brighter classes.
    constexpr std::size_t classes = 64;
    const auto class_of = [brightest](const Row& row) {
        const double share = row.irradiance / brightest;
        return std::min(static_cast<std::size_t>(share * static_cast<double>(classes)),
                        classes - 1);
    };
    std::array<Span, classes + 1> brighter;
    for (const Row& row : rows) brighter[class_of(row)].take(row.cell_c);
    Span above;
    for (std::size_t c = classes; c-- > 0;) {
        const Span own = brighter[c];
        brighter[c] = above;
        if (own.coldest > own.warmest) continue;
        above.take(own.coldest);
        above.take(own.warmest);
    }
    std::vector<const Row*> order;
    for (const Row& row : rows) {
        if (!brighter[class_of(row)].holds(row.cell_c)) order.push_back(&row);
    }
    std::sort(order.begin(), order.end(),
              [](const Row* a, const Row* b) { return a->irradiance > b->irradiance; });
    Span seen;
    for (const Row* row : order) {
        if (seen.holds(row->cell_c)) continue;
        seen.take(row->cell_c);
        append(nodes, row->irradiance, row->base, row->warming, 0.0);
    }
}

/// The shaded substrings are on a plane of their own, which the shade darkens.
WeatherNodes partly_shaded_nodes(const Weather& weather, const NodeOptions& options) {
    Weather shaded = weather;
    for (auto* light : {&shaded.irradiance_w_m2, &shaded.heating_irradiance_w_m2}) {
        for (std::size_t row = 0; row < light->size(); ++row) {
            (*light)[row] *= 1.0 - weather.shaded_share[row];
        }
    }
    const std::array<const Weather*, 2> both{&weather, &shaded};
    const std::vector<WeatherNodes> planes = plane_nodes(both, options);
    WeatherNodes nodes = planes[0];
    nodes.shaded_w_m2 = planes[1].irradiance_w_m2;
    nodes.shaded_heating_w_m2 = planes[1].heating_irradiance_w_m2;
    return nodes;
}

}  // namespace

double WeatherNodes::sunlit_hours() const {
    return std::accumulate(hours.begin(), hours.end(), 0.0);
}

WeatherNodes weather_nodes(const Weather& weather, const NodeOptions& options) {
    check_months(options.months);
    check_weather(weather);
    if (options.irradiance_bins < 1 || options.temperature_bins < 1) {
        throw InvalidInput(
            ErrorDetail{.part = "weather nodes",
                        .field = "irradiance_bins, temperature_bins",
                        .value = std::to_string(options.irradiance_bins) + ", " +
                                 std::to_string(options.temperature_bins),
                        .allowed = ">= 1",
                        .remedy = say<"solar.default_bins">(with<"sun">(14.0), with<"air">(10.0))});
    }
    if (!weather.shaded_share.empty()) return partly_shaded_nodes(weather, options);
    const std::vector<Row> rows = sunlit_rows(weather, options);
    if (rows.empty()) {
        throw InvalidInput(ErrorDetail{
            .part = "weather",
            .field = "irradiance_w_m2",
            .value = options.months.empty() ? "no sun" : "no sun in the months asked for",
            .allowed = "above 0 W/m2 in some rows",
            .remedy = say<"solar.cover_season">()});
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
        coldest = std::min(coldest, row.cell_c);
        warmest = std::max(warmest, row.cell_c);
    }
    const auto suns = static_cast<std::size_t>(options.irradiance_bins);
    const auto cells = static_cast<std::size_t>(options.temperature_bins);
    std::vector<Bin> bins(suns * cells);
    const double span = std::max(warmest - coldest, 1e-6);
    for (const Row& row : rows) {
        const double g = std::sqrt(row.irradiance / brightest) * static_cast<double>(suns);
        const double t = (row.cell_c - coldest) / span * static_cast<double>(cells);
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
    append_extremes(nodes, rows, brightest);
    return nodes;
}

}  // namespace heatmatch
