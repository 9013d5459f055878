#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// Position of a thermometer in or on a store.
enum class ProbePlace { bed, wall, lid, sheath };
inline constexpr auto probe_place_words =
    std::to_array<std::string_view>({"bed", "wall", "lid", "sheath"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ProbePlace) {
    return probe_place_words;
}

/// A thermometer of a store.
struct Probe {
    std::string name{};
    ProbePlace place = ProbePlace::bed;
    std::optional<double> radius_m{};  //!< from the axis, of one in the bed [m]
    std::optional<double> height_m{};  //!< above the floor of the store, of one in the bed [m]
};

/// Temperatures of a store and its power. A power applies from the time of the row before it; the
/// first row is the start. A value that was not read is not a number.
struct StoreLog {
    std::vector<double> hours{};    //!< from any start, increasing [h]
    std::vector<double> power_w{};  //!< into the bank, mean since the previous row [W]
    std::vector<double> air_c{};    //!< around the store [°C]
    std::vector<Probe> probes{};
    std::vector<std::vector<double>> temperature_c{};  //!< one list for each probe [°C]
    Sentences remarks{};                               //!< what was omitted

    [[nodiscard]] std::size_t size() const { return hours.size(); }
    /// Number of temperature readings.
    [[nodiscard]] std::size_t readings() const;
};

/// Throws InvalidInput naming row and probe: lists of unequal length, times out of order, power
/// below zero, impossible temperatures, a probe outside the store. A thermocouple whose value is
/// constant while the others change, or that reads an open circuit (below -150 or above 1250 °C),
/// is omitted and reported in `remarks`.
[[nodiscard]] StoreLog checked_log(StoreLog log);

/// A log from CSV: columns `hours`, `power_w`, `air_c`, and one for each probe: `wall_c`, `lid_c`,
/// `sheath_c`, or `bed_c@0.12,0.40` (radius and height in meters); an empty cell is a missing
/// reading. Throws InvalidInput naming line and column.
[[nodiscard]] StoreLog store_log_from_csv(std::string_view text);

}  // namespace heatmatch
