#include "heatmatch/heat/hot_tail.hpp"

#include "base/sentences.hpp"
#include "bed_checks.hpp"
#include "sentences.hpp"
#include "tail_input.hpp"
#include "wire_cooling.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using base_sentences::from_memory;
using heat_sentences::say;

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

/// Of the metal along the wire when warm, from memory. @cite incropera
double wire_conductivity(const Wire& wire) {
    if (wire.conductor == ConductorMetal::nickel) return 75.0;
    if (wire.conductor == ConductorMetal::nickel_clad_copper) return 300.0;
    return wire.conductor == ConductorMetal::aluminium ? 230.0 : 390.0;
}

/// Heat of a metre of the cold pin: mild steel, 0.3 ohm mm2/m when hot, from memory [W/m].
double pin_heat_w_m(const HotTail& tail) {
    constexpr double steel_ohm_mm2_m = 0.3;
    const double pin_mm = cold_pin_share * tail.sheath_diameter_mm;
    const double pin_a = tail.pin_a.value_or(tail.current_a);
    return pin_a * pin_a * steel_ohm_mm2_m / (0.25 * pi * pin_mm * pin_mm);
}

/// What the air takes from a metre of sheath and of wire; changes with temperature.
struct AirLosses {
    double sheath_w_mk = 0.0;
    double wire_w_mk = 0.0;      //!< near the terminal
    double far_wire_w_mk = 0.0;  //!< where only its own current heats it
    double box_c = 0.0;
};

/// Heat to the air per kelvin; a kelvin of difference stands for none [W/mK].
double loss_to_air(double outer_m, double surface_c, double air_c, double emissivity) {
    const double rise = std::max(1.0, surface_c - air_c);
    return heat_to_air(outer_m, air_c + rise, air_c, 0.0, emissivity) / rise;
}

struct Layout {
    std::vector<FinSegment> segments{};
    std::vector<double> joint_heat{};
    std::size_t wall = 0;  //!< joint at which the sheath leaves the bed
    std::size_t first_wire = 0;
    bool beyond = false;  //!< the terminal is on sheath that lies outside
    bool runaway = false;
};

class TailModel {
  public:
    TailModel(const HotTail& tail, const Wire& wire, const Insulation* insulation,
              std::vector<Assumption>& assumed)
        : tail_(tail),
          wire_(wire),
          geometry_(wire_geometry(wire, insulation, assumed)),
          bed_loss_(1.0 / shell_k_m_per_w(tail.sheath_diameter_mm / 1000.0,
                                          tail.bed_conductivity_w_mk)) {}

    [[nodiscard]] double wire_loss(double to_surroundings_w_mk) const {
        return 1.0 / (geometry_.insulation_k_m_per_w + 1.0 / to_surroundings_w_mk);
    }
    /// From a conductor of that temperature to the air; the insulation's surface is cooler [W/mK].
    [[nodiscard]] double wire_loss_in_air(double conductor_c, double air_c) const {
        double surface_c = conductor_c;
        double loss = 0.0;
        for (int i = 0; i < 3; ++i) {
            const double surface = loss_to_air(geometry_.outer_m, surface_c, air_c, 0.9);
            loss = wire_loss(surface);
            surface_c = air_c + (conductor_c - air_c) * loss / surface;
        }
        return loss;
    }

