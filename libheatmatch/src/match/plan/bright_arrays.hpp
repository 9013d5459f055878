#pragma once

#include <cstddef>
#include <map>
#include <variant>

#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

/// Arrays in cold, bright weather, where their banks receive the most power. Each curve is made
/// once, for all banks.
class BrightArrays {
  public:
    /// The element with the most power has at least that much of it [W]: as bright_extremes()
    /// finds it, but for a few of the resistances alone. With so much more wire [ohm].
    [[nodiscard]] double element_at_least_w(std::size_t array, const Circuit& circuit,
                                            const Site& site, double more_ohm);

    /// Power of the whole bank at its typical resistance [W], with so much more wire [ohm].
    [[nodiscard]] double bank_at_least_w(std::size_t array, const Circuit& circuit,
                                         const Site& site, double more_ohm);

  private:
    using Curve = std::variant<ArrayCurve, MixedArrayCurve>;
    [[nodiscard]] const Curve& curve_of(std::size_t array, const Circuit& circuit,
                                        const Site& site);

    std::map<std::size_t, Curve> curves_{};
};

}  // namespace heatmatch
