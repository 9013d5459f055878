#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/base/interpolation.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// Form of a fill.
enum class MediumForm { granular, solid, liquid };
inline constexpr auto medium_form_words =
    std::to_array<std::string_view>({"granular", "solid", "liquid"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(MediumForm) {
    return medium_form_words;
}

/// Fill of a heat store. Building-physics tables give about 2 W/mK for "sand and gravel": that is
/// moist ground; dry sand conducts 0.17 to 0.35 W/mK.
struct Medium {
    std::string id{};
    std::string label{};
    std::optional<MediumForm> form{};
    std::optional<double> porosity{};               //!< void share of a granular bed
    std::optional<double> grain_mm{};               //!< [mm]
    std::optional<double> stone_mm{};               //!< where grain_mm is only a parameter of the
                                                    //!< law [mm]
    double k20_w_mk = 0.0;                          //!< dry, at 20 °C, typical [W/mK]
    std::optional<double> k20_low_w_mk{};           //!< [W/mK]
    std::optional<double> k20_high_w_mk{};          //!< [W/mK]
    double density_kg_m3 = 0.0;                     //!< bulk, dry [kg/m3]
    std::vector<TablePoint> heat_capacity_j_kgk{};  //!< over temperature [J/kgK]
    std::vector<TablePoint> conductivity_w_mk{};    //!< measured by the user, replaces the law
    std::optional<double> moist_k_w_mk{};           //!< at about 5 % water [W/mK]
    std::optional<double> moist_k_low_w_mk{};       //!< [W/mK]
    std::optional<double> moist_k_high_w_mk{};      //!< [W/mK]
    std::optional<double> ceiling_c{};              //!< highest permitted temperature [°C]
    Provenance provenance{};
    Price price{};  //!< per m3
    std::string notes{};

    friend bool operator==(const Medium&, const Medium&) = default;
};

/// The field table of a medium.
[[nodiscard]] std::span<const Field> medium_fields();

/// Checks across fields: low <= typical <= high. Throws InvalidInput.
void check_medium(const Medium& medium);

}  // namespace heatmatch
