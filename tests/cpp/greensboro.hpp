#pragma once

#include "reference_csv.hpp"

#include <vector>

#include "heatmatch/solar/weather.hpp"

/// The year of weather_greensboro.csv, as plane arrays.
inline const heatmatch::Weather& greensboro() {
    static const heatmatch::Weather weather = [] {
        std::vector<double> sun;
        std::vector<double> cells;
        for (const ReferenceRow& row : read_reference("weather_greensboro.csv")) {
            sun.push_back(number(row, "poa_W_m2"));
            cells.push_back(number(row, "Tcell_C"));
        }
        return heatmatch::weather_from_plane(sun, cells, 1.0);
    }();
    return weather;
}
