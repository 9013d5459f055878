#include "leg_modes.hpp"

#include <algorithm>
#include <cmath>
#include <complex>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

constexpr double nearest_share = 0.95;  // share of the wall's radius: nearest distance for heat of
                                        // a leg

using Place = std::complex<double>;

Place place_of(const LegLayout::Leg& leg) {
    return {leg.x_m, leg.y_m};
}

/// Position as a share of the wall's radius, limited to the inside.
Place within_wall(const LegLayout::Leg& leg, double wall_m) {
    const Place at = place_of(leg) / wall_m;
    return std::abs(at) > nearest_share ? at * (nearest_share / std::abs(at)) : at;
}

/// The leg, as a share of the wall's radius, where the wall receives the most heat, by the share of
/// a line source: `(1 - b²)/|e - b|²`.
Place nearest_to_hottest(const LegLayout& legs, double wall_m) {
    Place best{0.0, 0.0};
    double most = 0.0;
    for (const LegLayout::Leg& towards : legs.legs) {
        if (std::abs(place_of(towards)) <= 0.0) continue;
        const Place spot = place_of(towards) / std::abs(place_of(towards));
        double sum = 0.0;
        for (const LegLayout::Leg& leg : legs.legs) {
            const Place b = within_wall(leg, wall_m);
            sum += (1.0 - std::norm(b)) / std::norm(spot - b);
        }
        if (sum <= most) continue;
        most = sum;
        best = within_wall(towards, wall_m);
    }
    return best;
}

}  // namespace

LegModes::LegModes(const LegLayout& legs, const LegLayout::Leg& hottest, const StoreShell& shell)
    : legs_(legs), ring_m_(std::hypot(hottest.x_m, hottest.y_m)), wall_m_(shell.radius_m) {
    // Terms up to m sum to ln m + 0.577: those of a leg up to the order at which it is as thick as
    // the wave.
    constexpr double thick = 0.56;
    const double finest = std::floor(thick * ring_m_ / legs.radius_m);
    count_ = static_cast<std::size_t>(std::min(finest, static_cast<double>(most_modes)));
    const Place nearest = nearest_to_hottest(legs, wall_m_);
    to_wall_m_ = wall_m_ * (1.0 - std::abs(nearest));
    if (std::abs(nearest) <= 0.0) return;
    const Place spot = nearest / std::abs(nearest);
    wall_spot_ = {.x_m = spot.real(), .y_m = spot.imag()};
}

LegModes::Waves LegModes::at_wall(const LegLayout::Leg& spot) const {
    Waves waves{};
    for (const LegLayout::Leg& leg : legs_.legs) {
        const Place b = within_wall(leg, wall_m_) * std::conj(place_of(spot));
        Place power = 1.0;
        for (double& wave : waves) wave += (power *= b).real();
    }
    return waves;
}

LegModes::Waves LegModes::at(double x_m, double y_m) const {
    Waves waves{};
    const Place here{x_m, y_m};
    for (const LegLayout::Leg& leg : legs_.legs) {
        const double outer = std::max(std::abs(here), std::abs(place_of(leg)));
        if (outer <= 0.0) continue;
        const Place turn = here * std::conj(place_of(leg)) / (outer * outer);
        Place power = 1.0;
        for (std::size_t m = 0; m < count_; ++m) {
            power *= turn;
            waves[m] += power.real() / static_cast<double>(m + 1);
        }
    }
    return waves;
}

void LegModes::follow(std::span<double> state_w, double power_w, double diffusivity_m2_s,
                      double seconds) const {
    const double reach_m2 = diffusivity_m2_s * seconds;
    const auto relax = [&](double& w, double towards_w, double wave_1_m) {
        w = towards_w + (w - towards_w) * std::exp(-reach_m2 * wave_1_m * wave_1_m);
    };
    // erf(sqrt x) = 1 - (2/pi) integral from 0 to pi/2 of exp(-x/cos²), by the midpoint rule.
    static const std::array<double, rates> faster = [] {
        std::array<double, rates> values{};
        for (std::size_t i = 0; i < rates; ++i) {
            values[i] = 1.0 / std::cos((static_cast<double>(i) + 0.5) * pi / (2.0 * rates));
        }
        return values;
    }();
    for (std::size_t m = 0; m < most_modes; ++m) {
        const auto number = static_cast<double>(m + 1);
        double* own = state_w.data() + m * (rates + 2);
        for (std::size_t i = 0; i < rates && m < count_; ++i) {
            relax(own[i], power_w, number / ring_m_ * faster[i]);
        }
        // First the delay to the wall, then the slowest decay of that term within it, whose number
        // is about the first zero of J_m.
        relax(own[rates], power_w, std::sqrt(6.0) / to_wall_m_);
        relax(own[rates + 1], own[rates], (number + 1.86 * std::cbrt(number)) / wall_m_);
    }
}

double LegModes::lacking(std::span<const double> state_w, const Waves& waves, double power_w) {
    double sum = 0.0;
    for (std::size_t m = 0; m < most_modes; ++m) {
        const double* own = state_w.data() + m * (rates + 2);
        double followed_w = 0.0;
        for (std::size_t i = 0; i < rates; ++i) followed_w += own[i] / rates;
        sum += waves[m] * (power_w - followed_w);
    }
    return sum;
}

double LegModes::wall(std::span<const double> state_w, const Waves& waves, double biot) {
    double sum = 0.0;
    for (std::size_t m = 0; m < most_modes; ++m) {
        sum += 2.0 * waves[m] * state_w[m * (rates + 2) + rates + 1] /
               (static_cast<double>(m + 1) + biot);
    }
    return sum;
}

}  // namespace heatmatch
