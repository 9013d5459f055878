#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/space_balance.hpp"
#include "heatmatch/match/candidate/bill.hpp"
#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/lazy_margins.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// An irradiance and a cell temperature at which a ranking computes power.
struct Condition {
    double irradiance_w_m2 = 1000.0;   //!< [W/m2]
    double cell_temperature_c = 45.0;  //!< [°C]

    friend bool operator==(const Condition&, const Condition&) = default;
};

/// One circuit with its numbers.
struct Candidate {
    Circuit circuit{};
    std::vector<Delivered> delivered{};    //!< one for each condition
    std::optional<Season> season{};        //!< empty without weather
    std::optional<double> price_to_buy{};  //!< typical total of the bill; empty if not known
    std::string currency{};
    Bill bill{};                          //!< all parts, owned and to buy
    Site site{};                          //!< site for which it is assessed
    Extremes bright{};                    //!< load on its elements in cold, bright weather
    std::optional<SpaceBalance> space{};  //!< space heated by its store; empty without one
    /// The parts from which it was chosen; null if it was read from a file.
    std::shared_ptr<const Parts> catalog{};
    Sentences remarks{};  //!< of an assessment: remarks for the reader
    int like_it = 0;      //!< in a ranking: pairings of the same load that are folded under it
    /// margins(), once they are read; clear it after a change of circuit, site or bright.
    LazyMargins made{};

    /// Every named check of its circuit at its site, made when first read.
    [[nodiscard]] const std::vector<Margin>& margins() const&;
    /// Of a temporary: a copy, so that a loop over them can outlast it.
    [[nodiscard]] std::vector<Margin> margins() const&&;

    /// Power averaged over the conditions, typical and at the ends of its band [W].
    [[nodiscard]] double mean_power_w() const;
    [[nodiscard]] double mean_power_low_w() const;
    [[nodiscard]] double mean_power_high_w() const;
    /// The objective of a ranking: energy over the season [kWh], mean power [W] without weather.
    [[nodiscard]] double objective() const;
    /// The most severe margin that was assessed; null if there is none.
    [[nodiscard]] const Margin* worst() const;
    [[nodiscard]] Severity severity() const;
    /// The worst severity of any margin with every unstated fact at its careful end.
    [[nodiscard]] Severity worst_severity() const;
    /// Where that is a danger but the likely case is not: the one fact that decides, once stated.
    [[nodiscard]] std::optional<UnstatedFact> deciding_fact() const;
    /// Smallest headroom of the margins whose exceedance is a danger; 1 if none was assessed.
    [[nodiscard]] double smallest_headroom() const;
    /// The margin of that headroom; null where none of those could be assessed.
    [[nodiscard]] const Margin* nearest_limit() const;
    /// Whether the sheath temperature is unknown although a store is described. The smallest
    /// headroom then omits the most important limit.
    [[nodiscard]] bool heat_unknown() const;
    [[nodiscard]] int not_assessed() const;
    /// All assumptions, each once.
    [[nodiscard]] std::vector<Assumption> assumed() const;
};

/// The circuit with all results: power at the conditions, load on its elements, bill. Margins are
/// computed when they are read. `catalog` has the controls for devices that are needed.
[[nodiscard]] Candidate evaluate(const Circuit& circuit, const Installation& installation,
                                 const std::vector<Condition>& conditions, const Parts& catalog);

}  // namespace heatmatch
