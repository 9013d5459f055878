#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/parts/ampacity_table.hpp"

namespace heatmatch {

/// Mounting place of the panels: codes have more requirements on buildings.
enum class ArrayPlace { ground, building };
inline constexpr auto array_place_words = std::to_array<std::string_view>({"ground", "building"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ArrayPlace) {
    return array_place_words;
}

/// Whether one pole of the array is solidly connected to earth.
enum class Earthing { floating, grounded };
inline constexpr auto earthing_words = std::to_array<std::string_view>({"floating", "grounded"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Earthing) {
    return earthing_words;
}

/// Slant height of a row of single upright panels, if not stated [m].
inline constexpr double usual_row_slant_m = 1.7;

/// Location and mounting of the panels.
struct Site {
    std::optional<double> latitude_deg{};    //!< north positive [deg]
    std::optional<double> longitude_deg{};   //!< east positive [deg]
    std::optional<double> elevation_m{};     //!< above sea level [m]
    std::optional<double> tilt_deg{};        //!< of the panels, 0 flat, 90 upright [deg]
    std::optional<double> azimuth_deg{};     //!< of the panels, clockwise from north [deg]
    double record_low_c = 0.0;               //!< lowest air temperature on record [°C]
    std::optional<double> albedo{};          //!< of the ground without snow
    std::vector<double> albedo_by_month{};   //!< of the ground, snow included; takes precedence
                                             //!< over albedo
    std::optional<double> panel_height_m{};  //!< of the lower edge above the ground [m]
    std::optional<double> row_slant_m{};     //!< of a row, from lower to upper edge [m]
    std::optional<double> row_pitch_m{};     //!< from row to row on the ground; empty: one row [m]
    std::vector<double> snow_cover_pct{};    //!< share of each month with panels under snow [%]
    std::vector<double> soiling_pct{};       //!< light lost to dirt, by month [%]
    std::vector<double> linke_turbidity{};   //!< of the clear air, by month
    std::optional<bool> wet{};               //!< greenhouse, barn, cellar; not stated counts as wet
    std::optional<ArrayPlace> array_on{};
    std::optional<Earthing> earthing{};
    std::optional<bool> frames_bonded{};  //!< frames of the panels, to one another and to earth
    std::optional<bool> live_parts_enclosed{};  //!< live parts are accessible only by opening a
                                                //!< cover
    double bright_irradiance_w_m2 = 1000.0;     //!< at which margins are judged; higher for snow
                                                //!< and cloud edges [W/m2]
    std::optional<WiringCode> code{};           //!< code for the wiring; both unless stated

    /// Wet unless stated dry.
    [[nodiscard]] bool counts_as_wet() const { return wet.value_or(true); }

    friend bool operator==(const Site&, const Site&) = default;
};
[[nodiscard]] std::span<const Field> site_fields();

/// Checks across fields: lists by month are empty or have twelve values. Throws InvalidInput.
void check_site(const Site& site);

/// Twelve monthly means, January first.
struct MonthlyNormals {
    std::vector<double> sun_hours{};   //!< daily sum on the plane of the panels (peak sun hours)
                                       //!< [kWh/m2]
    std::vector<double> temp_min_c{};  //!< mean daily low of the air [°C]
    std::vector<double> temp_max_c{};  //!< mean daily high of the air [°C]

    friend bool operator==(const MonthlyNormals&, const MonthlyNormals&) = default;
};
[[nodiscard]] std::span<const Field> monthly_normals_fields();

/// Checks across fields: twelve values each, low below high. Throws InvalidInput.
void check_monthly_normals(const MonthlyNormals& normals);

/// Throws InvalidInput where the record low is above the mean low of the coldest month.
void check_record_low(const Site& site, const MonthlyNormals& normals);

}  // namespace heatmatch
