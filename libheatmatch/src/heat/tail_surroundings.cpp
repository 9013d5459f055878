#include "tail_surroundings.hpp"

#include <algorithm>
#include <cmath>

namespace heatmatch {

namespace {

/// The air temperature around a tail is that of the tail.
Surroundings around_tail(const HotTail& tail) {
    Surroundings around = tail.around;
    around.air_c = tail.air_c;
    return around;
}

bool is_bedded(const HotTail& tail) {
    return tail.place == TerminalPlace::buried && std::isinf(tail.buried_wire_m);
}

int wires_together(const HotTail& tail) {
    return std::max(1, tail.around.loaded_conductors.value_or(1));
}

/// Heat loss to the air per kelvin above the temperature in the sun alone; evaluated at 1 K where
/// there is no difference [W/mK].
double surface_w_mk(double outer_m, double surface_c, double rest_c, const WireCooling& cooling,
                    double emissivity) {
    const double rise = std::max(1.0, surface_c - rest_c);
    const auto to_air = [&](double at_c) {
        return heat_to_air(outer_m, at_c, cooling.around_c, cooling.wind_m_s, emissivity);
    };
    const double at_rest = rest_c > cooling.around_c ? to_air(rest_c) : 0.0;
    return (to_air(rest_c + rise) - at_rest) / rise;
}

double squared(double share) {
    return share * share;
}

}  // namespace

TailSurroundings::TailSurroundings(const HotTail& tail, const Wire& wire,
                                   const Insulation* insulation, std::vector<Assumption>& assumed)
    : tail_(tail), geometry_(wire_geometry(wire, insulation, assumed)) {
    rest_c_ = far_c_ = tail.air_c;
    cooling_.around_c = tail.air_c;
    if (is_bedded(tail)) return;
    const Surroundings around = around_tail(tail);
    const BedAround bed{.conductivity_w_mk = tail.bed_conductivity_w_mk};
    cooling_ = *wire_cooling(wire, geometry_, around, bed, assumed);
    if (tail.wire_loss_w_mk) {
        far_wire_w_mk_ = *tail.wire_loss_w_mk;
        return;
    }
    if (cooling_.irradiance_w_m2 > 0.0) {
        rest_c_ = conductor_temperature(wire, insulation, 0.0, around, bed)->conductor_c;
    }
    const ConductorTemperature alone =
        *conductor_temperature(wire, insulation, tail.current_a, around, bed);
    far_c_ = alone.conductor_c;
    runs_away_ = alone.runaway;
    if (!runs_away_) far_wire_w_mk_ = far_loss(wire);
}

bool TailSurroundings::is_linear() const {
    return tail_.wire_loss_w_mk || cooling_.solid_k_m_per_w;
}

double TailSurroundings::with_insulation(double k_m_per_w) const {
    return 1.0 / (geometry_.insulation_k_m_per_w + k_m_per_w);
}

double TailSurroundings::through_insulation(double conductor_c, double rest_c,
                                            const WireCooling& cooling) const {
    double surface_c = conductor_c;
    double loss = 0.0;
    for (int i = 0; i < 3; ++i) {
        const double surface = surface_w_mk(geometry_.outer_m, surface_c, rest_c, cooling, 0.9);
        loss = with_insulation(1.0 / surface);
        surface_c = rest_c + (conductor_c - rest_c) * loss / surface;
    }
    return loss;
}

/// At low current the result is not determined.
double TailSurroundings::far_loss(const Wire& wire) const {
    constexpr double least_k = 0.01;
    const double rise = far_c_ - rest_c_;
    if (is_linear() || rise < least_k) return wire_w_mk(rest_c_);
    return squared(tail_.current_a) * resistance_ohm_per_m(wire, far_c_) / rise;
}

double TailSurroundings::wire_w_mk(double conductor_c) const {
    if (tail_.wire_loss_w_mk) return *tail_.wire_loss_w_mk;
    if (cooling_.solid_k_m_per_w) return with_insulation(*cooling_.solid_k_m_per_w);
    // Where heat flows in, neither grouping nor shelter may reduce it: as in still open air.
    if (conductor_c < rest_c_) return wire_in_box_w_mk(rest_c_, rest_c_);
    return squared(cooling_.current_share) * through_insulation(conductor_c, rest_c_, cooling_);
}

double TailSurroundings::wire_in_box_w_mk(double conductor_c, double box_c) const {
    if (tail_.wire_loss_w_mk) return *tail_.wire_loss_w_mk;
    return through_insulation(conductor_c, box_c, {.around_c = box_c});
}

double TailSurroundings::wire_in_bed_w_mk() const {
    return with_insulation(wires_together(tail_) *
                           shell_k_m_per_w(geometry_.outer_m, tail_.bed_conductivity_w_mk));
}

double TailSurroundings::wire_in_lagging_w_mk() const {
    return with_insulation(wires_together(tail_) *
                           shell_k_m_per_w(geometry_.outer_m, lagging_w_mk));
}

double TailSurroundings::sheath_in_lagging_w_mk() const {
    return 1.0 / shell_k_m_per_w(tail_.sheath_diameter_mm / 1000.0, lagging_w_mk);
}

double TailSurroundings::sheath_w_mk(double sheath_c, double near_c) const {
    if (tail_.sheath_loss_w_mk) return *tail_.sheath_loss_w_mk;
    const double outer_m = tail_.sheath_diameter_mm / 1000.0;
    const bool in_box = tail_.place == TerminalPlace::in_box;
    const SurroundingsKind kind = in_box ? SurroundingsKind::open_air : tail_.around.kind;
    if (kind == SurroundingsKind::cavity) return sheath_in_lagging_w_mk();
    if (kind == SurroundingsKind::bed) {
        return 1.0 / shell_k_m_per_w(outer_m, tail_.bed_conductivity_w_mk);
    }
    // Sheltered by the store, and alone: a bundle contains wires only.
    const double still =
        surface_w_mk(outer_m, sheath_c, near_c, {.around_c = near_c}, tail_.sheath_emissivity);
    const bool enclosed = kind == SurroundingsKind::conduit || kind == SurroundingsKind::buried;
    return enclosed && sheath_c > near_c ? squared(cooling_.current_share) * still : still;
}

double TailSurroundings::sun_on_sheath_w_m() const {
    if (tail_.place == TerminalPlace::in_box) return 0.0;
    return sun_absorbed * cooling_.irradiance_w_m2 * tail_.sheath_diameter_mm / 1000.0;
}

}  // namespace heatmatch
