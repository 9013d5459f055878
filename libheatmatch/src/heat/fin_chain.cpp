#include "heatmatch/heat/fin_chain.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

/// x coth x, x/sinh x and tanh(x/2)/x stay finite for a segment without heat loss.
double x_coth(double x) {
    return x < 1e-4 ? 1.0 + x * x / 3.0 : x / std::tanh(x);
}
double x_over_sinh(double x) {
    if (x > 700.0) return 0.0;
    return x < 1e-4 ? 1.0 - x * x / 6.0 : x / std::sinh(x);
}
double tanh_half_over(double x) {
    return x < 1e-4 ? 0.5 - x * x / 24.0 : std::tanh(0.5 * x) / x;
}
/// (1 - exp(-x))/x.
double mean_decay(double x) {
    return x < 1e-8 ? 1.0 : -std::expm1(-x) / x;
}

double inverse_length(const FinSegment& segment) {
    return std::sqrt(segment.loss_w_mk / segment.ka_w_m_k);
}

double far_c(const FinSegment& segment) {
    return segment.environment_c + segment.heat_w_m / segment.loss_w_mk;
}

[[noreturn]] void refuse(std::size_t segment, const char* field, double value, const char* allowed,
                         Sentence remedy) {
    throw InvalidInput({.part = "fin segment " + std::to_string(segment + 1),
                        .field = field,
                        .value = format_number(value),
                        .allowed = allowed,
                        .remedy = std::move(remedy)});
}

void check(std::span<const FinSegment> segments, const FinEnds& ends) {
    if (segments.empty()) {
        throw InvalidInput({.part = "fin chain",
                            .field = "segments",
                            .value = "(none)",
                            .allowed = "one or more",
                            .remedy = say<"heat.what_conducts">()});
    }
    bool anchored = ends.left_c.has_value() || ends.right_c.has_value();
    for (std::size_t i = 0; i < segments.size(); ++i) {
        const FinSegment& each = segments[i];
        const bool infinite = std::isinf(each.length_m);
        const bool open_left = i == 0 && !ends.left_c;
        const bool open_right = i + 1 == segments.size() && !ends.right_c;
        if (!(each.length_m >= shortest_segment_m)) {
            refuse(i, "length_m", each.length_m, "> 0, 1 nm at least", say<"heat.leave_out">());
        }
        if (infinite && open_left == open_right) {
            refuse(i, "length_m", each.length_m, "finite", say<"heat.outer_end">());
        }
        if (!(each.ka_w_m_k > 0.0) || std::isinf(each.ka_w_m_k)) {
            refuse(i, "ka_w_m_k", each.ka_w_m_k, "> 0 and finite", say<"heat.metal_and_section">());
        }
        const bool loses = infinite ? each.loss_w_mk > 0.0 : each.loss_w_mk >= 0.0;
        if (!loses || std::isinf(each.loss_w_mk)) {
            refuse(i, "loss_w_mk", each.loss_w_mk, infinite ? "> 0 and finite" : ">= 0 and finite",
                   say<"heat.endless">());
        }
        if (!std::isfinite(each.environment_c)) {
            refuse(i, "environment_c", each.environment_c, "finite", say<"heat.what_is_around">());
        }
        if (!std::isfinite(each.heat_w_m)) {
            refuse(i, "heat_w_m", each.heat_w_m, "finite", say<"heat.heat_in_metre">());
        }
        anchored = anchored || each.loss_w_mk > 0.0;
    }
    if (!anchored) {
        refuse(0, "loss_w_mk", 0.0, "> 0 in one segment at least", say<"heat.hold_an_end">());
    }
}

/// Rows of a tridiagonal system: diagonal, coupling to the next node, right-hand side.
struct Nodes {
    std::vector<double> diagonal;
    std::vector<double> link;
    std::vector<double> heat;
};

/// Adds the contribution of an infinite segment to its one end.
void add_endless(Nodes& nodes, const FinSegment& segment, std::size_t node) {
    const double conductance = std::sqrt(segment.loss_w_mk * segment.ka_w_m_k);
    nodes.diagonal[node] += conductance;
    nodes.heat[node] += conductance * far_c(segment);
}

/// Adds the contribution of a segment to its ends, node `left` and the next.
void add_segment(Nodes& nodes, const FinSegment& segment, std::size_t left) {
    const double x = inverse_length(segment) * segment.length_m;
    const double along = segment.ka_w_m_k / segment.length_m;
    const double share = tanh_half_over(x);
    const double gain =
        along * x * x * share * segment.environment_c + segment.heat_w_m * segment.length_m * share;
    for (const std::size_t node : {left, left + 1}) {
        nodes.diagonal[node] += along * x_coth(x);
        nodes.heat[node] += gain;
    }
    nodes.link[left] -= along * x_over_sinh(x);
}

/// Fixes a node's temperature and eliminates it from its neighbors' equations.
void hold(Nodes& nodes, std::size_t node, double at_c) {
    if (node > 0) {
        nodes.heat[node - 1] -= nodes.link[node - 1] * at_c;
        nodes.link[node - 1] = 0.0;
    }
    if (node + 1 < nodes.diagonal.size()) {
        nodes.heat[node + 1] -= nodes.link[node] * at_c;
        nodes.link[node] = 0.0;
    }
    nodes.diagonal[node] = 1.0;
    nodes.heat[node] = at_c;
}

