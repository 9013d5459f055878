#include "heatmatch/heat/hot_tail.hpp"

#include "base/sentences.hpp"
#include "bed_checks.hpp"
#include "sentences.hpp"
#include "tail_input.hpp"
#include "tail_layout.hpp"
#include "tail_surroundings.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

/// Heat losses at the temperatures of a solution.
TailLosses losses_at(const HotTail& tail, const TailSurroundings& around, const FinChain& chain,
                     const LaidTail& layout, double box_c) {
    const std::vector<double>& joint_c = chain.joint_c();
    const bool box = tail.place == TerminalPlace::in_box;
    TailLosses losses{.box_c = box_c};
    if (layout.beyond) {
        losses.sheath_w_mk = around.sheath_w_mk(
            0.5 * (joint_c[layout.first_wire - 1] + joint_c[layout.first_wire - 2]),
            box ? box_c : tail.air_c);
    }
    if (box) {
        const std::size_t after = std::min(layout.first_wire, joint_c.size() - 1);
        losses.box_wire_w_mk =
            around.wire_in_box_w_mk(0.5 * (joint_c[layout.first_wire - 1] + joint_c[after]), box_c);
    }
    const bool pieces = layout.first_piece + near_pieces.size() < layout.segments.size();
    for (std::size_t i = 0; pieces && i < near_pieces.size(); ++i) {
        const std::size_t end = layout.first_piece + i;
        const double mean_c = 0.5 * (joint_c[end - 1] + joint_c[end]);
        const double least = mean_c < around.rest_c() ? 0.0 : around.far_wire_w_mk();
        losses.wire_w_mk[i] = std::max(least, around.wire_w_mk(mean_c));
    }
    return losses;
}

double change(const TailLosses& before, const TailLosses& after) {
    double sum = std::fabs(after.sheath_w_mk - before.sheath_w_mk) +
                 std::fabs(after.box_wire_w_mk - before.box_wire_w_mk);
    for (std::size_t i = 0; i < near_pieces.size(); ++i) {
        sum += std::fabs(after.wire_w_mk[i] - before.wire_w_mk[i]);
    }
    return sum;
}

/// Air in the box, warmed by the heat of sheath and wire in it [°C].
double box_temperature(const HotTail& tail, const Wire& wire, const FinChain& chain,
                       const LaidTail& layout) {
    const std::size_t last = layout.first_wire - 1;
    const FinSegment& inside = chain.segments()[last];
    const double in = layout.beyond
                          ? chain.flow_w(last, 0.0) + inside.heat_w_m * inside.length_m
                          : chain.flow_w(last, std::isinf(inside.length_m) ? 0.0 : inside.length_m);
    const double out = chain.flow_w(layout.first_piece, 0.0);
    const double made =
        layout.joint_heat[last] + tail.current_a * tail.current_a * tail.box_wire_m *
                                      resistance_ohm_per_m(wire, chain.joint_c()[last]);
    return tail.air_c + std::max(0.0, in + made - out) / (tail.box_area_m2 * tail.box_u_w_m2k);
}

TailTemperatures run_away(TailTemperatures result) {
    result.chain.reset();
    result.runaway = true;
    result.heated_end_c = result.terminal_c = result.far_wire_c = hottest_c;
    return result;
}

}  // namespace

