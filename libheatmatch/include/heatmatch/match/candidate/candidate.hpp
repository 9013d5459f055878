#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/space_balance.hpp"
#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/careful_case.hpp"
#include "heatmatch/match/margins/lazy_margins.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// A sun and a cell temperature that a ranking delivers power at.
struct Condition {
    double irradiance_w_m2 = 1000.0;   //!< [W/m2]
    double cell_temperature_c = 45.0;  //!< [°C]

    friend bool operator==(const Condition&, const Condition&) = default;
};

/// One circuit with its numbers.
struct Candidate {
    Circuit circuit{};
    std::vector<Delivered> delivered{};    //!< one for each condition
    std::optional<Season> season{};        //!< nothing without weather
    std::optional<double> price_to_buy{};  //!< nothing if a price is unknown
    std::string currency{};
    Site site{};                          //!< that it is judged at
    Extremes bright{};                    //!< what its elements are exposed to in bright cold
    std::optional<SpaceBalance> space{};  //!< that its store heats; nothing without one
    /// The parts it was chosen among; null where it comes from a file.
    std::shared_ptr<const Parts> catalog{};
    Sentences remarks{};  //!< of an assessment: what the reader should know first
    /// margins(), once they are read; whoever changes circuit, site or bright after that empties
    /// it.
    LazyMargins made{};

    /// Every named check of its circuit at its site, made when first read.
    [[nodiscard]] const std::vector<Margin>& margins() const&;
    /// Of a temporary: its own, so that a loop over them may outlive it.
    [[nodiscard]] std::vector<Margin> margins() const&&;

    /// Power averaged over the conditions, typical and at the ends of its band [W].
    [[nodiscard]] double mean_power_w() const;
    [[nodiscard]] double mean_power_low_w() const;
    [[nodiscard]] double mean_power_high_w() const;
    /// What a ranking orders by: energy over the season [kWh], mean power [W] without weather.
    [[nodiscard]] double merit() const;
    /// The most severe margin that was assessed; null if there is none.
    [[nodiscard]] const Margin* worst() const;
    [[nodiscard]] Severity severity() const;
    /// The worst that any margin may be with every unstated fact at its careful end.
    [[nodiscard]] Severity worst_severity() const;
    /// Where that is a danger which is not likely: the one fact that, stated, would tell.
    [[nodiscard]] std::optional<UnstatedFact> deciding_fact() const;
    /// Smallest headroom of the margins whose passing is a danger; 1 if none was assessed.
    [[nodiscard]] double smallest_headroom() const;
    /// The margin of that headroom; null where none of those could be assessed.
    [[nodiscard]] const Margin* nearest_limit() const;
    /// Whether how hot its sheath gets is not known although a store is described: the smallest
    /// headroom then leaves out the limit that matters most.
    [[nodiscard]] bool heat_unknown() const;
    [[nodiscard]] int not_assessed() const;
    /// What was assumed anywhere, each once.
    [[nodiscard]] std::vector<Assumption> assumed() const;
};

/// The circuit with everything computed: power at the conditions, what its elements are exposed to,
/// the price to buy; its margins are made when they are read.
[[nodiscard]] Candidate evaluate(const Circuit& circuit, const Installation& installation,
                                 const std::vector<Condition>& conditions);

/// What is to be bought for the circuit: elements not owned and wire that was chosen; nothing if a
/// price is unknown.
[[nodiscard]] std::optional<double> price_to_buy(const Circuit& circuit);

}  // namespace heatmatch
