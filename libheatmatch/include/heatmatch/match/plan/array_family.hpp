#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace heatmatch {

/// A group of equal panels from which arrays are made.
struct FamilyGroup {
    int count = 0;
    double v_mp = 0.0;  //!< of one panel [V]
};

/// Number of panels of each group, in the order of the groups.
using PanelCounts = std::vector<int>;

/// Panels in series. Their order does not matter.
struct FamilyString {
    PanelCounts panels{};
    double v_mp = 0.0;  //!< sum over its panels [V]
};

/// Strings in parallel. Their order does not matter.
struct FamilyArray {
    std::vector<std::size_t> strings{};  //!< in the list of the family, in rising order
    PanelCounts panels{};                //!< of all strings together

    friend bool operator==(const FamilyArray&, const FamilyArray&) = default;
};

/// Which arrays a family has.
enum class FamilyExtent {
    unlike_strings,  //!< any string of the panels, in parallel with any string of like voltage
    equal_strings,   //!< any string of the panels, in parallel with its equals
    equal_panels     //!< equal strings of equal panels
};

/// The arrays that can be made of the panels of some groups.
struct ArrayFamily {
    std::vector<FamilyString> strings{};  //!< by rising voltage
    std::vector<FamilyArray> arrays{};
    FamilyExtent extent = FamilyExtent::unlike_strings;
};

/// Strings in parallel have Vmp sums within this share of the lowest one: far from its Vmp a string
/// adds little power. Common practice, no source.
inline constexpr double like_voltage = 0.25;
/// Most arrays of a family.
inline constexpr std::size_t most_arrays = 150000;

/// All arrays of the largest extent, from `widest` on, that has at most `most` arrays, each once.
/// The last extent has no such limit.
[[nodiscard]] ArrayFamily array_family(std::span<const FamilyGroup> groups,
                                       std::size_t most = most_arrays,
                                       FamilyExtent widest = FamilyExtent::unlike_strings);

/// Whether no group has more panels in `used` than in `counts`.
[[nodiscard]] bool fits_in(const PanelCounts& used, const PanelCounts& counts);

}  // namespace heatmatch