TailTemperatures tail_temperatures(const HotTail& tail, const Wire& wire,
                                   const Insulation* insulation) {
    check_hot_tail(tail);
    TailTemperatures result{.air_c = tail.air_c};
    const TailSurroundings around(tail, wire, insulation, result.assumed);
    const TailLayout plan(tail, wire, around);
    const bool box = tail.place == TerminalPlace::in_box;
    result.assumed.push_back(
        {"element end", "tube wall, cold pin and packing",
         say<"heat.tail_end">(with<"wall">(tube_wall_share),
                              with<"pin">(cold_pin_share, unit::none, 4),
                              with<"magnesia">(magnesia_w_mk, unit::watt_per_m_k)),
         from_memory()});
    if (box) {
        result.assumed.push_back(
            {"terminal box", "surface and heat transfer",
             say<"heat.surface">(with<"area">(tail.box_area_m2, unit::square_metre),
                                 with<"transfer">(tail.box_u_w_m2k, unit::watt_per_m2_k)),
             from_memory()});
    }
    if (around.runs_away()) return run_away(result);
    TailLosses losses{.box_c = tail.air_c};
    losses.sheath_w_mk = around.sheath_w_mk(0.5 * (tail.bed_c + tail.air_c), tail.air_c);
    losses.box_wire_w_mk = box ? around.wire_in_box_w_mk(tail.air_c, tail.air_c) : 0.0;
    losses.wire_w_mk.fill(around.far_wire_w_mk());
    LaidTail layout;
    constexpr int rounds = 12;
    for (int round = 0; round < rounds; ++round) {
        layout = plan.lay(losses);
        if (layout.runaway) return run_away(result);
        result.chain.emplace(layout.segments, layout.joint_heat);
        const FinChain& chain = *result.chain;
        const double box_c = box ? box_temperature(tail, wire, chain, layout) : tail.air_c;
        const double moved = std::fabs(box_c - losses.box_c);
        const TailLosses next = losses_at(tail, around, chain, layout, box_c);
        const double changed = change(losses, next);
        losses = next;
        if (moved < 1e-3 && changed < 1e-5) break;
    }
    const FinChain& chain = *result.chain;
    result.first_wire = layout.first_wire;
    result.heated_end_c = chain.joint_c().front();
    if (tail.place != TerminalPlace::buried) result.wall_c = chain.joint_c()[layout.wall];
    result.terminal_c = chain.joint_c()[layout.first_wire - 1];
    if (box) result.box_c = losses.box_c;
    const FinSegment& far = layout.segments.back();
    result.far_wire_c = far.environment_c + far.heat_w_m / far.loss_w_mk;
    for (std::size_t i = 1; i < layout.segments.size(); ++i) {
        if (i < layout.first_wire) result.terminal_distance_m += layout.segments[i].length_m;
    }
    return result;
}

double TailTemperatures::wire_c(double from_terminal_m) const {
    if (!chain) return hottest_c;
    double distance = std::max(0.0, from_terminal_m);
    std::size_t segment = first_wire;
    const std::vector<FinSegment>& segments = chain->segments();
    while (distance > segments[segment].length_m) distance -= segments[segment++].length_m;
    return chain->temperature_c(segment, distance);
}

std::optional<double> TailTemperatures::distance_for_limit_m(double limit_c) const {
    if (!chain || far_wire_c >= limit_c) return std::nullopt;
    const std::vector<FinSegment>& segments = chain->segments();
    double begins = 0.0;
    for (std::size_t i = first_wire; i + 1 < segments.size(); ++i) begins += segments[i].length_m;
    // The last segment approaches far_wire_c exponentially.
    const FinSegment& last = segments.back();
    const double above = chain->temperature_c(segments.size() - 1, 0.0) - far_wire_c;
    if (above > limit_c - far_wire_c) {
        return begins +
               std::log(above / (limit_c - far_wire_c)) / std::sqrt(last.loss_w_mk / last.ka_w_m_k);
    }
    // Back along the wire to the first place that is too hot.
    constexpr int steps = 200;
    for (int step = steps - 1; step >= 0 && begins > 0.0; --step) {
        double hot = begins * step / steps;
        if (wire_c(hot) <= limit_c) continue;
        double cool = begins * (step + 1) / steps;
        for (int halving = 0; halving < 50; ++halving) {
            const double middle = 0.5 * (hot + cool);
            (wire_c(middle) > limit_c ? hot : cool) = middle;
        }
        return cool;
    }
    return 0.0;
}

}  // namespace heatmatch
