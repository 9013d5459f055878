#include "heatmatch/solar/plane_nodes.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string>
#include <tuple>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr std::size_t suns_of_pair = 26;
constexpr std::size_t cells_of_pair = 4;

/// Light, air and warming of a row on one plane.
struct OnPlane {
    double sun = 0.0;
    double base = 0.0;
    double warming = 0.0;
};

/// Sums over the rows of a bin of two planes.
struct PairBin {
    double hours = 0.0;
    std::array<OnPlane, 2> sum{};
    std::array<std::array<double, 2>, 2> sun_sun{};  //!< products of the suns
    std::array<std::array<OnPlane, 2>, 2> by_sun{};  //!< [plane][sun it is multiplied by]

    void add(const std::array<OnPlane, 2>& row, double weight) {
        hours += weight;
        for (std::size_t p = 0; p < 2; ++p) {
            sum[p].sun += weight * row[p].sun;
            sum[p].base += weight * row[p].base;
            sum[p].warming += weight * row[p].warming;
            for (std::size_t q = 0; q < 2; ++q) {
                sun_sun[p][q] += weight * row[p].sun * row[q].sun;
                by_sun[p][q].base += weight * row[p].base * row[q].sun;
                by_sun[p][q].warming += weight * row[p].warming * row[q].sun;
            }
        }
    }
};

void append_node(WeatherNodes& nodes, const OnPlane& at, double hours) {
    nodes.irradiance_w_m2.push_back(std::max(0.0, at.sun));  // rounding: no node is below night
    nodes.base_c.push_back(at.base);
    nodes.heating_irradiance_w_m2.push_back(std::max(0.0, at.warming));
    nodes.hours.push_back(hours);
}

/// Main axis of the two irradiances of a bin, of unit length, and the deviation along it.
std::tuple<std::array<double, 2>, double> main_axis(const PairBin& bin,
                                                    const std::array<double, 2>& mean) {
    const auto covariance = [&](std::size_t p, std::size_t q) {
        return bin.sun_sun[p][q] / bin.hours - mean[p] * mean[q];
    };
    const double a = covariance(0, 0);
    const double b = covariance(0, 1);
    const double d = covariance(1, 1);
    const double angle = 0.5 * std::atan2(2.0 * b, a - d);
    const double largest = 0.5 * (a + d) + std::hypot(0.5 * (a - d), b);
    return {{std::cos(angle), std::sin(angle)}, std::sqrt(std::max(0.0, largest))};
}

void append_pair(std::vector<WeatherNodes>& nodes, const PairBin& bin) {
    const std::array<double, 2> mean{bin.sum[0].sun / bin.hours, bin.sum[1].sun / bin.hours};
    const auto found = main_axis(bin, mean);
    const std::array<double, 2>& axis = std::get<0>(found);
    double deviation = std::get<1>(found);
    for (std::size_t p = 0; p < 2; ++p) {
        // No node is darker than night.
        const double most = std::fabs(axis[p]) > 1e-12 ? mean[p] / std::fabs(axis[p]) : HUGE_VAL;
        deviation = std::min(deviation, most);
    }
    const bool single = deviation <= 1e-4 * (mean[0] + mean[1]);
    for (std::size_t p = 0; p < 2; ++p) {
        const OnPlane middle{mean[p], bin.sum[p].base / bin.hours, bin.sum[p].warming / bin.hours};
        if (single) {
            append_node(nodes[p], middle, bin.hours);
            continue;
        }
        // Regression of temperature on the place along the axis.
        const auto step = [&](double OnPlane::*member, double value) {
            double along = 0.0;
            for (std::size_t q = 0; q < 2; ++q) {
                along += axis[q] * (bin.by_sun[p][q].*member / bin.hours - value * mean[q]);
            }
            return along / deviation;
        };
        const double base_step = step(&OnPlane::base, middle.base);
        const double warming_step = step(&OnPlane::warming, middle.warming);
        for (const double side : {-1.0, 1.0}) {
            append_node(nodes[p],
                        {middle.sun + side * deviation * axis[p], middle.base + side * base_step,
                         std::max(0.0, middle.warming + side * warming_step)},
                        0.5 * bin.hours);
        }
    }
}

/// A sunlit row with its weight.
struct SunlitRow {
    std::size_t row = 0;
    double hours = 0.0;
};

std::vector<SunlitRow> rows_with_sun(std::span<const Weather* const> planes,
                                     const NodeOptions& options) {
    const Weather& first = *planes.front();
    std::array<double, 13> factor{};
    factor.fill(options.months.empty() ? 1.0 : 0.0);
    for (const int month : options.months) factor[static_cast<std::size_t>(month)] = 1.0;
    if (options.calendar_year) {
        const auto cover = month_cover(first);
        for (std::size_t m = 1; m <= 12; ++m) factor[m] *= cover[m - 1].factor;
    }
    std::vector<SunlitRow> rows;
    for (std::size_t row = 0; row < first.size(); ++row) {
        const double hours = first.hours[row] * factor[first.month[row]];
        const bool lit = std::any_of(planes.begin(), planes.end(), [row](const Weather* plane) {
            return plane->irradiance_w_m2[row] > 0.0;
        });
        if (lit && hours > 0.0) rows.push_back({row, hours});
    }
    return rows;
}

