#pragma once

#include "element_load.hpp"

#include <cstdint>
#include <limits>
#include <optional>

#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

inline constexpr double unknown_price = std::numeric_limits<double>::infinity();

/// An array with its runs, in numbers.
struct Wiring : ArrayNumbers {
    double cold_voltage_v = 0.0;  //!< of the array
    double run_price = 0.0;       //!< of chosen wire; infinite if unknown
    Screened screened{};          //!< over the margins that do not depend on the element
    std::uint32_t reason = 0;
    int not_assessed = 0;
    bool doubtful = false;               //!< an unstated fact may make it a danger
    bool settled = false;                //!< its margins that decide a recommendation are assessed
    std::optional<double> terminal_c{};  //!< where the wire meets the elements
};

/// The wiring of an array without runs and devices.
[[nodiscard]] Wiring plain_wiring(const PanelInService& panel, Hookup panels,
                                  const Installation& installation);

/// The wiring of a circuit with the hook-up of its bank. `reason` stays 0.
[[nodiscard]] Wiring wiring_of(const Circuit& circuit, const Installation& installation);

/// The same without the run at the element: a lower bound of its price and number of margins.
[[nodiscard]] Wiring wiring_before_element(Circuit circuit, const Installation& installation);

}  // namespace heatmatch
