#include "heatmatch/parts/ampacity_correction.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace heatmatch {

namespace {

/// Share of a table's current up to that air temperature.
struct AmbientRow {
    double to_c = 0.0;
    double factor = 1.0;
};

// Tables 310.15(B)(1)(1) and (2), of which the one for 40 degrees was also seen with 60 to 90;
// 690.31(A)(3)(2); B.52.14 and B.52.15; EN 50618, A.4.
constexpr auto nec_30_60 = std::to_array<AmbientRow>({{10.0, 1.29},
                                                      {15.0, 1.22},
                                                      {20.0, 1.15},
                                                      {25.0, 1.08},
                                                      {30.0, 1.0},
                                                      {35.0, 0.91},
                                                      {40.0, 0.82},
                                                      {45.0, 0.71},
                                                      {50.0, 0.58},
                                                      {55.0, 0.41}});
constexpr auto nec_30_75 = std::to_array<AmbientRow>({{10.0, 1.2},
                                                      {15.0, 1.15},
                                                      {20.0, 1.11},
                                                      {25.0, 1.05},
                                                      {30.0, 1.0},
                                                      {35.0, 0.94},
                                                      {40.0, 0.88},
                                                      {45.0, 0.82},
                                                      {50.0, 0.75},
                                                      {55.0, 0.67},
                                                      {60.0, 0.58},
                                                      {65.0, 0.47},
                                                      {70.0, 0.33}});
constexpr auto nec_30_90 = std::to_array<AmbientRow>({{10.0, 1.15},
                                                      {15.0, 1.12},
                                                      {20.0, 1.08},
                                                      {25.0, 1.04},
                                                      {30.0, 1.0},
                                                      {35.0, 0.96},
                                                      {40.0, 0.91},
                                                      {45.0, 0.87},
                                                      {50.0, 0.82},
                                                      {55.0, 0.76},
                                                      {60.0, 0.71},
                                                      {65.0, 0.65},
                                                      {70.0, 0.58},
                                                      {75.0, 0.5},
                                                      {80.0, 0.41},
                                                      {85.0, 0.29}});
constexpr auto nec_40_60 = std::to_array<AmbientRow>({{10.0, 1.58},
                                                      {15.0, 1.5},
                                                      {20.0, 1.41},
                                                      {25.0, 1.32},
                                                      {30.0, 1.22},
                                                      {35.0, 1.12},
                                                      {40.0, 1.0},
                                                      {45.0, 0.87},
                                                      {50.0, 0.71},
                                                      {55.0, 0.5}});
constexpr auto nec_40_75 = std::to_array<AmbientRow>({{10.0, 1.36},
                                                      {15.0, 1.31},
                                                      {20.0, 1.25},
                                                      {25.0, 1.2},
                                                      {30.0, 1.13},
                                                      {35.0, 1.07},
                                                      {40.0, 1.0},
                                                      {45.0, 0.93},
                                                      {50.0, 0.85},
                                                      {55.0, 0.76},
                                                      {60.0, 0.65},
                                                      {65.0, 0.53},
                                                      {70.0, 0.38}});
constexpr auto nec_40_90 = std::to_array<AmbientRow>({{10.0, 1.26},
                                                      {15.0, 1.22},
                                                      {20.0, 1.18},
                                                      {25.0, 1.14},
                                                      {30.0, 1.1},
                                                      {35.0, 1.05},
                                                      {40.0, 1.0},
                                                      {45.0, 0.95},
                                                      {50.0, 0.89},
                                                      {55.0, 0.84},
                                                      {60.0, 0.77},
                                                      {65.0, 0.71},
                                                      {70.0, 0.63},
                                                      {75.0, 0.55},
                                                      {80.0, 0.45}});
constexpr auto nec_40_150 = std::to_array<AmbientRow>(
    {{10.0, 1.13},  {15.0, 1.11},  {20.0, 1.09}, {25.0, 1.07}, {30.0, 1.04},  {35.0, 1.02},
     {40.0, 1.0},   {45.0, 0.98},  {50.0, 0.95}, {55.0, 0.93}, {60.0, 0.9},   {65.0, 0.88},
     {70.0, 0.85},  {75.0, 0.83},  {80.0, 0.8},  {90.0, 0.74}, {100.0, 0.67}, {110.0, 0.6},
     {120.0, 0.52}, {130.0, 0.43}, {140.0, 0.3}});
constexpr auto nec_40_200 = std::to_array<AmbientRow>(
    {{10.0, 1.09},  {15.0, 1.08},  {20.0, 1.06},  {25.0, 1.05}, {30.0, 1.03},  {35.0, 1.02},
     {40.0, 1.0},   {45.0, 0.98},  {50.0, 0.97},  {55.0, 0.95}, {60.0, 0.94},  {65.0, 0.92},
     {70.0, 0.9},   {75.0, 0.88},  {80.0, 0.87},  {90.0, 0.83}, {100.0, 0.79}, {110.0, 0.75},
     {120.0, 0.71}, {130.0, 0.66}, {140.0, 0.61}, {160.0, 0.5}, {180.0, 0.35}});
constexpr auto nec_40_250 = std::to_array<AmbientRow>(
    {{10.0, 1.07},  {15.0, 1.06},  {20.0, 1.05},  {25.0, 1.04},  {30.0, 1.02},
     {35.0, 1.01},  {40.0, 1.0},   {45.0, 0.99},  {50.0, 0.98},  {55.0, 0.96},
     {60.0, 0.95},  {65.0, 0.94},  {70.0, 0.93},  {75.0, 0.91},  {80.0, 0.9},
     {90.0, 0.87},  {100.0, 0.85}, {110.0, 0.82}, {120.0, 0.79}, {130.0, 0.76},
     {140.0, 0.72}, {160.0, 0.65}, {180.0, 0.58}, {200.0, 0.49}, {225.0, 0.35}});
constexpr auto pv_30_105 = std::to_array<AmbientRow>({{30.0, 1.0},
                                                      {35.0, 0.97},
                                                      {40.0, 0.93},
                                                      {45.0, 0.89},
                                                      {50.0, 0.86},
                                                      {55.0, 0.82},
                                                      {60.0, 0.77},
                                                      {65.0, 0.73},
                                                      {70.0, 0.68},
                                                      {75.0, 0.63},
                                                      {80.0, 0.58},
                                                      {85.0, 0.52},
                                                      {90.0, 0.45},
                                                      {95.0, 0.37},
                                                      {100.0, 0.26}});
constexpr auto pv_30_125 = std::to_array<AmbientRow>({{30.0, 1.0},
                                                      {35.0, 0.97},
                                                      {40.0, 0.95},
                                                      {45.0, 0.92},
                                                      {50.0, 0.89},
                                                      {55.0, 0.86},
                                                      {60.0, 0.83},
                                                      {65.0, 0.79},
                                                      {70.0, 0.76},
                                                      {75.0, 0.73},
                                                      {80.0, 0.69},
                                                      {85.0, 0.65},
                                                      {90.0, 0.61},
                                                      {95.0, 0.56},
                                                      {100.0, 0.51}});
constexpr auto iec_30_70 = std::to_array<AmbientRow>({{10.0, 1.22},
                                                      {15.0, 1.17},
                                                      {20.0, 1.12},
                                                      {25.0, 1.06},
                                                      {30.0, 1.0},
                                                      {35.0, 0.94},
                                                      {40.0, 0.87},
                                                      {45.0, 0.79},
                                                      {50.0, 0.71},
                                                      {55.0, 0.61},
                                                      {60.0, 0.5}});
constexpr auto iec_30_90 = std::to_array<AmbientRow>({{10.0, 1.15},
                                                      {15.0, 1.12},
                                                      {20.0, 1.08},
                                                      {25.0, 1.04},
                                                      {30.0, 1.0},
                                                      {35.0, 0.96},
                                                      {40.0, 0.91},
                                                      {45.0, 0.87},
                                                      {50.0, 0.82},
                                                      {55.0, 0.76},
                                                      {60.0, 0.71},
                                                      {65.0, 0.65},
                                                      {70.0, 0.58},
                                                      {75.0, 0.5},
                                                      {80.0, 0.41}});
constexpr auto iec_20_70 = std::to_array<AmbientRow>({{10.0, 1.1},
                                                      {15.0, 1.05},
                                                      {20.0, 1.0},
                                                      {25.0, 0.95},
                                                      {30.0, 0.89},
                                                      {35.0, 0.84},
                                                      {40.0, 0.77},
                                                      {45.0, 0.71},
                                                      {50.0, 0.63},
                                                      {55.0, 0.55},
                                                      {60.0, 0.45}});
constexpr auto iec_20_90 = std::to_array<AmbientRow>({{10.0, 1.07},
                                                      {15.0, 1.04},
                                                      {20.0, 1.0},
                                                      {25.0, 0.96},
                                                      {30.0, 0.93},
                                                      {35.0, 0.89},
                                                      {40.0, 0.85},
                                                      {45.0, 0.8},
                                                      {50.0, 0.76},
                                                      {55.0, 0.71},
                                                      {60.0, 0.65}});
constexpr auto en_60_120 =
    std::to_array<AmbientRow>({{60.0, 1.0}, {70.0, 0.92}, {80.0, 0.84}, {90.0, 0.75}});

struct AmbientTable {
    WiringCode code = WiringCode::nec;
    double base_c = 30.0;
    double conductor_c = 90.0;
    std::span<const AmbientRow> rows{};
};

constexpr auto ambient_tables = std::to_array<AmbientTable>({
    {WiringCode::nec, 30.0, 60.0, nec_30_60},
    {WiringCode::nec, 30.0, 75.0, nec_30_75},
    {WiringCode::nec, 30.0, 90.0, nec_30_90},
    {WiringCode::nec, 40.0, 60.0, nec_40_60},
    {WiringCode::nec, 40.0, 75.0, nec_40_75},
    {WiringCode::nec, 40.0, 90.0, nec_40_90},
    {WiringCode::nec, 40.0, 150.0, nec_40_150},
    {WiringCode::nec, 40.0, 200.0, nec_40_200},
    {WiringCode::nec, 40.0, 250.0, nec_40_250},
    {WiringCode::nec, 30.0, 105.0, pv_30_105},
    {WiringCode::nec, 30.0, 125.0, pv_30_125},
    {WiringCode::iec, 30.0, 70.0, iec_30_70},
    {WiringCode::iec, 30.0, 90.0, iec_30_90},
    {WiringCode::iec, 20.0, 70.0, iec_20_70},
    {WiringCode::iec, 20.0, 90.0, iec_20_90},
    {WiringCode::iec, 60.0, 120.0, en_60_120},
});

/// Share for that number of circuits laid together, B.52.17 item 1.
struct GroupRow {
    int circuits = 1;
    double factor = 1.0;
};
constexpr auto iec_groups = std::to_array<GroupRow>({{1, 1.0},
                                                     {2, 0.80},
                                                     {3, 0.70},
                                                     {4, 0.65},
                                                     {5, 0.60},
                                                     {6, 0.57},
                                                     {7, 0.54},
                                                     {8, 0.52},
                                                     {9, 0.50},
                                                     {12, 0.45},
                                                     {16, 0.41},
                                                     {20, 0.38}});

double nec_grouping(int loaded) {
    if (loaded <= 3) return 1.0;
    if (loaded <= 6) return 0.8;
    if (loaded <= 9) return 0.7;
    if (loaded <= 20) return 0.5;
    if (loaded <= 30) return 0.45;
    return loaded <= 40 ? 0.40 : 0.35;
}

double by_equation(double base_c, double conductor_c, double limit_c, double ambient_c) {
    return std::sqrt(std::max(0.0, limit_c - ambient_c) / (conductor_c - base_c));
}

}  // namespace

