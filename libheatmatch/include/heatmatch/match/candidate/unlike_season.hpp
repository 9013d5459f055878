#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/solar/plane_nodes.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// The sun on each panel of an array of several groups, made from one sky.
struct ArraySun {
    std::vector<std::shared_ptr<const Weather>>
        planes{};  //!< each plane, shade and rear light once
    /// Of each group: its plane, and that of its shaded substrings where shade falls on some only.
    struct OfGroup {
        std::size_t lit = 0;
        std::optional<std::size_t> shaded{};
    };
    std::vector<OfGroup> groups{};
    double brightest_w_m2 = 0.0;  //!< of any row on any of the planes

    /// The panels in that condition and their places, string by string, without nodes. A panel with
    /// shaded substrings is there twice: with those, and with the others.
    [[nodiscard]] PlacedArray placed(const UnlikeArray& array, PanelState state) const;
    [[nodiscard]] std::vector<const Weather*> all() const;
};

/// Which share of the rear light of bifacial panels counts.
enum class RearEnd { none, low, typical, high };

/// `weather` is that of the site's plane. Throws InvalidInput where it has no sky and a group needs
/// one.
[[nodiscard]] ArraySun array_sun(const UnlikeArray& array, const Weather& weather, const Site& site,
                                 RearEnd rear = RearEnd::typical);

struct SeasonOptions {
    std::vector<int> months{};
    bool exact = false;  //!< every row of the weather
    std::optional<double> price_to_buy{};
};

/// The season of a circuit with an array of unlike panels, as season_of() gives it for equal ones.
/// One or two planes are condensed together; more take every row. Cloud within the step is in the
/// band where all groups are in one plane.
[[nodiscard]] Season unlike_season(const Circuit& circuit, const Weather& weather, const Site& site,
                                   const SeasonOptions& options);

}  // namespace heatmatch
