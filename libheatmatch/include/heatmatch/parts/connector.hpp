#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// Place for which a joint is made.
enum class ConnectorPlace { array_side, cold_end, warm_end, hot_end, nowhere };
inline constexpr auto connector_place_words =
    std::to_array<std::string_view>({"array side", "cold end", "warm end", "hot end", "nowhere"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ConnectorPlace) {
    return connector_place_words;
}

/// A plug, crimp, block or joint between two stretches of wire or at a terminal.
struct Connector {
    std::string id{};
    std::string label{};
    std::string family{};
    double limit_c = 0.0;                      //!< [°C]
    std::optional<double> voltage_rating_v{};  //!< [V]
    std::optional<double> current_rating_a{};  //!< [A]
    std::optional<ConnectorPlace> place{};
    Provenance provenance{};
    Price price{};  //!< per piece
    std::string notes{};

    friend bool operator==(const Connector&, const Connector&) = default;
};

/// The field table of a connector.
[[nodiscard]] std::span<const Field> connector_fields();

}  // namespace heatmatch
