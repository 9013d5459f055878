#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// Glazing, wall or roof of a heated space.
struct Cover {
    std::string id{};
    std::string label{};
    double u_w_m2k = 0.0;                  //!< typical [W/m2K]
    std::optional<double> u_low_w_m2k{};   //!< [W/m2K]
    std::optional<double> u_high_w_m2k{};  //!< [W/m2K]
    Provenance provenance{};
    Price price{};  //!< per m2
    std::string notes{};

    friend bool operator==(const Cover&, const Cover&) = default;
};

/// The field table of a cover.
[[nodiscard]] std::span<const Field> cover_fields();

/// Checks across fields: low <= typical <= high. Throws InvalidInput.
void check_cover(const Cover& cover);

}  // namespace heatmatch
