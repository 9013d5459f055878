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
#include "heatmatch/solar/string_curve.hpp"

namespace heatmatch {

/// Ratio of current from rear light to that from front light: the bifaciality, with a band for
/// shading by frames and rails, uneven ground and the ends of short rows. 0 at the low end where
/// `rear_blocked` is not stated. @cite upm-structure-shading
struct RearShare {
    double low = 0.0;
    double typical = 0.0;
    double high = 0.0;

    [[nodiscard]] bool none() const { return high <= 0.0; }
    friend bool operator==(const RearShare&, const RearShare&) = default;
};

/// An owned panel in its present condition, and the same panel when new.
struct PanelInService {
    Panel given{};                    //!< as in the catalog
    Panel panel{};                    //!< completed with class defaults
    double record_low_c = 0.0;        //!< temperature for the cold voltage [°C]
    DatasheetFit as_new{};            //!< from the label: used for margins
    SingleDiode today{};              //!< aged or measured: used for energy
    double current_factor = 1.0;      //!< present over new, typical
    double current_factor_low = 1.0;  //!< with age and power tolerance at their low ends
    double current_factor_high = 1.0;
    double voltage_factor = 1.0;  //!< present over new
    bool measured = false;
    ColdVoltage cold{};         //!< of one panel
    double i_sc_limit_a = 0.0;  //!< larger of label and measured, at 1000 W/m2 [A]
    RearShare rear{};           //!< of rear light, for energy
    bool rear_blocked = false;  //!< by a wall or a roof
    bool blocking = false;      //!< a blocking diode in each string
    /// Drop of that diode [V].
    [[nodiscard]] double blocking_v() const { return blocking ? diode_drop_v : 0.0; }
    int shaded_substrings = 0;  //!< under the shade of the group; 0: all, or there is none
    std::vector<Assumption> assumed{};
    Sentences remarks{};  //!< for example a bypassed section

    /// Short-circuit current for the assessment of parts: with the most rear light [A].
    [[nodiscard]] double bright_isc_a() const {
        return i_sc_limit_a * rear_current_factor(panel, rear_blocked);
    }
    /// The same panel with an unstated bifaciality at its careful end.
    [[nodiscard]] PanelInService at_careful_end() const;
};

/// Describes an owned panel. Measured voltage and current, with their irradiance and temperature,
/// take precedence over the age; without either the panel counts as new. Age reduces the current by
/// 0.5 % a year (median), 0.1 to 0.9 for the band. Throws InvalidInput for a label that no diode
/// can have. @cite jordan-kurtz-2012
[[nodiscard]] PanelInService panel_in_service(const OwnedPanels& owned, const Panel& panel,
                                              double record_low_c);

}  // namespace heatmatch
