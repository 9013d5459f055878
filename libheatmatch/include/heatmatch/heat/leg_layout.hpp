#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/store_shell.hpp"
#include "heatmatch/parts/element.hpp"

namespace heatmatch {

/// What nobody told of where legs are: then spots are judged with legs as near to each face as they
/// may plausibly be, 20 mm (from memory), and standing or lying, whichever is hotter.
struct UnstatedPlaces {
    bool height = false;  //!< how far up
    bool aside = false;   //!< how far from the middle
    bool way = false;     //!< standing or lying

    static constexpr double clear_m = 0.02;

    friend bool operator==(const UnstatedPlaces&, const UnstatedPlaces&) = default;
};

/// Where the heated legs of a bank lie, seen along them. Legs of one element stand in a row, the
/// elements beside each other, the whole centred in the store.
struct LegLayout {
    struct Leg {
        double x_m = 0.0;  //!< from the axis [m]
        double y_m = 0.0;
    };
    std::vector<Leg> legs{};
    double leg_length_m = 0.0;  //!< heated, of one leg [m]
    double radius_m = 0.0;      //!< of the sheath, or of a pipe over it [m]
    double sheath_radius_m = 0.0;
    std::optional<double> low_m{};  //!< of lower ends, or of lying legs, over the floor; unstated:
                                    //!< centred [m]
    bool lies = false;              //!< flat, x sideways and y upward; else they stand
    double aside_m = 0.0;           //!< the middle of all from the axis [m]
    UnstatedPlaces unstated{};
    Sentence misfit{};                     //!< why it does not fit the store; empty: it fits
    std::vector<double> from_hottest_m{};  //!< distances_m(), once known
    std::vector<Assumption> assumed{};

    [[nodiscard]] double heated_length_m() const {
        return leg_length_m * static_cast<double>(legs.size());
    }
    /// Distances of all legs seen from the hottest, itself first with its radius [m].
    [[nodiscard]] std::vector<double> distances_m() const;
    /// Largest distance of a leg from the axis [m].
    [[nodiscard]] double outer_radius_m() const;
    /// How much more heat meets the nearest spot of a round wall than its mean: the mean over the
    /// legs of `(R² - b²)/(R² - 2 R b cos + b²)`, b from the axis (a line source in a cylinder;
    /// @cite carslaw-jaeger), times the concentration of short legs.
    [[nodiscard]] double wall_concentration(const StoreShell& shell) const;
    /// How far to x they may move until a leg is `clear_m` off the wall [m].
    [[nodiscard]] double room_aside_m(const StoreShell& shell, double clear_m) const;
    /// The same until one is as near as it may plausibly be; to the wall where that is no way.
    [[nodiscard]] double farthest_aside_m(const StoreShell& shell) const;
    /// Whether they fit upright, and lying.
    [[nodiscard]] bool may_stand(const StoreShell& shell) const;
    [[nodiscard]] bool may_lie(const StoreShell& shell) const;
};

/// What is missing to lay the legs of an element.
[[nodiscard]] std::vector<std::string> missing_lengths(const Element& element);

/// The legs of `elements` equal elements in a store. Unknown legs are as many as it takes to fit;
/// unknown spacings are 50 mm between legs and 60 mm between elements (from memory). Throws
/// InvalidInput for missing lengths, for numbers out of range and without an element; what does not
/// fit, or overlaps, is told by `misfit`, and so are more than 1000 legs, which are not laid out.
[[nodiscard]] LegLayout leg_layout(const Element& element, int elements, const Store& store);

}  // namespace heatmatch
