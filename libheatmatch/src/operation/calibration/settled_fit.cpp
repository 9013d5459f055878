#include "settled_fit.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace heatmatch {

namespace {

constexpr double described_error = 0.7;  // of a logarithm: a factor of two

struct Normal {  //!< J' W J and J' W r of two numbers
    double a = 0.0;
    double b = 0.0;
    double c = 0.0;
    Sought right{};

    [[nodiscard]] double determinant() const { return a * c - b * b; }
};

std::array<std::vector<double>, 2> slopes_at(const StoreFit& fit, const Sought& at) {
    constexpr double nudge = 0.01;
    std::array<std::vector<double>, 2> slope;
    for (std::size_t i = 0; i < 2; ++i) {
        Sought up = at;
        Sought down = at;
        up[i] += nudge;
        down[i] -= nudge;
        slope[i] = fit.model(up);
        const std::vector<double> low = fit.model(down);
        for (std::size_t k = 0; k < low.size(); ++k) {
            slope[i][k] = (slope[i][k] - low[k]) / (2.0 * nudge);
        }
    }
    return slope;
}

Normal normal_of(const ModelError& error, const std::array<std::vector<double>, 2>& slope,
                 std::span<const double> left) {
    return {.a = error.weighed(slope[0], slope[0]),
            .b = error.weighed(slope[0], slope[1]),
            .c = error.weighed(slope[1], slope[1]),
            .right = {error.weighed(slope[0], left), error.weighed(slope[1], left)}};
}

Normal with_described(Normal normal, const Sought& at, const Sought& described) {
    constexpr double weight = 1.0 / (described_error * described_error);
    normal.a += weight;
    normal.c += weight;
    normal.right[0] -= weight * (at[0] - described[0]);
    normal.right[1] -= weight * (at[1] - described[1]);
    return normal;
}

double unlikely(const ModelError& error, std::span<const double> left, const Sought& at,
                const Sought& described) {
    const double k = (at[0] - described[0]) / described_error;
    const double loss = (at[1] - described[1]) / described_error;
    return error.weighed(left, left) + k * k + loss * loss;
}

/// Moves both numbers to the weighted least squares solution.
void settle(SettledFit& result, const StoreFit& fit, const ModelError& error,
            const Sought& described) {
    constexpr int most_turns = 30;
    constexpr double furthest = 0.7;  // a factor of two per iteration
    constexpr double close_enough = 1e-5;
    constexpr double most_damping = 1e9;
    double damping = 0.0;
    result.settled = false;
    for (int turn = 0; turn < most_turns && !result.settled && damping <= most_damping; ++turn) {
        const Normal bare = normal_of(error, slopes_at(fit, result.at), result.left);
        result.tells = bare.determinant() > 1e-12 * bare.a * bare.c;
        if (!result.tells) return;
        const Normal normal = with_described(bare, result.at, described);
        const double before = unlikely(error, result.left, result.at, described);
        for (int trial = 0; trial < 12; ++trial) {
            Normal damped = normal;
            damped.a *= 1.0 + damping;
            damped.c *= 1.0 + damping;
            const double d = damped.determinant();
            const Sought by{
                std::clamp((damped.c * damped.right[0] - damped.b * damped.right[1]) / d, -furthest,
                           furthest),
                std::clamp((damped.a * damped.right[1] - damped.b * damped.right[0]) / d, -furthest,
                           furthest)};
            const Sought next{result.at[0] + by[0], result.at[1] + by[1]};
            std::vector<double> left = fit.residuals(next);
            const bool near = std::fabs(by[0]) < close_enough && std::fabs(by[1]) < close_enough;
            if (unlikely(error, left, next, described) <= before || near) {
                result.settled = near;
                result.at = next;
                result.left = std::move(left);
                damping = damping < 1e-3 ? 0.0 : damping / 10.0;
                break;
            }
            damping = std::max(1e-2, damping * 10.0);
        }
    }
}

}  // namespace

SettledFit settled_fit(const StoreFit& fit, const Sought& described) {
    SettledFit result{.at = described, .left = fit.residuals(described)};
    constexpr int rounds = 3;
    const ModelError at_first = fit.model_error(described);
    ModelError error = at_first;
    error.take_noise_of(result.left);
    for (int round = 0; round < rounds; ++round) {
        settle(result, fit, error, described);
        if (!result.tells) return result;
        error = fit.model_error(result.at);
        error.widen_place(at_first);
        error.take_noise_of(result.left);
    }
    // A log with larger residuals than noise and model explain has errors of other kinds.
    const double worse = std::max(
        1.0, error.weighed(result.left, result.left) / (static_cast<double>(fit.readings()) - 2.0));
    const std::array<std::vector<double>, 2> slope = slopes_at(fit, result.at);
    const Normal normal =
        with_described(normal_of(error, slope, result.left), result.at, described);
    // N^-1 M N^-1, with M the covariance of the normal equations' right-hand side.
    const double d = normal.determinant();
    const double of_described = 1.0 / (described_error * described_error);
    const double m_a = worse * error.spread(slope[0], slope[0]) + of_described;
    const double m_b = worse * error.spread(slope[0], slope[1]);
    const double m_c = worse * error.spread(slope[1], slope[1]) + of_described;
    const auto [a, b, c] = std::array{normal.c / d, -normal.b / d, normal.a / d};
    const double k_k = a * a * m_a + 2.0 * a * b * m_b + b * b * m_c;
    const double k_loss = a * b * m_a + (a * c + b * b) * m_b + b * c * m_c;
    const double loss_loss = b * b * m_a + 2.0 * b * c * m_b + c * c * m_c;
    result.error = {std::sqrt(k_k), std::sqrt(loss_loss)};
    result.correlation = k_loss / std::sqrt(k_k * loss_loss);
    return result;
}

}  // namespace heatmatch
