#pragma once

#include "wire_cooling.hpp"

#include <vector>

#include "heatmatch/heat/hot_tail.hpp"

namespace heatmatch {

/// Heat loss per meter of sheath and wire of a hot tail to the surroundings of the run at the
/// element, by the balance of conductor_temperature(): `q(Tc) = s^2 (H(Ts) - alpha G D)`, s the
/// current share of a wire in conduit, ground or bundle.
class TailSurroundings {
  public:
    TailSurroundings(const HotTail& tail, const Wire& wire, const Insulation* insulation,
                     std::vector<Assumption>& assumed);

    /// The wire alone has no steady temperature there.
    [[nodiscard]] bool runs_away() const { return runs_away_; }
    /// The loss coefficient is constant: one piece of wire is enough.
    [[nodiscard]] bool is_linear() const;
    /// Temperature of a wire without current: the air, or higher in the sun [°C].
    [[nodiscard]] double rest_c() const { return rest_c_; }
    /// Coefficient at which an infinite wire has the temperature of conductor_temperature() [W/mK].
    [[nodiscard]] double far_wire_w_mk() const { return far_wire_w_mk_; }
    /// From a conductor of that temperature to `rest_c`; a colder conductor absorbs heat as in
    /// still open air [W/mK].
    [[nodiscard]] double wire_w_mk(double conductor_c) const;
    /// The same in still air without other surroundings: in a terminal box.
    [[nodiscard]] double wire_in_box_w_mk(double conductor_c, double box_c) const;
    [[nodiscard]] double wire_in_bed_w_mk() const;
    [[nodiscard]] double wire_in_lagging_w_mk() const;
    /// Sheath of that temperature, in the surroundings or in a box with that air.
    [[nodiscard]] double sheath_w_mk(double sheath_c, double near_c) const;
    [[nodiscard]] double sheath_in_lagging_w_mk() const;
    /// Solar heat per meter of sheath [W/m].
    [[nodiscard]] double sun_on_sheath_w_m() const;

  private:
    [[nodiscard]] double through_insulation(double conductor_c, double rest_c,
                                            const WireCooling& cooling) const;
    [[nodiscard]] double with_insulation(double k_m_per_w) const;
    [[nodiscard]] double far_loss(const Wire& wire) const;

    const HotTail& tail_;
    WireGeometry geometry_;
    WireCooling cooling_;
    double rest_c_ = 0.0;
    double far_c_ = 0.0;
    double far_wire_w_mk_ = 0.0;
    bool runs_away_ = false;
};

}  // namespace heatmatch
