#include "heatmatch/solar/cell_temperature.hpp"

namespace heatmatch {

double noct_cell_temperature_c(double irradiance_w_m2, double air_c, double noct_c) {
    return air_c + irradiance_w_m2 * (noct_c - 20.0) / 800.0;
}

double faiman_cell_temperature_c(double irradiance_w_m2, double air_c, double wind_m_s,
                                 const FaimanCooling& cooling) {
    return air_c + irradiance_w_m2 / (cooling.still_w_m2k + cooling.wind_w_m2k_per_ms * wind_m_s);
}

double wind_factor(double wind_m_s, const FaimanCooling& cooling) {
    return (cooling.still_w_m2k + cooling.wind_w_m2k_per_ms) /
           (cooling.still_w_m2k + cooling.wind_w_m2k_per_ms * wind_m_s);
}

}  // namespace heatmatch
