#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/heat/joint_layout.hpp"
#include "heatmatch/parts/element.hpp"
#include "heatmatch/parts/medium.hpp"

namespace heatmatch {

/// A temperature with the band due to uncertain properties of the fill.
struct TemperatureBand {
    double low_c = 0.0;
    double typical_c = 0.0;
    double high_c = 0.0;
};

/// Temperatures of a store heated by a bank.
struct SheathTemperature {
    TemperatureBand sheath_c{};     //!< of the hottest leg
    TemperatureBand coil_c{};       //!< inside that sheath
    TemperatureBand bed_mean_c{};   //!< of the bulk
    TemperatureBand wall_c{};       //!< outer wall at its hottest spot
    TemperatureBand lid_c{};        //!< outer surface of the lid
    double sheath_verdict_c = 0.0;  //!< for a verdict: low conductivity, rise times 1.10
    double w_per_cm = 0.0;          //!< of heated length
    std::vector<Assumption> assumed{};
    Sentences warnings{};
};

/// Charge of a store of `elements` equal elements.
struct StoreCharge {
    double power_w = 0.0;  //!< of the whole bank [W]
    double hours = 5.0;    //!< per day [h]
    double air_c = 20.0;   //!< around the store [°C]
    double days = 1.0;
    bool moist = false;     //!< before it has dried
    double others_w = 0.0;  //!< of other circuits, in a liquid [W]
};

/// The bed as the closed form uses it. Throws InvalidInput as leg_layout() and store_shell() do,
/// where the legs do not fit, and for a liquid.
[[nodiscard]] BedCharge bed_charge(const Medium& medium, const Store& store, const Element& element,
                                   int elements, const StoreCharge& charge, ConductivityEnd end);

/// The same for bank `judged` among several banks that share the bed; the others have their own
/// power, and where all banks have days, the moments of those are judged. Throws InvalidInput as
/// joint_layout() does too.
[[nodiscard]] BedCharge joint_bed_charge(const Medium& medium, const Store& store,
                                         std::span<const BankInStore> banks, std::size_t judged,
                                         const StoreCharge& charge, ConductivityEnd end);

/// Temperatures of sheath, coil, bed, wall and lid. Water: the bulk warms as a whole up to 100 °C;
/// heat leaves the sheath by free convection of 700 to 1500 W/m2K until local boiling, 10 to 25 K
/// above 100 °C (from memory). Throws InvalidInput for powers, times and temperatures out of range,
/// and as bed_charge() does.
[[nodiscard]] SheathTemperature sheath_temperature(const Medium& medium, const Store& store,
                                                   const Element& element, int elements,
                                                   const StoreCharge& charge);

}  // namespace heatmatch
