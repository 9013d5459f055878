#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// A family of wire insulation.
struct Insulation {
    std::string id{};
    std::string label{};
    std::string family{};
    double limit_c = 0.0;                 //!< continuous, dry [°C]
    std::optional<double> limit_wet_c{};  //!< continuous, wet [°C]; unknown: not for wet places
    std::optional<double> conductivity_w_mk{};  //!< [W/mK]
    std::string standard{};
    Provenance provenance{};
    Price price{};
    std::string notes{};

    friend bool operator==(const Insulation&, const Insulation&) = default;
};

/// The field table of an insulation.
[[nodiscard]] std::span<const Field> insulation_fields();

}  // namespace heatmatch
