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

/// What a device may break: volts and amperes as a pair, with the poles that are wired in series.
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

/// A fault that a control finds.
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
    std::optional<int> poles{};                //!< that it has and opens together
    std::optional<OperatedKind> operated{};    //!< by its family unless told
    std::optional<bool> contains_fuses{};      //!< fuses are inside, behind contacts that switch
    std::optional<DetectedFault> detects{};    //!< nothing unless told
    std::optional<double> terminal_limit_c{};  //!< highest temperature of its terminals [°C]
    std::optional<bool> semiconductor{};       //!< by its family unless told
    Provenance provenance{};
    Price price{};  //!< each
    std::string notes{};

    friend bool operator==(const Control&, const Control&) = default;
};

/// The field table of a control.
[[nodiscard]] std::span<const Field> control_fields();

/// Checks what no single field can: an ac-only part has no dc ratings, no pair is for more poles
/// than there are. Throws InvalidInput.
void check_control(const Control& control);

/// Whether a control that has opened stays so until somebody does something about it.
[[nodiscard]] bool stays_open(const Control& control);

/// What makes it open, told or by its family; nothing where neither tells.
[[nodiscard]] std::optional<OperatedKind> operated_of(const Control& control);

/// Whether it switches by a semiconductor, told or by its family; nothing where neither tells.
[[nodiscard]] std::optional<bool> is_semiconductor(const Control& control);

/// A fuse or a holder of fuses that is no switch: opened under load it holds an arc.
[[nodiscard]] bool is_fuse(const Control& control);

/// Whether it may stand for a string fuse: it opens by current, and not for earth or surges.
[[nodiscard]] bool protects_strings(const Control& control);

/// Poles that open together: as told, or as the printed pairs have at least; nothing where neither
/// tells.
[[nodiscard]] std::optional<int> poles_of(const Control& control);

/// The current the device may break at that voltage with that many poles in series [A]: the
/// largest of the printed pairs whose volts reach it (pairs are not interpolated); nothing if none.
[[nodiscard]] std::optional<double> breaking_current_a(const Control& control, double voltage_v,
                                                       int poles);

}  // namespace heatmatch
