#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/match/candidate.hpp"
#include "heatmatch/match/hookup.hpp"
#include "heatmatch/solar/vector_width.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// How a ranking is made.
struct RankOptions {
    /// What the season's energy is summed over; null: the installation's own twelve months, and
    /// without those the conditions decide.
    std::shared_ptr<const Weather> weather{};
    bool exact_weather = false;  //!< every row of the weather, not condensed: slow, the reference
    std::vector<Condition> conditions{{1000.0, 45.0}, {600.0, 35.0}, {200.0, 25.0}};
    int max_bank = 4;                   //!< elements in one bank, at most
    std::string group{};                //!< only these owned panels; empty: all
    std::string element{};              //!< only this element, an id; empty: all that are allowed
    std::optional<Hookup> panels{};     //!< only this hook-up of panels
    std::optional<Hookup> bank{};       //!< only this hook-up of elements
    std::size_t top = 200;              //!< candidates kept
    std::size_t keep_rejected = 200;    //!< rejected ones kept, the best first
    double coil_temperature_c = 300.0;  //!< assumed until the store's model sets it [°C]
    std::size_t threads = 0;            //!< 0: as many as the machine has
    VectorWidth vector_width = VectorWidth::automatic;
    /// Called with the share done, 0 to 1; returning false stops with an Interrupted.
    Progress progress{};
};

/// Checks the options of a ranking or an assessment. Throws InvalidInput naming field and range.
void check_rank_options(const RankOptions& options);

/// Candidates in order, and what became of the others.
struct Ranking {
    std::vector<Candidate> candidates{};           //!< without danger, best first
    std::vector<Candidate> rejected{};             //!< with danger, most heat first
    std::map<std::string, std::size_t> reasons{};  //!< margin -> how many it rejected
    std::vector<Candidate> pareto{};               //!< no other beats them in everything, see below
    std::size_t evaluated = 0;                     //!< pairings looked at
    std::vector<Condition> conditions{};
    bool by_season = false;              //!< ordered by season energy, not by mean power
    std::vector<std::string> remarks{};  //!< what the reader should know first
};

/// Ranks every owned panel group x allowed element x bank x hook-up. The screen looks at all of
/// them; what it keeps does not grow with their number, but for the front; full margins are
/// computed for what is kept. Order: energy over the season (mean power over the conditions without
/// weather) in steps of 1 %, fewest margins not assessed, largest of the smallest headrooms, lowest
/// price to buy. Candidates with a danger, or above the budget, are counted in `reasons`, each by
/// the first check it fails: array and runs, sheath voltage, terminals, element power, budget.
/// Reads `parts` only: several threads may rank at once. Throws InvalidInput or NotFound for an
/// installation that cannot be understood.
[[nodiscard]] Ranking rank(const Parts& parts, const Installation& installation,
                           const RankOptions& options = {});

}  // namespace heatmatch