    [[nodiscard]] Layout lay(const AirLosses& air) const {
        Layout layout;
        const double cold =
            sheath_ka_w_m_k(tail_.sheath_diameter_mm, tail_.sheath_conductivity_w_mk, true);
        const double heated =
            sheath_ka_w_m_k(tail_.sheath_diameter_mm, tail_.sheath_conductivity_w_mk, false);
        const double pin = pin_heat_w_m(tail_);
        layout.segments.push_back(
            {endless, heated, bed_loss_, tail_.bed_c, bed_loss_ * (tail_.sheath_c - tail_.bed_c)});
        const auto add = [&layout](const FinSegment& segment) {
            if (segment.length_m >= shortest_segment_m) layout.segments.push_back(segment);
        };
        add({tail_.cold_length_m, cold, bed_loss_, tail_.bed_c, pin});
        layout.wall = layout.segments.size() - 1;
        const bool box = tail_.place == TerminalPlace::in_box;
        const double near_c = box ? air.box_c : tail_.air_c;
        if (tail_.place != TerminalPlace::buried) {
            add({tail_.wall_m, cold, 0.0, tail_.air_c, pin});
            layout.beyond = tail_.beyond_m >= shortest_segment_m;
            add({tail_.beyond_m, cold, air.sheath_w_mk, near_c, pin});
        }
        layout.first_wire = layout.segments.size();
        if (tail_.place == TerminalPlace::buried) {
            const double shell =
                1.0 / shell_k_m_per_w(geometry_.outer_m, tail_.bed_conductivity_w_mk);
            add(wire_segment(tail_.buried_wire_m, wire_loss(shell), tail_.bed_c, layout));
        } else {
            constexpr double near_m = 0.15;
            add(wire_segment(box ? tail_.box_wire_m : near_m, air.wire_w_mk, near_c, layout));
        }
        if (!std::isinf(layout.segments.back().length_m) || layout.segments.size() == 1) {
            add(wire_segment(endless, air.far_wire_w_mk, tail_.air_c, layout));
        }
        layout.joint_heat.assign(layout.segments.size() - 1, 0.0);
        layout.joint_heat[layout.first_wire - 1] =
            tail_.current_a * tail_.current_a * tail_.contact_ohm;
        return layout;
    }

  private:
    /// R is linear in temperature: the part that rises counts as loss that is missing.
    [[nodiscard]] FinSegment wire_segment(double length_m, double loss_w_mk, double around_c,
                                          Layout& layout) const {
        const double square = tail_.current_a * tail_.current_a;
        const double here = resistance_ohm_per_m(wire_, around_c);
        const double per_k = (resistance_ohm_per_m(wire_, around_c + 100.0) - here) / 100.0;
        const double left = loss_w_mk - square * per_k;
        if (left <= 0.0) layout.runaway = true;
        return {length_m, wire_conductivity(wire_) * wire_.area_mm2 * 1e-6, left, around_c,
                square * here};
    }

    const HotTail& tail_;
    const Wire& wire_;
    WireGeometry geometry_;
    double bed_loss_;
};

/// Losses at the temperatures that a solution has.
AirLosses losses_at(const HotTail& tail, const TailModel& model, const FinChain& chain,
                    const Layout& layout, double near_c, double far_c, double far_wire_w_mk) {
    const double terminal_c = chain.joint_c()[layout.first_wire - 1];
    AirLosses air{.far_wire_w_mk = far_wire_w_mk, .box_c = near_c};
    if (tail.sheath_loss_w_mk) {
        air.sheath_w_mk = *tail.sheath_loss_w_mk;
    } else {
        const double mean_c =
            0.5 * (terminal_c + chain.joint_c()[layout.first_wire - (layout.beyond ? 2 : 1)]);
        air.sheath_w_mk =
            loss_to_air(tail.sheath_diameter_mm / 1000.0, mean_c, near_c, tail.sheath_emissivity);
    }
    if (tail.wire_loss_w_mk) {
        air.wire_w_mk = *tail.wire_loss_w_mk;
    } else {
        const double mean_c = 0.5 * (terminal_c + std::max(near_c, far_c));
        air.wire_w_mk = std::max(air.far_wire_w_mk, model.wire_loss_in_air(mean_c, near_c));
    }
    return air;
}

