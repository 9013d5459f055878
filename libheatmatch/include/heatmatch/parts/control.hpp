#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// What a device may break: volts and amperes as a pair, with the poles that are wired in series.
struct DcRating {
    double v_dc = 0.0;  //!< [V]
    double a_dc = 0.0;  //!< at that voltage [A]
    int poles = 1;      //!< in series

    friend bool operator==(const DcRating&, const DcRating&) = default;
};

/// A switch, breaker, fuse, thermostat, limit, relay, contactor or meter.
struct Control {
    std::string id{};
    std::string label{};
    std::string family{};
    std::vector<DcRating> dc_ratings{};      //!< empty: none is printed
    std::optional<bool> ac_only{};           //!< marked for alternating current only
    std::optional<double> v_ac{};            //!< [V]
    std::optional<double> a_ac{};            //!< [A]
    std::optional<bool> polarised{};         //!< breaks in one direction only
    std::string utilisation_mark{};          //!< DC-21B, DC-PV2, gPV ...
    std::optional<double> own_limit_c{};     //!< highest temperature of its own body [°C]
    std::optional<double> sense_low_c{};     //!< lowest set point [°C]
    std::optional<double> sense_high_c{};    //!< highest set point [°C]
    std::optional<double> differential_k{};  //!< [K]
    std::string reset{};                     //!< of reset_kinds
    std::string failure{};                   //!< of failure_kinds
    Provenance provenance{};
    Price price{};  //!< each
    std::string notes{};

    friend bool operator==(const Control&, const Control&) = default;
};

/// The field table of a control.
[[nodiscard]] std::span<const Field> control_fields();

/// Checks what no single field can: an ac-only part has no dc ratings. Throws InvalidInput.
void check_control(const Control& control);

/// The current the device may break at that voltage with that many poles in series [A]: the
/// largest of the printed pairs whose volts reach it (pairs are not interpolated); nothing if none.
[[nodiscard]] std::optional<double> breaking_current_a(const Control& control, double voltage_v,
                                                       int poles);

}  // namespace heatmatch