OnPlane on_plane_in(const Weather& plane, std::size_t row) {
    return {plane.irradiance_w_m2[row], plane.base_c[row], plane.heating_irradiance_w_m2[row]};
}

std::vector<WeatherNodes> every_row(std::span<const Weather* const> planes,
                                    const std::vector<SunlitRow>& rows) {
    std::vector<WeatherNodes> nodes(planes.size());
    for (std::size_t p = 0; p < planes.size(); ++p) {
        for (const SunlitRow& at : rows) {
            append_node(nodes[p], on_plane_in(*planes[p], at.row), at.hours);
        }
    }
    return nodes;
}

std::vector<WeatherNodes> pair_nodes(std::span<const Weather* const> planes,
                                     const std::vector<SunlitRow>& rows) {
    constexpr double usual_rise = (45.0 - 20.0) / 800.0;  // of a panel of the usual NOCT
    std::array<double, 2> brightest{1e-9, 1e-9};
    double coldest = HUGE_VAL;
    double warmest = -HUGE_VAL;
    const auto pair_of = [&planes](std::size_t row) {
        return std::array{on_plane_in(*planes[0], row), on_plane_in(*planes[1], row)};
    };
    const auto cell_of = [](const OnPlane& at) { return at.base + at.warming * usual_rise; };
    for (const SunlitRow& at : rows) {
        const auto pair = pair_of(at.row);
        for (std::size_t p = 0; p < 2; ++p) brightest[p] = std::max(brightest[p], pair[p].sun);
        coldest = std::min(coldest, cell_of(pair[0]));
        warmest = std::max(warmest, cell_of(pair[0]));
    }
    const double span = std::max(warmest - coldest, 1e-6);
    std::map<std::size_t, PairBin> bins;
    for (const SunlitRow& at : rows) {
        const auto pair = pair_of(at.row);
        const auto place = [](double share, std::size_t count) {
            return std::min(static_cast<std::size_t>(share * static_cast<double>(count)),
                            count - 1);
        };
        std::size_t bin = place((cell_of(pair[0]) - coldest) / span, cells_of_pair);
        for (std::size_t p = 0; p < 2; ++p) {
            bin = bin * suns_of_pair + place(std::sqrt(pair[p].sun / brightest[p]), suns_of_pair);
        }
        bins[bin].add(pair, at.hours);
    }
    std::vector<WeatherNodes> nodes(2);
    for (const auto& [place, bin] : bins) append_pair(nodes, bin);
    // The brightest rows, for extremes.
    const auto append_brightest = [&](auto sun_of) {
        const auto most = std::max_element(
            rows.begin(), rows.end(),
            [&](const SunlitRow& a, const SunlitRow& b) { return sun_of(a.row) < sun_of(b.row); });
        for (std::size_t p = 0; p < 2; ++p) {
            append_node(nodes[p], on_plane_in(*planes[p], most->row), 0.0);
        }
    };
    append_brightest([&](std::size_t row) { return planes[0]->irradiance_w_m2[row]; });
    append_brightest([&](std::size_t row) { return planes[1]->irradiance_w_m2[row]; });
    append_brightest([&](std::size_t row) {
        return planes[0]->irradiance_w_m2[row] + planes[1]->irradiance_w_m2[row];
    });
    return nodes;
}

[[noreturn]] void refuse_places(std::string part, const char* field, std::string value,
                                const char* allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = std::move(part),
                                   .field = field,
                                   .value = std::move(value),
                                   .allowed = allowed,
                                   .remedy = std::move(remedy)});
}

}  // namespace

void check_places(const MixedArray& array, std::span<const PanelPlace> places,
                  std::span<const Weather* const> planes) {
    if (planes.empty()) {
        refuse_places("array", "weather", "none", "that of at least one plane",
                      say<"solar.one_sky">());
    }
    if (places.size() != array.panel_count()) {
        refuse_places(
            "array", "places", std::to_string(places.size()) + " panels",
            "one for each panel, string by string",
            say<"solar.panel_conditions">(with<"count">(static_cast<double>(array.panel_count()))));
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (places[i].plane < planes.size()) continue;
        refuse_places("array: panel " + std::to_string(i + 1), "plane",
                      std::to_string(places[i].plane), "one of the planes", say<"solar.one_sky">());
    }
    const Weather& first = *planes.front();
    for (std::size_t p = 0; p < planes.size(); ++p) {
        const Weather& other = *planes[p];
        check_weather(other);
        if (other.hours == first.hours && other.month == first.month) continue;
        refuse_places("array: plane " + std::to_string(p + 1), "weather",
                      std::to_string(other.size()) + " rows",
                      "the hours and months of the first plane's", say<"solar.one_sky">());
    }
}

std::vector<WeatherNodes> plane_nodes(std::span<const Weather* const> planes,
                                      const NodeOptions& options) {
    check_months(options.months);
    if (planes.size() == 1) return {weather_nodes(*planes.front(), options)};
    const std::vector<SunlitRow> rows = rows_with_sun(planes, options);
    if (rows.empty()) {
        refuse_places("weather", "irradiance_w_m2",
                      options.months.empty() ? "no sun" : "no sun in the months asked for",
                      "above 0 W/m2 in some rows", say<"solar.cover_season">());
    }
    if (options.exact || planes.size() > 2) return every_row(planes, rows);
    return pair_nodes(planes, rows);
}

}  // namespace heatmatch
