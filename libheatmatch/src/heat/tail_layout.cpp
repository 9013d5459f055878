#include "tail_layout.hpp"

#include "tail_input.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

/// Conductivity of the metal along the wire when warm, from memory. @cite incropera
double wire_conductivity(const Wire& wire) {
    if (wire.conductor == ConductorMetal::nickel) return 75.0;
    if (wire.conductor == ConductorMetal::nickel_clad_copper) return 300.0;
    return wire.conductor == ConductorMetal::aluminium ? 230.0 : 390.0;
}

double wire_ka_w_m_k(const Wire& wire) {
    return wire_conductivity(wire) * wire.area_mm2 * 1e-6;
}

/// Heat per meter of the cold pin: mild steel, 0.3 ohm mm2/m when hot, from memory [W/m].
double pin_heat_w_m(const HotTail& tail) {
    constexpr double steel_ohm_mm2_m = 0.3;
    const double pin_mm = cold_pin_share * tail.sheath_diameter_mm;
    const double pin_a = tail.pin_a.value_or(tail.current_a);
    return pin_a * pin_a * steel_ohm_mm2_m / (0.25 * pi * pin_mm * pin_mm);
}

void add(LaidTail& layout, const FinSegment& segment) {
    if (segment.length_m >= shortest_segment_m) layout.segments.push_back(segment);
}

}  // namespace

TailLayout::TailLayout(const HotTail& tail, const Wire& wire, const TailSurroundings& around)
    : tail_(tail),
      wire_(wire),
      around_(around),
      bed_loss_(1.0 /
                shell_k_m_per_w(tail.sheath_diameter_mm / 1000.0, tail.bed_conductivity_w_mk)) {}

LaidTail TailLayout::lay(const TailLosses& losses) const {
    LaidTail layout;
    const double cold =
        sheath_ka_w_m_k(tail_.sheath_diameter_mm, tail_.sheath_conductivity_w_mk, true);
    const double heated =
        sheath_ka_w_m_k(tail_.sheath_diameter_mm, tail_.sheath_conductivity_w_mk, false);
    const double pin = pin_heat_w_m(tail_);
    layout.segments.push_back(
        {endless, heated, bed_loss_, tail_.bed_c, bed_loss_ * (tail_.sheath_c - tail_.bed_c)});
    add(layout, {tail_.cold_length_m, cold, bed_loss_, tail_.bed_c, pin});
    layout.wall = layout.segments.size() - 1;
    const bool box = tail_.place == TerminalPlace::in_box;
    const double lagged_m = tail_.place == TerminalPlace::outside ? tail_.lagging_m : 0.0;
    const double in_lagging_m = std::min(lagged_m, tail_.beyond_m);
    if (tail_.place != TerminalPlace::buried) {
        add(layout, {tail_.wall_m, cold, 0.0, tail_.air_c, pin});
        for (const Lagged& each : lagging(0.0, in_lagging_m)) {
            add(layout, {each.length_m, cold, around_.sheath_in_lagging_w_mk(), each.at_c, pin});
        }
        layout.beyond = tail_.beyond_m - in_lagging_m >= shortest_segment_m;
        add(layout, {tail_.beyond_m - in_lagging_m, cold, losses.sheath_w_mk,
                     box ? losses.box_c : tail_.air_c, pin + around_.sun_on_sheath_w_m()});
    }
    layout.first_wire = layout.segments.size();
    if (tail_.place == TerminalPlace::buried) {
        add(layout,
            wire_segment(tail_.buried_wire_m, around_.wire_in_bed_w_mk(), tail_.bed_c, layout));
    }
    if (box) {
        add(layout, wire_segment(tail_.box_wire_m, losses.box_wire_w_mk, losses.box_c, layout));
    }
    for (const Lagged& each : lagging(in_lagging_m, lagged_m)) {
        add(layout, wire_segment(each.length_m, around_.wire_in_lagging_w_mk(), each.at_c, layout));
    }
    layout.first_piece = layout.segments.size();
    if (layout.segments.size() == 1 || !std::isinf(layout.segments.back().length_m)) {
        add_free_wire(layout, losses);
    }
    layout.joint_heat.assign(layout.segments.size() - 1, 0.0);
    layout.joint_heat[layout.first_wire - 1] =
        tail_.current_a * tail_.current_a * tail_.contact_ohm;
    return layout;
}

std::vector<TailLayout::Lagged> TailLayout::lagging(double from_m, double to_m) const {
    constexpr double thickest_m = 0.02;
    constexpr double most = 20.0;
    std::vector<Lagged> slices;
    if (to_m - from_m < shortest_segment_m) return slices;
    const double hot_c = std::max(tail_.air_c, tail_.lagging_hot_c.value_or(tail_.bed_c));
    const double count = std::min(most, std::ceil((to_m - from_m) / thickest_m));
    const double length_m = (to_m - from_m) / count;
    for (double i = 0.5; i < count; i += 1.0) {
        const double share = (from_m + i * length_m) / tail_.lagging_m;
        slices.push_back({length_m, hot_c + share * (tail_.air_c - hot_c)});
    }
    return slices;
}

void TailLayout::add_free_wire(LaidTail& layout, const TailLosses& losses) const {
    const double far_w_mk = around_.far_wire_w_mk();
    if (!around_.is_linear()) {
        const double scale_m = std::sqrt(wire_ka_w_m_k(wire_) / far_w_mk);
        for (std::size_t i = 0; i < near_pieces.size(); ++i) {
            add(layout, wire_segment(near_pieces[i] * scale_m, losses.wire_w_mk[i],
                                     around_.rest_c(), layout));
        }
    }
    add(layout, wire_segment(endless, far_w_mk, around_.rest_c(), layout));
}

FinSegment TailLayout::wire_segment(double length_m, double loss_w_mk, double around_c,
                                    LaidTail& layout) const {
    const double square = tail_.current_a * tail_.current_a;
    const double here = resistance_ohm_per_m(wire_, around_c);
    const double per_k = (resistance_ohm_per_m(wire_, around_c + 100.0) - here) / 100.0;
    double left = loss_w_mk - square * per_k;
    if (std::isinf(length_m)) {
        if (left <= 0.0) layout.runaway = true;
    } else {
        // A short piece has a steady state determined by its ends.
        constexpr double least_share = 0.1;
        left = std::max(left, least_share * loss_w_mk);
    }
    return {length_m, wire_ka_w_m_k(wire_), left, around_c, square * here};
}

}  // namespace heatmatch
