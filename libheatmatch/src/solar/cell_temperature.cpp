#include "heatmatch/solar/cell_temperature.hpp"

#include <cmath>

namespace heatmatch {

double noct_cell_temperature_c(double irradiance_w_m2, double air_c, double noct_c) {
    return air_c + irradiance_w_m2 * (noct_c - 20.0) / 800.0;
}

double faiman_cell_temperature_c(double irradiance_w_m2, double air_c, double wind_m_s,
                                 const FaimanCooling& cooling) {
    return air_c + irradiance_w_m2 / (cooling.still_w_m2k + cooling.wind_w_m2k_per_ms * wind_m_s);
}

double wind_share_at_panels(double measured_at_m) {
    const auto profile = [](double height_m) { return std::log(67.8 * height_m - 5.42); };
    return measured_at_m <= panel_height_m ? 1.0 : profile(panel_height_m) / profile(measured_at_m);
}

double wind_factor(double wind_m_s, const FaimanCooling& cooling) {
    return (cooling.still_w_m2k + cooling.wind_w_m2k_per_ms) /
           (cooling.still_w_m2k + cooling.wind_w_m2k_per_ms * wind_m_s);
}

}  // namespace heatmatch
