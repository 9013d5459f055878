#pragma once

#include "element_load.hpp"
#include "group_seasons.hpp"
#include "load_class.hpp"
#include "match/margins/heat_table.hpp"
#include "settled.hpp"
#include "tally.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// Common data of all pairings of a ranking. Constant except for `reasons`.
struct ScreenContext {
    const Parts* parts = nullptr;
    const Installation* installation = nullptr;
    const RankOptions* options = nullptr;
    const SeasonWeather* season = nullptr;  //!< null: by the conditions
    const GroupSeasons* seasons = nullptr;  //!< of each group; null: `season` for all
    std::vector<PlacedDevice> devices{};
    std::vector<Bank> banks{};
    std::vector<std::shared_ptr<const BankHeat>> heats{};  //!< of each bank; null without a store
    /// The same without lists of assumptions, which the screen does not use.
    std::vector<std::shared_ptr<const BankHeat>> screen_heats{};
    /// The remaining branches of each bank after one has opened; null for one branch, or without a
    /// store.
    std::vector<std::shared_ptr<const BankHeat>> survivors{};
    std::vector<std::shared_ptr<HeatTable>> heat_tables{};  //!< of each bank
    std::vector<std::shared_ptr<SettledBank>> settled{};    //!< of each bank
    /// The run at the element, where no wiring changes it, after those with devices, by name alone.
    std::vector<RunParts> runs_of_bank{};
    std::vector<Hookup> bank_hookups{};
    std::vector<std::vector<BankNumbers>> numbers{};  //!< of the banks of each hook-up
    std::size_t not_fixed = 0;                        //!< banks without a fixed resistance
    bool plain = false;          //!< neither runs nor devices: no wiring to lay out for the screen
    bool branch_runs = false;    //!< the runs depend on the hook-up of the elements
    bool lays_for_heat = false;  //!< the wire at the element is chosen for each bank
    bool relaxed = false;  //!< recommend without every margin assessed, and without a known bill
    std::vector<LoadClass> loads{};  //!< of each bank
    std::unique_ptr<ReasonNames> reasons = std::make_unique<ReasonNames>();

    [[nodiscard]] const SeasonWeather* season_for(std::size_t group) const {
        return seasons == nullptr ? season : seasons->of(group);
    }
};
[[nodiscard]] ScreenContext screen_context(const Parts& parts, const Installation& installation,
                                           const RankOptions& options, const SeasonWeather* season);

/// Every n-th hook-up of a group's panels, from a first one on.
struct HookupShare {
    std::size_t first = 0;
    std::size_t step = 1;
};
/// Screens the pairings of one group of panels, or a share of them, into `tally`.
void screen_group(
    const ScreenContext& context, std::size_t group, HookupShare share, Tally& tally,
    const Pulse& pulse = [] {});

/// Share of a ranking's progress for the screen.
inline constexpr double screening_share = 0.7;
/// Screens every group, on several threads. The result does not depend on their number, except for
/// the counts of reasons where wire is chosen for heat in 32 groups or more.
[[nodiscard]] Tally screen_all(const ScreenContext& context);

/// The circuit without its elements: an array with its runs for a hook-up of elements.
[[nodiscard]] Circuit frame_of(const ScreenContext& context, std::size_t group,
                               const PanelInService& panel, Hookup panels, Hookup bank);

/// That frame with a bank, its heat, and the wire chosen for that heat.
[[nodiscard]] Circuit circuit_of(const ScreenContext& context, const Circuit& frame,
                                 std::size_t bank);

/// Whether a bank's heat is known, or there is no store. The distance of unknown heat from its
/// limit is not known: such a bank is ranked, but is not Pareto-optimal.
[[nodiscard]] bool has_known_heat(const ScreenContext& context, std::size_t bank);

/// An upper bound of the headroom of a bank's heat at that power of one element.
[[nodiscard]] double heat_at_most(const ScreenContext& context, const BankNumbers& numbers,
                                  double element_w);

/// The panels of a group in service.
[[nodiscard]] PanelInService panel_of(const ScreenContext& context, std::size_t group);

}  // namespace heatmatch
