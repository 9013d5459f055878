#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// The outer tube or body of an element.
struct Sheath {
    std::string id{};
    std::string label{};
    double verdict_limit_c = 0.0;  //!< for years of service [°C]
    double hard_limit_c = 0.0;     //!< fails soon above it [°C]
    std::optional<double> emissivity{};
    std::optional<bool> bare{};  //!< the coil is uncovered: a live part
    Provenance provenance{};
    Price price{};
    std::string notes{};

    friend bool operator==(const Sheath&, const Sheath&) = default;
};

/// The field table of a sheath.
[[nodiscard]] std::span<const Field> sheath_fields();

/// Checks across fields: verdict <= hard limit. Throws InvalidInput.
void check_sheath(const Sheath& sheath);

}  // namespace heatmatch
