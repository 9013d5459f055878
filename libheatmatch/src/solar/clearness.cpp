#include "clearness.hpp"

#include "degrees.hpp"

#include <algorithm>
#include <cmath>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

template <class Function>
double clearness_root(Function function, double low, double high) {
    std::uintmax_t steps = 100;
    const auto [left, right] = boost::math::tools::toms748_solve(
        function, low, high, boost::math::tools::eps_tolerance<double>(36), steps);
    return 0.5 * (left + right);
}

/// Integral of (1 - x) exp(mu (x - 1)) from 0 to `end`.
double mass_below(double mu, double end) {
    constexpr double flat = 1e-3;
    if (std::fabs(mu) < flat) {
        const double whole = end - 0.5 * end * end;
        const double first = 0.5 * end * end - end * end * end / 3.0;
        return (whole + mu * first) * std::exp(-mu);
    }
    const double at_end = ((1.0 - end) / mu + 1.0 / (mu * mu)) * std::exp(mu * (end - 1.0));
    const double at_start = (1.0 / mu + 1.0 / (mu * mu)) * std::exp(-mu);
    return at_end - at_start;
}

/// Mean of the density on 0 to 1.
double mean_of(double mu) {
    constexpr double flat = 1e-3;
    // Moments 1/2, 1/6, 1/12 of 1 - x: mean and its slope at mu = 0.
    if (std::fabs(mu) < flat) return 1.0 / 3.0 + mu * (1.0 / 6.0 - 1.0 / 9.0);
    // Scaled by exp(-mu) where that is small, so that nothing overflows.
    const double small = mu > 0.0 ? std::exp(-mu) : 1.0;
    const double large = mu > 0.0 ? 1.0 : std::exp(mu);
    const double mass = (large - small * (1.0 + mu)) / (mu * mu);
    const double moment = (large * (mu - 2.0) + small * (mu + 2.0)) / (mu * mu * mu);
    return moment / mass;
}

}  // namespace

double clearness_quantile(double mean, double share) {
    constexpr double steepest = 450.0;
    const double held = std::clamp(mean, 0.003, 0.995);
    const double mu =
        clearness_root([held](double at) { return mean_of(at) - held; }, -steepest, steepest);
    const double whole = mass_below(mu, 1.0);
    return clearness_root([=](double x) { return mass_below(mu, x) / whole - share; }, 0.0, 1.0);
}

double largest_clearness(const SitePlane& site, const SkyMoment& moment) {
    constexpr double overhead = 0.864;
    const auto clean_sky = [&](double zenith_deg) {
        const SkyIrradiance sky =
            ineichen_clear_sky(zenith_deg, {.elevation_m = site.place.elevation_m,
                                            .linke_turbidity = 1.0,
                                            .extraterrestrial_w_m2 = moment.extraterrestrial_w_m2});
        return sky.ghi_w_m2 / std::cos(radians(zenith_deg));
    };
    return overhead * clean_sky(moment.sun.apparent_zenith_deg) / clean_sky(0.0);
}

double hour_over_day(const SitePlane& site, const SkyMoment& moment) {
    const double sunset = std::acos(std::clamp(
        -std::tan(radians(site.place.latitude_deg)) * std::tan(radians(moment.sun.declination_deg)),
        -1.0, 1.0));
    const double lean = std::sin(sunset - pi / 3.0);
    const double a = 0.409 + 0.5016 * lean;
    const double b = 0.6609 - 0.4767 * lean;
    const double light = std::sin(sunset) - sunset * std::cos(sunset);
    constexpr double dark = 1e-4;  // a day of minutes
    if (light < dark) return 1.0;
    const double mean = a + 0.5 * b * (sunset - std::sin(sunset) * std::cos(sunset)) / light;
    constexpr double darkest = 0.05;  // the fit turns negative at the ends of short days
    return std::max(darkest, a + b * std::cos(radians(moment.sun.hour_angle_deg))) / mean;
}

}  // namespace heatmatch
