#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// A plug, crimp, block or joint between two stretches of wire or at a terminal.
struct Connector {
    std::string id{};
    std::string label{};
    std::string family{};
    double limit_c = 0.0;                      //!< [°C]
    std::optional<double> voltage_rating_v{};  //!< [V]
    std::optional<double> current_rating_a{};  //!< [A]
    std::string place{};                       //!< where it belongs: cold end, warm end, hot end
    Provenance provenance{};
    Price price{};  //!< each
    std::string notes{};

    friend bool operator==(const Connector&, const Connector&) = default;
};

/// The field table of a connector.
[[nodiscard]] std::span<const Field> connector_fields();

}  // namespace heatmatch
