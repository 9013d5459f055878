#pragma once

#include "begun_circuit.hpp"

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "heatmatch/match/circuit/filled_store.hpp"

namespace heatmatch {

/// What the circuits of one store have on clear days. All have one sky, in which the brightest
/// plane reaches the irradiance at which its circuit is judged; at each hour a circuit has that of
/// the brightest of its own planes. Every group has to state its plane: that of the site, which
/// serves for its energy, could be kinder than its own.
class ClearPowers {
  public:
    using Facing =
        std::pair<std::optional<double>, std::optional<double>>;  //!< tilt, azimuth [deg]

    explicit ClearPowers(const std::vector<BegunCircuit>& all);

    /// The days of a circuit beside others; empty where they count as all in full sun at once.
    [[nodiscard]] const ClearDays& of(std::size_t circuit) const { return days_[circuit]; }
    /// Whether two circuits have the same planes. They are then judged at full power together.
    [[nodiscard]] bool same_planes(std::size_t a, std::size_t b) const;
    /// That the planes differ, but their sun at an hour is not known.
    [[nodiscard]] const std::vector<Assumption>& assumed() const { return assumed_; }

  private:
    std::vector<ClearDays> days_{};
    std::vector<std::vector<Facing>> facings_{};  //!< of each circuit, in order
    std::vector<Assumption> assumed_{};
};

}  // namespace heatmatch
