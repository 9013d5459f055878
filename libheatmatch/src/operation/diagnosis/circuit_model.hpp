#pragma once

#include <array>
#include <cstddef>
#include <limits>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

/// Quantities that are read, as indices.
enum ReadQuantity : std::size_t {
    array_v,
    bank_v,
    bank_a,
    open_v,
    short_a,
    element_ohm,
    bank_ohm,
    irradiance,
    panel_temperature,
    quantities
};
using Values = std::array<double, quantities>;

/// Which element of the bank was measured with the ohmmeter.
enum class Measured { sound, faulty, either };

/// The circuit under one explanation.
struct Plant {
    SingleDiode diode{};
    double sun_factor = 1.0;          //!< irradiance on the cells over that at the meter
    double extra_series_ohm = 0.0;    //!< of each panel
    double series = 1.0;              //!< voltage of a complete string, in panels
    int parallel = 1;                 //!< complete strings
    double odd_series = 0.0;          //!< voltage of one incomplete string; 0: none
    double element_ohm = 1.0;         //!< cold
    double faulty_element_ohm = 0.0;  //!< cold, of the faulty element; 0: none
    Measured measured = Measured::sound;
    double bank_ohm = 1.0;  //!< cold; infinite if open
    double hot_ratio = 1.0;
    double wire_ohm = 0.0;
    double joint_ohm = 0.0;        //!< additional, between the two voltmeters
    double array_joint_ohm = 0.0;  //!< additional, before the voltmeter at the array
};

/// Which of the readings that depend on the sun are needed.
struct Wanted {
    bool load = true;
    bool open = true;
    bool shorted = true;
};

/// Meter readings at that irradiance and cell temperature.
[[nodiscard]] Values predict(const Plant& plant, double irradiance_w_m2, double cell_c,
                             const Wanted& wanted = {});

}  // namespace heatmatch
