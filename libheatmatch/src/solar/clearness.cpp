#include "clearness.hpp"

#include <algorithm>
#include <cmath>

#include <boost/math/tools/roots.hpp>

namespace heatmatch {

namespace {

constexpr double clear_exponent = 2.6;
constexpr double clear_width = clearest_month - 1.0;
constexpr double cloudiest_clear = 1.0 - clear_width;

/// Mean of the density exp(steepness x) on 0 to 1: 1/(1 - exp(-s)) - 1/s.
double exponential_mean(double steepness) {
    constexpr double flat = 1e-3;
    if (std::fabs(steepness) < flat) return 0.5 + steepness / 12.0;
    return 1.0 / -std::expm1(-steepness) - 1.0 / steepness;
}

/// Value below which a share of that density lies.
double exponential_quantile(double steepness, double share) {
    constexpr double flat = 1e-3;
    if (std::fabs(steepness) < flat) return share + 0.5 * steepness * share * (share - 1.0);
    // Each from the end where nothing overflows.
    if (steepness > 0.0)
        return 1.0 + std::log(share + (1.0 - share) * std::exp(-steepness)) / steepness;
    return std::log(1.0 - share + share * std::exp(steepness)) / steepness;
}

double exponential_steepness(double mean) {
    constexpr double steepest = 500.0;
    const double held = std::clamp(mean, exponential_mean(-steepest), exponential_mean(steepest));
    std::uintmax_t steps = 100;
    const auto [left, right] = boost::math::tools::toms748_solve(
        [held](double at) { return exponential_mean(at) - held; }, -steepest, steepest,
        boost::math::tools::eps_tolerance<double>(40), steps);
    return 0.5 * (left + right);
}

}  // namespace

SkyIndices::SkyIndices(double mean)
    : mean_(std::clamp(mean, 0.0, clearest_month)),
      clear_share_(std::pow(std::min(mean_, 1.0), clear_exponent)) {
    constexpr double hardly_any = 1e-9;
    if (1.0 - clear_share_ < hardly_any) return;
    const double cloudy_mean = (mean_ - clear_share_) / (1.0 - clear_share_);
    steepness_ = exponential_steepness(cloudy_mean / cloudiest_clear);
}

double SkyIndices::at(double share) const {
    const double cloudy_share = 1.0 - clear_share_;
    if (share < cloudy_share)
        return cloudiest_clear * exponential_quantile(steepness_, share / cloudy_share);
    // In a month brighter than its clear air every hour is near the maximum.
    const double middle = std::max(1.0, mean_);
    const double width = clearest_month - middle;
    const double place = clear_share_ > 0.0 ? (share - cloudy_share) / clear_share_ : 0.5;
    return middle + width * (2.0 * place - 1.0);
}

double turbidity_of_clear_hours(double low_c) {
    constexpr double at_freezing = 1.9;
    constexpr double per_k = 0.1;
    constexpr double cleanest = 1.5;
    constexpr double haziest = 5.5;
    return std::clamp(at_freezing + per_k * low_c, cleanest, haziest);
}

}  // namespace heatmatch
