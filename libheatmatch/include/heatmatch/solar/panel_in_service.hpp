#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/bifaciality.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/setting/owned.hpp"
#include "heatmatch/solar/cold_voltage.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

namespace heatmatch {

/// How much of the light on its back a panel turns into current as that on its front: the
/// bifaciality, with a band of what frames and rails shade, of ground that is not even and of the
/// ends of short rows. Nothing at the low end where `rear_blocked` is unstated.
/// @cite upm-structure-shading
struct RearShare {
    double low = 0.0;
    double typical = 0.0;
    double high = 0.0;

    [[nodiscard]] bool none() const { return high <= 0.0; }
    friend bool operator==(const RearShare&, const RearShare&) = default;
};

/// An owned panel as it is today, beside the same panel when new.
struct PanelInService {
    Panel given{};                    //!< as in the catalog
    Panel panel{};                    //!< filled with class defaults
    double record_low_c = 0.0;        //!< that the cold voltage is for [°C]
    DatasheetFit as_new{};            //!< from the label: what margins are judged with
    SingleDiode today{};              //!< aged or measured: what energy is computed with
    double current_factor = 1.0;      //!< today over new, typical
    double current_factor_low = 1.0;  //!< with age and power tolerance at their low ends
    double current_factor_high = 1.0;
    double voltage_factor = 1.0;  //!< today over new
    bool measured = false;
    ColdVoltage cold{};         //!< of one panel
    double i_sc_limit_a = 0.0;  //!< larger of label and measured, at 1000 W/m2 [A]
    RearShare rear{};           //!< of the light on the back, for energy
    bool rear_blocked = false;  //!< by a wall or a roof
    std::vector<Assumption> assumed{};
    Sentences remarks{};  //!< for example a bypassed section

    /// The short-circuit current that parts are judged by: with the most light on the back [A].
    [[nodiscard]] double bright_isc_a() const {
        return i_sc_limit_a * rear_current_factor(panel, rear_blocked);
    }
    /// The same panel with an unstated bifaciality at its careful end.
    [[nodiscard]] PanelInService at_careful_end() const;
};

/// Describes an owned panel. Measured volts and amperes, with their sun and temperature, win over
/// the age; without either the panel counts as new. Age takes 0.5 % a year (median) from the
/// current, 0.1 to 0.9 for the band. Throws InvalidInput for a label no diode can have.
/// @cite jordan-kurtz-2012
[[nodiscard]] PanelInService panel_in_service(const OwnedPanels& owned, const Panel& panel,
                                              double record_low_c);

}  // namespace heatmatch