/// Thomas algorithm for a symmetric matrix.
std::vector<double> solve(Nodes nodes) {
    const std::size_t count = nodes.diagonal.size();
    for (std::size_t i = 1; i < count; ++i) {
        const double factor = nodes.link[i - 1] / nodes.diagonal[i - 1];
        nodes.diagonal[i] -= factor * nodes.link[i - 1];
        nodes.heat[i] -= factor * nodes.heat[i - 1];
    }
    std::vector<double> temperature(count);
    for (std::size_t i = count; i-- > 0;) {
        const double next = i + 1 < count ? nodes.link[i] * temperature[i + 1] : 0.0;
        temperature[i] = (nodes.heat[i] - next) / nodes.diagonal[i];
    }
    return temperature;
}

}  // namespace

FinChain::FinChain(std::span<const FinSegment> segments, std::span<const double> heat_at_joint_w,
                   const FinEnds& ends)
    : segments_(segments.begin(), segments.end()) {
    check(segments, ends);
    const std::size_t count = segments.size() + 1;
    Nodes nodes{std::vector<double>(count), std::vector<double>(count), std::vector<double>(count)};
    const bool left_infinite = std::isinf(segments.front().length_m) && !ends.left_c;
    const bool right_infinite = std::isinf(segments.back().length_m) && !ends.right_c;
    for (std::size_t i = 0; i < segments.size(); ++i) {
        if (std::isinf(segments[i].length_m)) {
            add_endless(nodes, segments[i], i == 0 && left_infinite ? 1 : i);
        } else {
            add_segment(nodes, segments[i], i);
        }
    }
    for (std::size_t i = 0; i < heat_at_joint_w.size() && i + 1 < segments.size(); ++i) {
        nodes.heat[i + 1] += heat_at_joint_w[i];
    }
    // The node beyond an infinite end has no neighbor.
    if (left_infinite) hold(nodes, 0, far_c(segments.front()));
    if (right_infinite) hold(nodes, count - 1, far_c(segments.back()));
    if (ends.left_c) hold(nodes, 0, *ends.left_c);
    if (ends.right_c) hold(nodes, count - 1, *ends.right_c);
    const std::vector<double> temperature = solve(std::move(nodes));
    joint_c_.assign(temperature.begin() + 1, temperature.end() - 1);
    if (!left_infinite) left_c_ = temperature.front();
    if (!right_infinite) right_c_ = temperature.back();
}

double FinChain::end_c(std::size_t segment, bool right) const {
    if (right) return segment < joint_c_.size() ? joint_c_[segment] : *right_c_;
    return segment > 0 ? joint_c_[segment - 1] : *left_c_;
}

double FinChain::temperature_c(std::size_t segment, double distance_m) const {
    const FinSegment& at = segments_.at(segment);
    const double m = inverse_length(at);
    if (std::isinf(at.length_m)) {
        const double near = end_c(segment, segment == 0 && !left_c_);
        return far_c(at) + (near - far_c(at)) * std::exp(-m * distance_m);
    }
    const double to_right = at.length_m - distance_m;
    const double whole = mean_decay(2.0 * m * at.length_m) * at.length_m;
    // sinh(m (L - x))/sinh(mL) and sinh(m x)/sinh(mL), without overflow and 0/0.
    const double of_left =
        std::exp(-m * distance_m) * to_right * mean_decay(2.0 * m * to_right) / whole;
    const double of_right =
        std::exp(-m * to_right) * distance_m * mean_decay(2.0 * m * distance_m) / whole;
    const double of_heat = distance_m * to_right * mean_decay(m * distance_m) *
                           mean_decay(m * to_right) / (1.0 + std::exp(-m * at.length_m));
    return at.environment_c + of_left * (end_c(segment, false) - at.environment_c) +
           of_right * (end_c(segment, true) - at.environment_c) +
           at.heat_w_m / at.ka_w_m_k * of_heat;
}

double FinChain::flow_w(std::size_t segment, double distance_m) const {
    const FinSegment& at = segments_.at(segment);
    const double m = inverse_length(at);
    if (std::isinf(at.length_m)) {
        const bool leftwards = segment == 0 && !left_c_;
        const double outward = std::sqrt(at.loss_w_mk * at.ka_w_m_k) *
                               (end_c(segment, leftwards) - far_c(at)) * std::exp(-m * distance_m);
        return leftwards ? -outward : outward;
    }
    const double to_right = at.length_m - distance_m;
    const double whole = 2.0 * mean_decay(2.0 * m * at.length_m) * at.length_m;
    const double of_left = std::exp(-m * distance_m) * (1.0 + std::exp(-2.0 * m * to_right));
    const double of_right = std::exp(-m * to_right) * (1.0 + std::exp(-2.0 * m * distance_m));
    // (exp(-m x) - exp(-m (L - x)))/m over 1 + exp(-mL): heat generated here flows to the nearer
    // end.
    const double nearer = std::min(distance_m, to_right);
    const double apart = std::fabs(to_right - distance_m);
    const double of_heat = std::copysign(std::exp(-m * nearer) * apart * mean_decay(m * apart),
                                         to_right - distance_m) /
                           (1.0 + std::exp(-m * at.length_m));
    return at.ka_w_m_k / whole *
               (of_left * (end_c(segment, false) - at.environment_c) -
                of_right * (end_c(segment, true) - at.environment_c)) -
           at.heat_w_m * of_heat;
}

}  // namespace heatmatch
