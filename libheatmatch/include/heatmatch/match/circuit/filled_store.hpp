#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "heatmatch/heat/heat_day.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// The power of a circuit over clear days, a day for each month; without any it counts as at its
/// largest power in every bright hour.
struct ClearDays {
    std::vector<HeatDay> season{};  //!< of the months in use
    std::vector<HeatDay> year{};    //!< of all months: a stagnation is in summer

    friend bool operator==(const ClearDays&, const ClearDays&) = default;
};

/// The elements of another circuit in the same store, or another element of the same unlike bank.
struct OtherBank {
    std::string circuit{};  //!< its name
    Element element{};
    int elements = 1;
    double element_w = 0.0;  //!< of each, its largest in bright sun [W]
    bool limited = false;    //!< whether an overtemperature limit is certain to open it in time
    bool own = false;        //!< it is of the circuit that is judged
    bool goes_on = false;    //!< it is of the same circuit as the one before it
    ClearDays days{};

    [[nodiscard]] double power_w() const { return elements * element_w; }

    friend bool operator==(const OtherBank&, const OtherBank&) = default;
};

/// A store with its fill and the air around it: all inputs of its heat except the elements of the
/// circuit that is judged.
struct FilledStore {
    Store store{};
    Medium medium{};
    double charge_hours = 6.0;        //!< hours of bright sun per day [h]
    double air_c = 30.0;              //!< around it on a bright day of the season [°C]
    double hottest_air_c = 40.0;      //!< the same in high summer [°C]
    UnstatedPlaces unstated{};        //!< positions for which legs count as near each face
    std::vector<OtherBank> others{};  //!< in the order of their circuits
    std::size_t place = 0;            //!< how many of them come before the bank that is judged
    ClearDays days{};                 //!< of the circuit that is judged, beside others
    std::vector<Assumption> assumed{};

    /// Power of the other circuits together, and of other elements of its own, during the bright
    /// hours with the heat of their day [W].
    [[nodiscard]] double others_w(bool stagnation) const;
    /// Whether any other circuit has its own sun at each hour.
    [[nodiscard]] bool by_hour() const;
    /// Number of other circuits.
    [[nodiscard]] std::size_t other_circuits() const;
    /// How many of them come before the circuit that is judged.
    [[nodiscard]] std::size_t circuits_before() const;

    friend bool operator==(const FilledStore&, const FilledStore&) = default;
};

/// Consecutive bright days before margins are assessed, and before a stagnation; common practice,
/// no source.
inline constexpr double bright_days = 3.0;
inline constexpr double stagnation_days = 14.0;

/// The store of an installation; null without one. If not stated, the air is 30 °C (from memory),
/// and in high summer the warmest month's mean daily high + 10 K within a space, or 40 °C.
[[nodiscard]] std::shared_ptr<const FilledStore> fill_store(const Parts& parts,
                                                            const Installation& installation);

}  // namespace heatmatch
