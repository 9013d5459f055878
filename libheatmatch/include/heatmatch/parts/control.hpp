#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// Breaking capacity of a device: a pair of voltage and current, with the number of poles wired in
/// series.
struct DcRating {
    double v_dc = 0.0;  //!< [V]
    double a_dc = 0.0;  //!< at that voltage [A]
    int poles = 1;      //!< in series

    friend bool operator==(const DcRating&, const DcRating&) = default;
};

/// How a control closes again.
enum class ResetKind { automatic, manual, latching, replace, by_hand };
inline constexpr auto reset_kind_words =
    std::to_array<std::string_view>({"automatic", "manual", "latching", "replace", "by hand"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ResetKind) {
    return reset_kind_words;
}

/// The state a control usually fails in.
enum class FailureKind { closed, open, either, none_known };
inline constexpr auto failure_kind_words =
    std::to_array<std::string_view>({"closed", "open", "either", "none known"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(FailureKind) {
    return failure_kind_words;
}

/// What makes a control open.
enum class OperatedKind { by_hand, by_coil, by_temperature, by_current, by_signal };
inline constexpr auto operated_kind_words = std::to_array<std::string_view>(
    {"by hand", "by coil", "by temperature", "by current", "by signal"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(OperatedKind) {
    return operated_kind_words;
}

/// A fault that a control detects.
enum class DetectedFault { earth_fault, arc_fault };
inline constexpr auto detected_fault_words =
    std::to_array<std::string_view>({"earth fault", "arc fault"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(DetectedFault) {
    return detected_fault_words;
}

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
    std::optional<ResetKind> reset{};
    std::optional<FailureKind> failure{};
    std::optional<int> poles{};                //!< poles that open together
    std::optional<OperatedKind> operated{};    //!< by its family if not stated
    std::optional<bool> contains_fuses{};      //!< fuses inside, behind switching contacts
    std::optional<DetectedFault> detects{};    //!< empty if not stated
    std::optional<double> terminal_limit_c{};  //!< highest temperature of its terminals [°C]
    std::optional<bool> semiconductor{};       //!< by its family if not stated
    Provenance provenance{};
    Price price{};  //!< per piece
    std::string notes{};

    friend bool operator==(const Control&, const Control&) = default;
};

/// The field table of a control.
[[nodiscard]] std::span<const Field> control_fields();

/// Checks across fields: a part marked `ac_only` has no dc ratings, and no pair has more poles than
/// the part. Throws InvalidInput.
void check_control(const Control& control);

/// Whether a control that has opened stays open until it is reset by hand.
[[nodiscard]] bool stays_open(const Control& control);

/// What makes it open, as stated or by its family; empty where neither is known.
[[nodiscard]] std::optional<OperatedKind> operated_of(const Control& control);

/// Whether it switches by a semiconductor, as stated or by its family; empty where neither is
/// known.
[[nodiscard]] std::optional<bool> is_semiconductor(const Control& control);

/// A fuse or a fuse holder that is not a switch: opened under load it sustains an arc.
[[nodiscard]] bool is_fuse(const Control& control);

/// Whether it can serve as a string fuse: it opens by current, and not for earth faults or surges.
[[nodiscard]] bool protects_strings(const Control& control);

/// Poles that open together: as stated, or at least as in the printed pairs; empty where neither is
/// known.
[[nodiscard]] std::optional<int> poles_of(const Control& control);

/// Breaking current at that voltage with that many poles in series [A]: the largest of the printed
/// pairs with a sufficient voltage (pairs are not interpolated); empty if none.
[[nodiscard]] std::optional<double> breaking_current_a(const Control& control, double voltage_v,
                                                       int poles);

}  // namespace heatmatch
