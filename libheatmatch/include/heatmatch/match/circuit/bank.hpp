#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/heat/element_resistance.hpp"
#include "heatmatch/match/circuit/hookup.hpp"
#include "heatmatch/parts/alloy.hpp"
#include "heatmatch/parts/element.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/parts/sheath.hpp"

namespace heatmatch {

struct UnlikeBank;

/// How the current of an unlike bank divides, at the ends of all resistances.
struct PlaceInBank {
    double share_of_bank = 1.0;    //!< smallest share of an element in the current of the bank
    double share_of_branch = 1.0;  //!< smallest share of it in the current of its branch
    double branch_share = 1.0;     //!< largest share of a branch in the current of the bank
    /// What wire in every branch adds to the bank's resistance, as a share of one: the sum of
    /// squares of the branches' typical shares.
    double branch_wire_share = 1.0;

    friend bool operator==(const PlaceInBank&, const PlaceInBank&) = default;
};

/// Equal elements in series and parallel; or unlike elements, then only `unlike`, `owned` and the
/// functions hold, not the fields of one element.
struct Bank {
    Element element{};
    std::optional<Alloy> alloy{};
    std::optional<Sheath> sheath{};
    Hookup hookup{};
    int owned = 0;                      //!< how many of them are owned
    double coil_temperature_c = 300.0;  //!< temperature at which `each` holds [°C]
    ElementResistance each{};
    /// Null for equal elements.
    std::shared_ptr<const UnlikeBank> unlike{};
    std::optional<PlaceInBank> place{};  //!< of one element of an unlike bank

    [[nodiscard]] double low_ohm() const { return at_end(&ElementResistance::low_ohm); }
    [[nodiscard]] double typical_ohm() const { return at_end(&ElementResistance::typical_ohm); }
    [[nodiscard]] double high_ohm() const { return at_end(&ElementResistance::high_ohm); }
    /// The hook-up that remains of several branches after one has opened. Of equal elements.
    [[nodiscard]] Hookup hookup_left() const {
        return {.series = hookup.series, .parallel = hookup.parallel - 1};
    }
    /// Resistance after one parallel branch has opened, from `ohm`, the bank's value; of unlike
    /// elements after any of them, where it is highest. Infinite where nothing is left.
    [[nodiscard]] double with_one_branch_open(double ohm) const;
    /// Number of elements.
    [[nodiscard]] int count() const;
    /// Number of parallel branches.
    [[nodiscard]] int branches() const;
    /// Largest share of the bank's current in a branch.
    [[nodiscard]] double branch_share() const;
    /// What wire in every branch adds to the bank, as a share of one.
    [[nodiscard]] double branch_wire_share() const;
    /// Most current of the bank, or of the element's branch, per current of the element.
    [[nodiscard]] double current_over_element(bool of_branch) const {
        if (place) return 1.0 / (of_branch ? place->share_of_branch : place->share_of_bank);
        return of_branch ? 1.0 : hookup.parallel;
    }
    /// Share of the bank's power in the element with the most, typical.
    [[nodiscard]] double largest_power_share() const;
    /// Whether the resistance of all its elements is fixed.
    [[nodiscard]] bool fixed() const;
    /// `1S2P`, or the layout of unlike elements.
    [[nodiscard]] std::string label() const;
    /// `storage-rod-1000-240 1S2P`, or the layout of unlike elements.
    [[nodiscard]] std::string title() const;
    /// Each kind of element once, as one element alone; `owned` has how many of it are owned.
    [[nodiscard]] std::vector<Bank> kinds() const;
    /// How many of its elements have that id.
    [[nodiscard]] int count_of(const std::string& id) const;
    /// Assumed values of the resistance of its elements.
    [[nodiscard]] std::vector<Assumption> assumed() const;

    friend bool operator==(const Bank& a, const Bank& b);

  private:
    [[nodiscard]] double at_end(double ElementResistance::*end) const {
        return unlike ? of_unlike(end) : each.*end * hookup.resistance_factor();
    }
    [[nodiscard]] double of_unlike(double ElementResistance::*end) const;
};

/// The bank of that element and hook-up, with its resistance at the coil temperature.
[[nodiscard]] Bank make_bank(const Parts& parts, const Element& element, Hookup hookup, int owned,
                             double coil_temperature_c);

}  // namespace heatmatch
