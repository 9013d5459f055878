#include "heatmatch/solar/cold_voltage.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

namespace {

struct Band {
    double lowest_c;  //!< of the band, inclusive [°C]
    double factor;
};

// NEC 690.7(A), crystalline and multicrystalline silicon.
constexpr auto bands = std::to_array<Band>({
    {25.0, 1.00},
    {20.0, 1.02},
    {15.0, 1.04},
    {10.0, 1.06},
    {5.0, 1.08},
    {0.0, 1.10},
    {-5.0, 1.12},
    {-10.0, 1.14},
    {-15.0, 1.16},
    {-20.0, 1.18},
    {-25.0, 1.20},
    {-30.0, 1.21},
    {-35.0, 1.23},
    {-40.0, 1.25},
});

}  // namespace

double cold_voltage_table_factor(double ambient_c) {
    for (const Band& band : bands) {
        if (ambient_c >= band.lowest_c) return band.factor;
    }
    return bands.back().factor;
}

ColdVoltage cold_voltage(const Panel& panel, double record_low_c,
                         std::optional<double> measured_v_oc_at_25_c) {
    const FilledPanel filled = fill_class_defaults(panel);
    const double beta = *filled.panel.beta_voc_pct_per_k / 100.0;
    const double linear = 1.0 + beta * (record_low_c - stc_temperature_c);
    ColdVoltage cold{.factor = linear,
                     .v_oc_at_25_c = std::max(panel.v_oc, measured_v_oc_at_25_c.value_or(0.0)),
                     .source = filled.beta_is_default ? "class default" : panel.provenance.source};
    const double table = cold_voltage_table_factor(record_low_c);
    if (filled.beta_is_default && table > linear) {
        cold.factor = table;
        cold.from_table = true;
        cold.source = "nec-690-7";
    }
    cold.v_oc = cold.v_oc_at_25_c * cold.factor;
    return cold;
}

}  // namespace heatmatch
