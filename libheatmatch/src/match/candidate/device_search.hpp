#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opens.hpp"

namespace heatmatch {

/// Whether it opens when another device commands it.
[[nodiscard]] bool is_commanded(const Control& control);
/// Whether a sensor can be set so; `true` where it is not stated.
[[nodiscard]] bool in_range(const Control& control, const std::optional<double>& set_c);

/// A circuit in which controls of a catalog are tried, cheapest first.
class DeviceSearch {
  public:
    DeviceSearch(const Circuit& circuit, const Site& site, const Parts& catalog,
                 std::string_view currency);

    static constexpr double no_price = std::numeric_limits<double>::infinity();
    /// Typical price; infinite where it is not known or in another currency.
    [[nodiscard]] double price_of(const Control* control) const;

    /// The cheapest control that is able; null if there is none.
    template <class Able>
    [[nodiscard]] const Control* cheapest(const Able& able) const {
        const auto found = std::find_if(by_price_.begin(), by_price_.end(),
                                        [&able](const Control* each) { return able(*each); });
        return found == by_price_.end() ? nullptr : *found;
    }
    /// The control with all its poles, in a run with the whole current in which `opens_in` holds;
    /// empty if there is none.
    template <class Opens>
    [[nodiscard]] std::optional<PlacedDevice> placed(const Control& control,
                                                     const Opens& opens_in) const {
        for (const std::string& run : whole_) {
            if (!withstands(control, run)) continue;
            PlacedDevice trial = in_run(control, run);
            if (opens_in(trial)) return trial;
        }
        return std::nullopt;
    }
    /// The control with all its poles in that run.
    [[nodiscard]] static PlacedDevice in_run(const Control& control, const std::string& run);

    /// Whether a sensor opens the circuit by driving these controls.
    [[nodiscard]] Answer driven(std::vector<std::string> ids, Occasion occasion) const;
    /// The same by a control that is not listed: its place; empty if it cannot.
    [[nodiscard]] std::optional<PlacedDevice> breaker(const Control& control, Occasion occasion);
    /// Ids of the devices that break DC.
    [[nodiscard]] std::vector<std::string> breakers() const;
    /// A sensing device that can act: its set point is in range, its own contacts suffice.
    [[nodiscard]] bool can_act(const PlacedDevice& sensor) const;

    [[nodiscard]] Amount volts() const;    //!< to open at the record low
    [[nodiscard]] Amount amperes() const;  //!< to open at the highest irradiance

    [[nodiscard]] const Circuit& circuit() const { return circuit_; }
    [[nodiscard]] const OpeningSite& at() const { return at_; }
    [[nodiscard]] const OpeningSite& by_hand() const { return by_hand_; }
    void add(PlacedDevice bought) { circuit_.devices.push_back(std::move(bought)); }

  private:
    /// Whether its body withstands the air around that run, as far as both are known.
    [[nodiscard]] bool withstands(const Control& control, const std::string& run) const;

    Circuit circuit_;
    OpeningSite at_;
    OpeningSite by_hand_;
    std::string currency_;
    std::vector<const Control*> by_price_{};
    std::vector<std::string> whole_{};  //!< names of runs with the whole current
};

}  // namespace heatmatch
