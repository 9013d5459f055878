#pragma once

#include <memory>
#include <vector>

#include "heatmatch/match/candidate/rank_options.hpp"
#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// The season of each group of panels, on its own plane and in its own shade. Groups of equal plane
/// and shade share one.
class GroupSeasons {
  public:
    GroupSeasons() = default;
    GroupSeasons(const std::shared_ptr<const Weather>& weather, const Parts& parts,
                 const Installation& installation, const RankOptions& options);

    /// Null for a group that is not ranked.
    [[nodiscard]] const SeasonWeather* of(std::size_t group) const {
        return of_group_[group] < 0 ? nullptr : &at(of_group_[group]);
    }
    /// That of the first group that is ranked; null without weather.
    [[nodiscard]] const SeasonWeather* first() const { return entries_.empty() ? nullptr : &at(0); }
    /// The one with the brightest row; null without weather.
    [[nodiscard]] const SeasonWeather* brightest() const;

  private:
    struct Entry {
        OwnedPanels owned{};
        std::shared_ptr<const Weather> weather{};
        SeasonWeather season{};
    };
    [[nodiscard]] const SeasonWeather& at(int entry) const {
        return entries_[static_cast<std::size_t>(entry)].season;
    }

    std::vector<Entry> entries_{};
    std::vector<int> of_group_{};
};

}  // namespace heatmatch
