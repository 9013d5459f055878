#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/store_shell.hpp"
#include "heatmatch/parts/element.hpp"

namespace heatmatch {

/// Which positions of the legs are not stated. Hot spots are then computed with legs as near to
/// each face as is plausible, 20 mm (from memory), and upright or horizontal, whichever is hotter.
struct UnstatedPlaces {
    bool height = false;  //!< height above the floor
    bool aside = false;   //!< distance from the axis
    bool way = false;     //!< upright or horizontal

    static constexpr double clear_m = 0.02;

    friend bool operator==(const UnstatedPlaces&, const UnstatedPlaces&) = default;
};

/// Positions of the heated legs of a bank, in a plane perpendicular to the legs. The legs of one
/// element form a row, the elements are side by side, and the whole is centered in the store.
struct LegLayout {
    struct Leg {
        double x_m = 0.0;  //!< from the axis [m]
        double y_m = 0.0;
    };
    std::vector<Leg> legs{};
    double leg_length_m = 0.0;  //!< heated length of one leg [m]
    double radius_m = 0.0;      //!< of the sheath, or of a pipe over it [m]
    double sheath_radius_m = 0.0;
    std::optional<double> low_m{};  //!< of lower ends, or of horizontal legs, above the floor; not
                                    //!< stated: centered [m]
    bool lies = false;              //!< horizontal, x sideways and y upward; otherwise upright
    double aside_m = 0.0;           //!< distance of the middle of all legs from the axis [m]
    UnstatedPlaces unstated{};
    Sentence misfit{};                     //!< why it does not fit the store; empty if it fits
    std::vector<double> from_hottest_m{};  //!< distances_m(), once computed
    std::vector<Assumption> assumed{};

    [[nodiscard]] double heated_length_m() const {
        return leg_length_m * static_cast<double>(legs.size());
    }
    /// Distances of all legs from the hottest one; the first is its own radius [m].
    [[nodiscard]] std::vector<double> distances_m() const;
    /// Largest distance of a leg from the axis [m].
    [[nodiscard]] double outer_radius_m() const;
    /// Heat flux at the nearest spot of a round wall over the mean: the mean over the legs of `(R²
    /// - b²)/(R² - 2 R b cos + b²)`, b from the axis (a line source in a cylinder; @cite
    /// carslaw-jaeger), times the concentration of short legs.
    [[nodiscard]] double wall_concentration(const StoreShell& shell) const;
    /// Largest move in x until a leg is `clear_m` from the wall [m].
    [[nodiscard]] double room_aside_m(const StoreShell& shell, double clear_m) const;
    /// The same with the plausible clearance, or up to the wall where that leaves no room [m].
    [[nodiscard]] double farthest_aside_m(const StoreShell& shell) const;
    /// Whether the legs fit upright, and horizontally.
    [[nodiscard]] bool may_stand(const StoreShell& shell) const;
    [[nodiscard]] bool may_lie(const StoreShell& shell) const;
};

/// Names of the lengths that are missing to lay out the legs of an element.
[[nodiscard]] std::vector<std::string> missing_lengths(const Element& element);

/// The legs of `elements` equal elements in a store. An unknown number of legs is the smallest that
/// fits; unknown spacings are 50 mm between legs and 60 mm between elements (from memory). Throws
/// InvalidInput for missing lengths, for numbers out of range and without an element. Legs that do
/// not fit or that overlap are reported in `misfit`, as are more than 1000 legs, which are not laid
/// out.
[[nodiscard]] LegLayout leg_layout(const Element& element, int elements, const Store& store);

}  // namespace heatmatch
