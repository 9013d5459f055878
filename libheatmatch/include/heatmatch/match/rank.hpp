#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "heatmatch/match/candidate.hpp"

namespace heatmatch {

/// How a ranking is made.
struct RankOptions {
    std::vector<Condition> conditions{{1000.0, 45.0}, {600.0, 35.0}, {200.0, 25.0}};
    int max_bank = 4;                   //!< elements in one bank, at most
    std::size_t top = 200;              //!< candidates kept
    std::size_t keep_rejected = 200;    //!< rejected ones kept, the best first
    double coil_temperature_c = 300.0;  //!< assumed until the store's model sets it [°C]
    /// Called with the share done, 0 to 1; returning false stops with an Interrupted.
    std::function<bool(double)> progress{};
};

/// Checks the options of a ranking or an assessment. Throws InvalidInput naming field and range.
void check_rank_options(const RankOptions& options);

/// Thrown where the progress callback asked to stop.
class Interrupted : public std::exception {
  public:
    [[nodiscard]] const char* what() const noexcept override { return "interrupted"; }
};

/// Candidates in order, and what became of the others.
struct Ranking {
    std::vector<Candidate> candidates{};           //!< without danger, best first
    std::vector<Candidate> rejected{};             //!< with danger, most power first
    std::map<std::string, std::size_t> reasons{};  //!< margin -> how many it rejected
    std::vector<Candidate> pareto{};  //!< none is better in power, headroom and price at once
    std::size_t evaluated = 0;        //!< pairings looked at
    std::vector<Condition> conditions{};
    std::vector<std::string> remarks{};  //!< what the reader should know first
};

/// Ranks every owned panel group x allowed element x bank x hook-up. The screen looks at all of
/// them; full margins are computed for what is kept. Order: mean power in steps of 1 %, fewest
/// margins not assessed, largest of the smallest headrooms, lowest price to buy. Candidates with a
/// danger, or above the budget, are counted in `reasons`. Reads `parts` only: several threads may
/// rank at once. Throws InvalidInput or NotFound for an installation that cannot be understood.
[[nodiscard]] Ranking rank(const Parts& parts, const Installation& installation,
                           const RankOptions& options = {});

/// One line of the light record over which the front is taken.
struct Trade {
    double power_w = 0.0;
    double headroom = 0.0;
    double price = 0.0;
};
/// Indices of the trades that no other one equals or beats in all three (of equal ones the first),
/// by falling power.
[[nodiscard]] std::vector<std::size_t> pareto_front(const std::vector<Trade>& trades);

}  // namespace heatmatch
