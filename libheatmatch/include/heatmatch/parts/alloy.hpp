#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/interpolation.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// The metal of a heating coil, with its resistance over temperature.
struct Alloy {
    std::string id{};
    std::string label{};
    std::vector<TablePoint> resistance_factor{};  //!< R(T)/R(20 °C)
    std::optional<double> limit_c{};              //!< of the wire itself [°C]
    std::optional<bool> fixed_resistance{};  //!< false: resistance changes by more than half (lamp,
                                             //!< PTC)
    Provenance provenance{};
    Price price{};
    std::string notes{};

    friend bool operator==(const Alloy&, const Alloy&) = default;
};

/// The field table of an alloy.
[[nodiscard]] std::span<const Field> alloy_fields();

}  // namespace heatmatch
