#include "rod_contact.hpp"

#include "base/sentences.hpp"

#include <cmath>
#include <utility>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double open_groove_mm = 0.2;
constexpr double packed_groove_mm = 0.05;
constexpr double coarse_share = 0.25;  // share of the rod's diameter
// The conductivity law represents stones by a smaller grain: the starter's of 10 to 60 mm by a half
// to a quarter. Where stone_mm is not stated, the larger of these.
constexpr double stones_over_grain = 4.5;
constexpr double unknown_grain_mm = 9.0;  // as large as any in the starter
constexpr double roughness_mm = 0.01;
constexpr double covered = 0.8;

/// `d / (4 0.8 [...])`: the air's conductivity cancels.
double gap_to_stones_mm(double stone_mm) {
    const double rough = 2.0 * roughness_mm / stone_mm;
    return stone_mm / (4.0 * covered * ((1.0 + rough) * std::log(1.0 + 1.0 / rough) - 1.0));
}

}  // namespace

RodContact rod_contact(const Medium& medium, const Store& store, const Element& element,
                       double rod_radius_m) {
    RodContact contact;
    const auto gap = [&](double gap_mm, const char* field, Sentence source) {
        contact.gap_m = gap_mm / 1000.0;
        contact.assumed.push_back({"element \"" + element.id + '"', field,
                                   sentence_of(Amount{gap_mm, unit::millimetre, 2}),
                                   std::move(source)});
    };
    if (medium.form == MediumForm::solid) {
        gap(store.rods_packed.value_or(false) ? packed_groove_mm : open_groove_mm,
            "gap to the solid around it", base_sentences::from_memory());
        return contact;
    }
    if (medium.form != MediumForm::granular) return contact;
    const double grain_mm = medium.grain_mm.value_or(unknown_grain_mm);
    if (medium.stone_mm.value_or(grain_mm) <= coarse_share * 2000.0 * rod_radius_m) return contact;
    const double stone_mm = medium.stone_mm.value_or(stones_over_grain * grain_mm);
    if (!medium.stone_mm) {
        contact.assumed.push_back({"medium \"" + medium.id + '"', "stone_mm",
                                   sentence_of(Amount{stone_mm, unit::millimetre}),
                                   base_sentences::from_memory()});
    }
    gap(gap_to_stones_mm(stone_mm), "gap to the stones around it",
        sentence_of(Name{"schlunder-1984"}));
    return contact;
}

}  // namespace heatmatch
