#pragma once

#include "match/rank/group_seasons.hpp"

#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "heatmatch/match/candidate/unlike_season.hpp"
#include "heatmatch/match/circuit/unlike_array.hpp"
#include "heatmatch/match/plan/array_bound.hpp"
#include "heatmatch/match/plan/array_family.hpp"
#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

namespace heatmatch {

/// Resistances in the curve of an unlike array by which a search compares it: within 1e-4 of one
/// with twice as many. Those plans that remain are summed again.
inline constexpr std::size_t resistances_of_search = 32;

/// Energy of one array over the season: that of equal panels by the curve of one.
struct ArraySeason {
    std::shared_ptr<const EnergyCurve> curve{};
    int panels = 1;       //!< 1 for a curve of the whole array
    double factor = 1.0;  //!< resistance of the array over that of the curve

    /// Energy into a bank behind its wire [kWh].
    [[nodiscard]] double kwh(double bank_ohm, double wire_ohm) const;
};

/// Energy of the arrays of a family: bounds at once, curves when they are needed.
class ArrayEnergies {
  public:
    ArrayEnergies(const Parts& parts, const Installation& installation, const RankOptions& options,
                  const std::shared_ptr<const Weather>& weather, const ArrayFamily& family);

    /// The group of an array of equal strings of equal panels; empty for other arrays.
    [[nodiscard]] std::optional<std::size_t> only_group(const FamilyArray& array) const;
    /// The array's season, made when first read.
    [[nodiscard]] const ArraySeason& season(std::size_t array);
    [[nodiscard]] bool has_season(std::size_t array) const { return made_.contains(array); }
    /// Makes the seasons of several arrays side by side.
    void prepare(std::span<const std::size_t> arrays);
    /// Upper bounds of the energy of an array into each resistance, always the same ones, and last
    /// into any [kWh].
    [[nodiscard]] const std::vector<double>& at_most_kwh(std::size_t array,
                                                         std::span<const double> ohm);
    /// Energy of these panels, each at its maximum power point all the time [kWh].
    [[nodiscard]] double largest_kwh(const PanelCounts& panels) const;
    /// Days of the season.
    [[nodiscard]] double days() const;
    [[nodiscard]] const Sentences& remarks() const;

  private:
    /// Nodes of the planes of some groups.
    struct NodeSet {
        std::vector<WeatherNodes> nodes{};
        std::vector<std::size_t> places{};  //!< of each plane in the nodes, where it is used
        ArrayBound bound{};
    };
    using PlaneSet = std::vector<bool>;

    [[nodiscard]] const NodeSet& nodes_of(const FamilyArray& array);
    [[nodiscard]] ArraySeason equal_panels(const FamilyArray& array, std::size_t group);
    [[nodiscard]] ArraySeason unlike_panels(const FamilyArray& array, const NodeSet& set) const;

    const Installation& installation_;
    const RankOptions& options_;
    const ArrayFamily& family_;
    std::shared_ptr<const Weather> weather_;
    GroupSeasons seasons_;
    UnlikeArray groups_{};               //!< of the yard, without strings
    ArraySun sun_{};                     //!< on the planes of the groups
    std::vector<double> largest_kwh_{};  //!< of one panel of each group
    std::map<PlaneSet, NodeSet> sets_{};
    std::map<std::pair<std::size_t, int>, std::shared_ptr<const EnergyCurve>> curves_{};
    std::map<std::size_t, ArraySeason> made_{};
    std::map<std::size_t, std::vector<double>> at_most_kwh_{};
};

}  // namespace heatmatch
