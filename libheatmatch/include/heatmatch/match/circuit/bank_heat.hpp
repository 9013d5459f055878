#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/heat/sheath_temperature.hpp"
#include "heatmatch/match/circuit/filled_store.hpp"
#include "heatmatch/parts/alloy.hpp"
#include "heatmatch/parts/sheath.hpp"

namespace heatmatch {

struct UnlikeBank;

/// Temperatures of a store at one power of its bank. Values for a verdict use the worst end of
/// uncertain fill properties, and include the error of the closed form for a sheath.
struct HeatPoint {
    double w_per_cm = 0.0;             //!< per heated length
    double sheath_c = 0.0;             //!< for a verdict: low conductivity, rise times 1.10
    TemperatureBand sheath_band{};     //!< low, typical and high, without that factor
    double gap_k = 0.0;                //!< part of that sheath's rise across the air gap between
                                       //!< rod and fill
    double coil_c = 0.0;               //!< with the sheath of the verdict
    double void_c = 0.0;               //!< sheath where sand has settled away
    double bed_mean_c = 0.0;           //!< typical bulk
    double wall_c = 0.0;               //!< hottest spot of the outer wall
    double lid_c = 0.0;                //!< outer surface of the lid
    double floor_c = 0.0;              //!< base under the store, hottest spot
    double inner_c = 0.0;              //!< hottest spot where the fill meets wall, lid or floor
    double stagnation_sheath_c = 0.0;  //!< for a verdict: fourteen bright days in the hottest air
    double stagnation_least_c = 0.0;   //!< the same in a fill of high conductivity
    double stagnation_wall_c = 0.0;
    double stagnation_inner_c = 0.0;  //!< of `inner_c`
    double stagnation_lid_c = 0.0;
    double stagnation_floor_c = 0.0;
    double stagnation_bottom_c = 0.0;  //!< hottest spot where the fill meets the floor
    double moist_sheath_c = 0.0;       //!< typical, before the fill dries; 0 where it is not moist
    bool boils = false;
};

/// Equal elements in a store, prepared for any power. Of an unlike bank it has the store, what is
/// missing, and whether its elements fit: temperatures are those of its element_view()s.
struct BankHeat {
    std::vector<std::string> missing{};  //!< fields that are missing to compute anything
    Sentence misfit{};                   //!< why they do not fit
    int elements = 1;
    /// Null for equal elements; else every function of a power throws InvalidInput.
    std::shared_ptr<const UnlikeBank> unlike{};
    double heated_length_m = 0.0;  //!< of all elements together [m]
    bool liquid = false;
    std::shared_ptr<const FilledStore> store{};
    Element element{};
    std::optional<Sheath> sheath{};
    std::optional<double> coil_limit_c{};
    BedCharge careful{};                        //!< low conductivity
    BedCharge likely{};                         //!< typical
    BedCharge conducting{};                     //!< high
    BedCharge stagnant{};                       //!< low, fourteen days in the hottest air
    BedCharge stagnant_likely{};                //!< typical, the same
    BedCharge stagnant_out{};                   //!< high, the same
    std::optional<BedCharge> moist{};           //!< typical, of a fill that was damp when filled
    std::optional<BedCharge> moist_careful{};   //!< low, the same
    std::optional<BedCharge> moist_stagnant{};  //!< low, the same, fourteen days
    std::vector<Assumption> assumed{};

    /// What a margin lacks that needs these temperatures; "store" for a circuit without any.
    [[nodiscard]] static std::vector<std::string> lacks(const BankHeat* heat) {
        if (heat == nullptr) return {"store"};
        return heat->missing.empty() ? std::vector<std::string>{"an element that fits"}
                                     : heat->missing;
    }
    /// The same elements in the same places, without those of other circuits.
    [[nodiscard]] BankHeat without_others() const;
    /// The same with the other circuits at that share of their power.
    [[nodiscard]] BankHeat with_others_at(double share) const;
    /// Throws InvalidInput for an unlike bank.
    void need_equal() const;
    [[nodiscard]] bool known() const { return missing.empty() && misfit.empty(); }
    /// Temperatures at that power of each element, together with that of the other circuits.
    [[nodiscard]] HeatPoint at(double element_w) const;
    /// The values used by the screen, at less cost: sheath, coil and stagnation.
    struct Judged {
        double sheath_c = 0.0;
        double coil_c = 0.0;
        double stagnation_sheath_c = 0.0;
    };
    [[nodiscard]] Judged judged_at(double element_w) const;
    /// The same for a bed filled damp whose heat is too low to dry it: at most 30 W per meter of
    /// rod (from memory, soil-warming practice). Empty where it counts as dry.
    [[nodiscard]] std::optional<Judged> damp_at(double element_w) const;
    /// Largest power of one element within the limits of its sheath and coil, with
    /// `with_stagnation` also after fourteen days [W]; empty where no limit is known, 0 where it
    /// does not fit.
    [[nodiscard]] std::optional<double> largest_element_w(bool with_stagnation) const;
    /// Largest power of one element at which its sheath stays below its short-term limit [W]; empty
    /// where that is not known, 0 where it does not fit.
    [[nodiscard]] std::optional<double> largest_lasting_w() const;
};

/// The elements of one circuit in a store, with those of the other circuits that the store lists.
/// Null without a store.
[[nodiscard]] std::shared_ptr<const BankHeat> bank_heat(std::shared_ptr<const FilledStore> store,
                                                        const Element& element,
                                                        const std::optional<Sheath>& sheath,
                                                        const std::optional<Alloy>& alloy,
                                                        int elements);

}  // namespace heatmatch
