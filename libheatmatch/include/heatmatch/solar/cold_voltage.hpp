#pragma once

#include <optional>
#include <string>

#include "heatmatch/parts/panel.hpp"

namespace heatmatch {

/// Open-circuit voltage of one panel at the record low, and its derivation.
struct ColdVoltage {
    double v_oc = 0.0;          //!< at the record low [V]
    double factor = 1.0;        //!< over the value at 25 °C
    double v_oc_at_25_c = 0.0;  //!< larger of label and measured [V]
    bool from_table = false;    //!< the value of the code's table was larger
    std::string source{};
};

/// Voc at the record low by the label's linear coefficient, which is 0.07 to 0.23 % above the
/// single diode. Where the coefficient is a class default, the larger of it and the code's table
/// for crystalline silicon. @cite nec-690-7
[[nodiscard]] ColdVoltage cold_voltage(const Panel& panel, double record_low_c,
                                       std::optional<double> measured_v_oc_at_25_c = std::nullopt);

/// Correction factor of the code's table for crystalline silicon; 1 above 25 °C; the last row (-36
/// to -40 °C) is 1.25 and also applies below. @cite nec-690-7
[[nodiscard]] double cold_voltage_table_factor(double ambient_c);

}  // namespace heatmatch
