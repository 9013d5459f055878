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

/// How hot a bank makes its store at one power. Judged values take the worst of what is not
/// known of the fill, and the closed form's error where a sheath is judged.
struct HeatPoint {
    double w_per_cm = 0.0;             //!< of heated length
    double sheath_c = 0.0;             //!< judged: low conductivity, rise times 1.10
    TemperatureBand sheath_band{};     //!< low, typical and high, without that factor
    double gap_k = 0.0;                //!< of the judged sheath, by the air between rod and fill
    double coil_c = 0.0;               //!< of the judged sheath
    double void_c = 0.0;               //!< of a sheath that sand has settled away from
    double bed_mean_c = 0.0;           //!< typical bulk
    double wall_c = 0.0;               //!< hottest spot of the outer wall
    double lid_c = 0.0;                //!< outer surface of the lid
    double floor_c = 0.0;              //!< of what it stands on, at the hottest spot
    double inner_c = 0.0;              //!< hottest spot where the fill meets wall, lid or floor
    double stagnation_sheath_c = 0.0;  //!< judged: fourteen bright days in the hottest air
    double stagnation_least_c = 0.0;   //!< the same sheath in a fill that conducts well
    double stagnation_wall_c = 0.0;
    double stagnation_inner_c = 0.0;  //!< of `inner_c`
    double stagnation_lid_c = 0.0;
    double stagnation_floor_c = 0.0;
    double stagnation_bottom_c = 0.0;  //!< where the fill meets the floor, at the hottest spot
    double moist_sheath_c = 0.0;       //!< typical, before the fill dries; 0 where it is not moist
    bool boils = false;
};

/// Equal elements in a store, made ready once for any power.
struct BankHeat {
    std::vector<std::string> missing{};  //!< why nothing can be computed
    Sentence misfit{};                   //!< why they do not fit
    int elements = 1;
    double heated_m = 0.0;  //!< of all elements [m]
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
    std::optional<BedCharge> moist{};           //!< typical, of a bed that was put in damp
    std::optional<BedCharge> moist_careful{};   //!< low, the same
    std::optional<BedCharge> moist_stagnant{};  //!< low, the same, fourteen days
    std::vector<Assumption> assumed{};

    [[nodiscard]] bool known() const { return missing.empty() && misfit.empty(); }
    /// At that power of each element.
    [[nodiscard]] HeatPoint at(double element_w) const;
    /// What decides for the screen, at less cost: sheath, coil and stagnation.
    struct Judged {
        double sheath_c = 0.0;
        double coil_c = 0.0;
        double stagnation_sheath_c = 0.0;
    };
    [[nodiscard]] Judged judged_at(double element_w) const;
    /// The same of a bed put in damp that so little heat leaves damp: at most 30 W of heat for each
    /// metre of rod (from memory, soil-warming practice); nothing where it counts as dry.
    [[nodiscard]] std::optional<Judged> damp_at(double element_w) const;
    /// Largest watts of one element within the verdict limit of its sheath and that of its coil,
    /// `with_stagnation` after fourteen days too; nothing where no limit is known, 0 where it does
    /// not fit.
    [[nodiscard]] std::optional<double> largest_element_w(bool with_stagnation) const;
    /// Largest watts of one element at which its sheath is no hotter than it lasts at all; nothing
    /// where that is not known, 0 where it does not fit.
    [[nodiscard]] std::optional<double> largest_lasting_w() const;
};

/// Null without a store.
[[nodiscard]] std::shared_ptr<const BankHeat> bank_heat(std::shared_ptr<const FilledStore> store,
                                                        const Element& element,
                                                        const std::optional<Sheath>& sheath,
                                                        const std::optional<Alloy>& alloy,
                                                        int elements);

}  // namespace heatmatch