double ambient_factor(WiringCode code, double base_c, double conductor_c, double ambient_c) {
    for (const AmbientTable& table : ambient_tables) {
        if (table.code != code || table.base_c != base_c || table.conductor_c != conductor_c)
            continue;
        for (const AmbientRow& row : table.rows) {
            if (ambient_c <= row.to_c) return row.factor;
        }
        return 0.0;
    }
    return by_equation(base_c, conductor_c, conductor_c, ambient_c);
}

double ambient_factor(WiringCode code, const TabulatedAmpacity& table, double limit_c,
                      double ambient_c) {
    const double whole = ambient_factor(code, table.ambient_c, table.conductor_c, ambient_c);
    if (limit_c >= table.conductor_c) return whole;
    return std::min(whole, by_equation(table.ambient_c, table.conductor_c, limit_c, ambient_c));
}

std::optional<double> grouping_factor(WiringCode code, int loaded_conductors) {
    if (code == WiringCode::nec) return nec_grouping(loaded_conductors);
    const int circuits = (loaded_conductors + 1) / 2;
    for (const GroupRow& row : iec_groups) {
        if (circuits <= row.circuits) return row.factor;
    }
    return std::nullopt;
}

double roof_rise_k(double distance_mm) {
    return distance_mm < near_roof_mm ? near_roof_rise_k : 0.0;
}

}  // namespace heatmatch
