#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// Heat that no plan exceeds, for one reason each [kWh]; beyond the stated family of arrays the
/// first one holds alone.
struct PlanBounds {
    double panels_kwh = 0.0;  //!< each panel at its maximum power point, in any wiring
    double store_kwh = 0.0;   //!< with any bill
    double bill_kwh = 0.0;    //!< with circuits that are each judged alone in the store
};

/// The best plan under another requirement.
struct PlanOffer {
    double headroom = 0.0;              //!< of its checks, at least
    std::optional<double> volts_max{};  //!< of its arrays at the record low [V]
    double kwh = 0.0;                   //!< of the season; 0 where there is none
    std::optional<double> price{};      //!< typical total of its bill
    std::vector<ExistingCircuit> circuits{};
    Sentence said{};
};

/// Panels of a group that a plan leaves out.
struct IdlePanels {
    std::string group{};
    int count = 0;
    Sentence why{};
};

/// The best use of everything owned: circuits that together deliver the most heat of the season
/// without danger, within the budget of their whole bill.
struct Plan {
    std::vector<Candidate> circuits{};  //!< as assess_circuits() assesses them; empty: none
    Installation installation{};        //!< with these circuits
    Bill bill{};                        //!< of all of them
    double kwh = 0.0;                   //!< of the season, all circuits
    double days = 0.0;                  //!< of the season
    double headroom = 0.0;              //!< that every check has at least, as it was required
    /// Heat that no plan of the family exceeds at this headroom [kWh].
    double at_most_kwh = 0.0;
    PlanBounds bounds{};
    std::vector<PlanOffer> others{};  //!< at less headroom or fewer volts
    std::vector<IdlePanels> idle{};
    std::optional<Candidate> single{};  //!< the best circuit alone, at the same headroom
    std::size_t arrays = 0;             //!< of the family
    Sentences remarks{};

    [[nodiscard]] double mean_kwh_per_day() const { return days > 0.0 ? kwh / days : 0.0; }
    /// Share by which a plan of the family may have more heat than this one; a smaller bill is
    /// preferred to the last 1 %.
    [[nodiscard]] double gap() const;
    /// The answer in words: heat and price first, then what limits it, what is left out, and what
    /// else is possible; remarks last.
    [[nodiscard]] Sentences summary() const;
};

/// Finds the best plan of a family: arrays of strings of owned panels whose voltages are alike, and
/// banks of equal elements. It is solved for headroom 0.30, 0.20, 0.10 and 0; the plan has the
/// largest of these with at least 95 % of the heat at 0. Of plans within 1 % of the most heat it is
/// the one with the smallest bill, then the fewest circuits and parts. Throws InvalidInput where
/// panels, elements or weather are missing.
[[nodiscard]] Plan plan(const Parts& catalog, const Installation& installation,
                        const RankOptions& options = {});

}  // namespace heatmatch
