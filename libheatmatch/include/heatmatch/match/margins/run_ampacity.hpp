#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/parts/ampacity_table.hpp"

namespace heatmatch {

/// Ampacity of the wire of a run by the tables of a code, for its installation method. If the site
/// states no code, the smaller of both.
struct RunAmpacity {
    std::optional<LayingMethod> method{};  //!< empty in the bed of a store: no code has a table
    bool terminals = false;                //!< the table value for the temperature of its terminals
    bool unmarked = false;                 //!< device terminals whose temperature limit is not
                                           //!< stated
    std::optional<double> table_a{};       //!< before correction, for codes with a table value [A]
    std::optional<double> corrected_a{};  //!< corrected for air, grouping and roof, where known [A]
    /// Highest ampacity of this wire by any installation method [A].
    std::optional<double> most_a{};
    bool whole = false;        //!< every applicable code has both values for this wire
    bool beyond = false;       //!< a value is omitted: it is for cooler wire or cooler air
    bool wet_unknown = false;  //!< the limit of its insulation in this wet place is not known
    double rating_c = 0.0;
    bool limited = false;           //!< insulation or metal limit below that of the table column
    std::optional<int> together{};  //!< loaded conductors in the correction
    double roof_k = 0.0;            //!< added to the air temperature above a roof [K]
    std::string source{};           //!< of the smallest value
    std::vector<std::string> missing{};  //!< fields to state
};

/// Installation method of a run, by the tables of current. Out and back of one run lie together
/// unless one conductor is stated; a run stated to lie in metal lies in a raceway.
[[nodiscard]] std::optional<LayingMethod> laying_method(const Surroundings& around);

/// The ampacity of a run with a wire. By the NEC joints count as 60 °C up to 1 AWG and 75 °C above;
/// plugs, the end at an element and joints for warm and hot places have their own limits. The
/// terminals of a device in the run count as marked, up to 75 °C; unmarked ones as 60 °C whatever
/// the size, although the code permits 75 °C for large ones. @cite nec-110-14 @cite nec-310-15-roof
[[nodiscard]] RunAmpacity run_ampacity(const Circuit& circuit, const RunParts& run,
                                       const Site& site);
/// The same with other surroundings of the same kind.
[[nodiscard]] RunAmpacity run_ampacity(const Circuit& circuit, const RunParts& run,
                                       const Site& site, const Surroundings& around);

}  // namespace heatmatch
