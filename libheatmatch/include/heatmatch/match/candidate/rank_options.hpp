#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/parallel.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/match/margins/heat_memory.hpp"
#include "heatmatch/solar/own_weather.hpp"
#include "heatmatch/solar/vector_width.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Results kept between rankings, so that a small change does not require a full computation. Each
/// is stored under all of its inputs: a ranking is the same with and without it. Several threads
/// may use one.
struct RankMemory {
    WeatherMemory weather{};
    HeatMemory heat{};
};

/// Options of a ranking.
struct RankOptions {
    /// Weather over which the season's energy is summed. Null: the twelve months of the
    /// installation; without those, the ranking uses the conditions.
    std::shared_ptr<const Weather> weather{};
    bool exact_weather = false;  //!< every row of the weather, not condensed: slow, for reference
    std::vector<Condition> conditions{{1000.0, 45.0}, {600.0, 35.0}, {200.0, 25.0}};
    int max_bank = 4;                   //!< elements in one bank, at most
    std::optional<double> volts_max{};  //!< of an array at the record low, at most; not given: that
                                        //!< of the goals [V]
    std::string group{};                //!< only these owned panels; empty: all
    std::string element{};              //!< only this element, an id; empty: all that are allowed
    std::optional<Hookup> panels{};     //!< only this hook-up of panels
    std::optional<Hookup> bank{};       //!< only this hook-up of elements
    std::size_t top = 200;              //!< candidates kept
    bool fold = true;  //!< list banks of the same load once, unless one is better in something
    std::size_t keep_rejected = 200;    //!< rejected candidates kept, best first
    double coil_temperature_c = 300.0;  //!< assumed until the store model computes it [°C]
    std::size_t threads = 0;            //!< 0: number of processors
    VectorWidth vector_width = VectorWidth::automatic;
    std::shared_ptr<RankMemory> memory{};  //!< null: nothing is kept
    /// Called with the share done, 0 to 1; returning false stops with an Interrupted.
    Progress progress{};
};

/// Checks the options of a ranking or an assessment. Throws InvalidInput naming field and range.
void check_rank_options(const RankOptions& options);

}  // namespace heatmatch