/// Air in the box, warmed by what sheath and wire give off in it [°C].
double box_temperature(const HotTail& tail, const Wire& wire, const FinChain& chain,
                       const Layout& layout) {
    const std::size_t last = layout.first_wire - 1;
    const FinSegment& inside = chain.segments()[last];
    const double in = layout.beyond
                          ? chain.flow_w(last, 0.0) + inside.heat_w_m * inside.length_m
                          : chain.flow_w(last, std::isinf(inside.length_m) ? 0.0 : inside.length_m);
    const double out = chain.flow_w(chain.segments().size() - 1, 0.0);
    const double made =
        layout.joint_heat[last] + tail.current_a * tail.current_a * tail.box_wire_m *
                                      resistance_ohm_per_m(wire, chain.joint_c()[last]);
    return tail.air_c + std::max(0.0, in + made - out) / (tail.box_area_m2 * tail.box_u_w_m2k);
}

/// With that loss the endless wire is as hot as one in free air; little current tells nothing.
double far_loss(const HotTail& tail, const Wire& wire, const TailModel& model, double far_c) {
    const double rise = far_c - tail.air_c;
    if (rise < 0.5) return model.wire_loss_in_air(tail.air_c, tail.air_c);
    return tail.current_a * tail.current_a * resistance_ohm_per_m(wire, far_c) / rise;
}

TailTemperatures run_away(TailTemperatures result) {
    result.chain.reset();
    result.runaway = true;
    result.end_of_heat_c = result.terminal_c = result.far_wire_c = hottest_c;
    return result;
}

}  // namespace

TailTemperatures tail_temperatures(const HotTail& tail, const Wire& wire,
                                   const Insulation* insulation) {
    check_hot_tail(tail);
    TailTemperatures result;
    const TailModel model(tail, wire, insulation, result.assumed);
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
    const ConductorTemperature alone = *conductor_temperature(wire, insulation, tail.current_a,
                                                              Surroundings::open_air(tail.air_c));
    const bool stays_in_bed = tail.place == TerminalPlace::buried && std::isinf(tail.buried_wire_m);
    if (alone.runaway && !stays_in_bed && !tail.wire_loss_w_mk) return run_away(result);
    AirLosses air{.sheath_w_mk = tail.sheath_loss_w_mk.value_or(0.35), .box_c = tail.air_c};
    air.far_wire_w_mk =
        tail.wire_loss_w_mk.value_or(far_loss(tail, wire, model, alone.conductor_c));
    air.wire_w_mk = air.far_wire_w_mk;
    Layout layout;
    constexpr int rounds = 12;
    for (int round = 0; round < rounds; ++round) {
        layout = model.lay(air);
        if (layout.runaway) return run_away(result);
        result.chain.emplace(layout.segments, layout.joint_heat);
        const FinChain& chain = *result.chain;
        const double box_c = box ? box_temperature(tail, wire, chain, layout) : tail.air_c;
        const double moved = std::fabs(box_c - air.box_c);
        const AirLosses next =
            losses_at(tail, model, chain, layout, box_c, alone.conductor_c, air.far_wire_w_mk);
        const double changed = std::fabs(next.sheath_w_mk - air.sheath_w_mk) +
                               std::fabs(next.wire_w_mk - air.wire_w_mk);
        air = next;
        if (moved < 1e-3 && changed < 1e-5) break;
    }
    const FinChain& chain = *result.chain;
    result.first_wire = layout.first_wire;
    result.end_of_heat_c = chain.joint_c().front();
    if (tail.place != TerminalPlace::buried) result.wall_c = chain.joint_c()[layout.wall];
    result.terminal_c = chain.joint_c()[layout.first_wire - 1];
    if (box) result.box_c = air.box_c;
    const FinSegment& far = layout.segments.back();
    result.far_wire_c = far.environment_c + far.heat_w_m / far.loss_w_mk;
    for (std::size_t i = 1; i < layout.segments.size(); ++i) {
        if (i < layout.first_wire) result.terminal_from_heat_m += layout.segments[i].length_m;
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
    // The last segment tends to far_wire_c along one exponential.
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
