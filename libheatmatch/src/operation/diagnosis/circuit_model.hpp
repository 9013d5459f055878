#pragma once

#include <array>
#include <cstddef>
#include <limits>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

/// What is read, as indices.
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

/// Which element of the bank the ohmmeter was on.
enum class Measured { sound, faulty, either };

/// The circuit as an explanation has it.
struct Plant {
    SingleDiode diode{};
    double sun_factor = 1.0;          //!< sun on the cells over that on the meter
    double extra_series_ohm = 0.0;    //!< of each panel
    double series = 1.0;              //!< panels' worth of volts of a whole string
    int parallel = 1;                 //!< whole strings
    double odd_series = 0.0;          //!< of one more string that has lost something; 0: none
    double element_ohm = 1.0;         //!< cold
    double faulty_element_ohm = 0.0;  //!< cold, of the one that has the fault; 0: none has
    Measured measured = Measured::sound;
    double bank_ohm = 1.0;  //!< cold; infinite where it is open
    double hot_ratio = 1.0;
    double wire_ohm = 0.0;
    double joint_ohm = 0.0;        //!< extra, between the two voltmeters
    double array_joint_ohm = 0.0;  //!< extra, before the voltmeter at the array
};

/// Which of the readings that depend on the sun are wanted.
struct Wanted {
    bool load = true;
    bool open = true;
    bool shorted = true;
};

/// What the meters show in that sun, with cells at that temperature.
[[nodiscard]] Values predict(const Plant& plant, double irradiance_w_m2, double cell_c,
                             const Wanted& wanted = {});

}  // namespace heatmatch
