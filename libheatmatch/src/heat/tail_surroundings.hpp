#pragma once

#include "wire_cooling.hpp"

#include <vector>

#include "heatmatch/heat/hot_tail.hpp"

namespace heatmatch {

/// What sheath and wire of a hot tail lose a metre to what the run at the element lies in, by the
/// balance of conductor_temperature(): `q(Tc) = s^2 (H(Ts) - alpha G D)`, s the share of the
/// current that is left to a wire in conduit, ground or bundle.
class TailSurroundings {
  public:
    TailSurroundings(const HotTail& tail, const Wire& wire, const Insulation* insulation,
                     std::vector<Assumption>& assumed);

    /// The wire by itself finds no steady temperature there.
    [[nodiscard]] bool runs_away() const { return runs_away_; }
    /// The same loss at every temperature: one piece of wire is enough.
    [[nodiscard]] bool is_linear() const;
    /// What a wire without current tends to: the air, or hotter in the sun [°C].
    [[nodiscard]] double rest_c() const { return rest_c_; }
    /// With that loss an endless wire is as hot as conductor_temperature() finds [W/mK].
    [[nodiscard]] double far_wire_w_mk() const { return far_wire_w_mk_; }
    /// From a conductor of that temperature to `rest_c`; colder than that it takes in what it would
    /// in still open air [W/mK].
    [[nodiscard]] double wire_w_mk(double conductor_c) const;
    /// The same in still air, where nothing else is around it: in a terminal box.
    [[nodiscard]] double wire_in_box_w_mk(double conductor_c, double box_c) const;
    [[nodiscard]] double wire_in_bed_w_mk() const;
    [[nodiscard]] double wire_in_lagging_w_mk() const;
    /// Sheath of that temperature, out in the surroundings or in a box of that air.
    [[nodiscard]] double sheath_w_mk(double sheath_c, double near_c) const;
    [[nodiscard]] double sheath_in_lagging_w_mk() const;
    /// What the sun makes in a metre of sheath [W/m].
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
