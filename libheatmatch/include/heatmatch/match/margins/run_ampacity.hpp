#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/parts/ampacity_table.hpp"

namespace heatmatch {

/// What the tables of a code leave to the wire of a run, as it is laid. Where the site states no
/// code, the smaller of both.
struct RunAmpacity {
    std::optional<LayingMethod> method{};  //!< nothing in the bed of a store: no code has a table
    bool terminals = false;                //!< the table is that of its terminals
    bool unmarked = false;                 //!< those of a device, for what they stand is not told
    std::optional<double> table_a{};       //!< before correction, of those that have one [A]
    std::optional<double> corrected_a{};  //!< for air, company and roof, of those that have one [A]
    /// No way of laying this wire has more [A].
    std::optional<double> most_a{};
    bool whole = false;        //!< every code that counts has both, of this wire in its place
    bool beyond = false;       //!< a figure is left out: it is for a cooler wire, in cooler air
    bool wet_unknown = false;  //!< what its insulation stands in this wet place is not known
    double rating_c = 0.0;
    bool limited = false;           //!< insulation or metal stand less than the column's conductor
    std::optional<int> together{};  //!< conductors under load that it was corrected for
    double roof_k = 0.0;            //!< counted above the air around it [K]
    std::string source{};           //!< of the smallest
    std::vector<std::string> missing{};  //!< what would be needed
};

/// How a run is laid, as tables of current tell it. Out and back of one run lie together unless
/// one conductor is stated; what is stated to lie in metal lies in a raceway.
[[nodiscard]] std::optional<LayingMethod> laying_method(const Surroundings& around);

/// The ampacity of a run of the circuit that has a wire. By the NEC joints count as 60 °C up to
/// 1 AWG and 75 °C above; plugs, the end at an element and joints for warm and hot places have
/// their own limits. Where a device sits its terminals count as marked, up to 75 °C; unmarked as
/// 60 °C, whatever the size: the code allows large ones 75 °C. @cite nec-110-14
/// @cite nec-310-15-roof
[[nodiscard]] RunAmpacity run_ampacity(const Circuit& circuit, const RunParts& run,
                                       const Site& site);
/// The same with other surroundings of its kind.
[[nodiscard]] RunAmpacity run_ampacity(const Circuit& circuit, const RunParts& run,
                                       const Site& site, const Surroundings& around);

}  // namespace heatmatch
