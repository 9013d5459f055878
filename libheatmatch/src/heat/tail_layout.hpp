#pragma once

#include "tail_surroundings.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace heatmatch {

/// Pieces of wire next to the terminal, in lengths over which a fin cools by a factor of e.
inline constexpr auto near_pieces = std::to_array<double>({0.15, 0.25, 0.4, 0.7, 1.0});

/// Heat loss per meter of sheath and of wire; depends on temperature.
struct TailLosses {
    double sheath_w_mk = 0.0;
    double box_wire_w_mk = 0.0;                          //!< inside the terminal box
    std::array<double, near_pieces.size()> wire_w_mk{};  //!< of the pieces near the terminal
    double box_c = 0.0;
};

/// The segments of a chain from the heated length to the wire.
struct LaidTail {
    std::vector<FinSegment> segments{};
    std::vector<double> joint_heat{};
    std::size_t wall = 0;  //!< joint at which the sheath leaves the bed
    std::size_t first_wire = 0;
    std::size_t first_piece = 0;  //!< first segment whose heat loss depends on temperature
    bool beyond = false;          //!< the terminal is on sheath in the surroundings
    bool runaway = false;
};

/// Divides an element's end and its wire into segments of a chain.
class TailLayout {
  public:
    TailLayout(const HotTail& tail, const Wire& wire, const TailSurroundings& around);

    [[nodiscard]] LaidTail lay(const TailLosses& losses) const;

  private:
    /// A slice of the lagging, with its temperature.
    struct Lagged {
        double length_m = 0.0;
        double at_c = 0.0;
    };
    [[nodiscard]] std::vector<Lagged> lagging(double from_m, double to_m) const;
    void add_free_wire(LaidTail& layout, const TailLosses& losses) const;
    /// R is linear in temperature: its rising part counts as a negative heat loss.
    [[nodiscard]] FinSegment wire_segment(double length_m, double loss_w_mk, double around_c,
                                          LaidTail& layout) const;

    const HotTail& tail_;
    const Wire& wire_;
    const TailSurroundings& around_;
    double bed_loss_;
};

}  // namespace heatmatch
