#include "yard_directions.hpp"

#include <algorithm>

using heatmatch::Installation;
using heatmatch::StoreMaterial;

namespace {

heatmatch::Element& element(Installation& yard) {
    return yard.parts.elements.front();
}

heatmatch::Medium& fill(Installation& yard) {
    return yard.parts.media.front();
}

void lessen(std::optional<double>& number, double to, double share) {
    if (number) *number *= 1.0 + (to - 1.0) * share;
}

using Margins = std::vector<std::string_view>;
const Margins in_the_bed{"sheath temperature", "coil temperature", "settled sand"};
const Margins at_the_end{"terminal temperature", "end seal", "hot tail insulation",
                         "hot tail joint"};

Margins all_of(std::initializer_list<Margins> lists) {
    Margins joined;
    for (const Margins& list : lists) joined.insert(joined.end(), list.begin(), list.end());
    return joined;
}

// Less heat loss or more power makes everything in the store hotter.
const Margins by_kept_heat = all_of({in_the_bed, {"store ceiling", "stagnation"}});

std::vector<YardDirection> of_elements() {
    return {
        {"element for fewer watts",
         {"element power", "survivor power"},
         [](Installation& y, double s) {
             lessen(element(y).rated_w, 0.3, s);
             element(y).resistance_ohm.reset();
         }},
        {"element for fewer volts",
         {"element voltage", "sheath voltage"},
         [](Installation& y, double s) { lessen(element(y).rated_v, 0.3, s); }},
        {"shorter heated length", all_of({in_the_bed, {"survivor sheath"}}),
         [](Installation& y, double s) { lessen(element(y).heated_length_mm, 0.6, s); }},
        {"shorter cold length", at_the_end,
         [](Installation& y, double s) { lessen(element(y).cold_length_mm, 0.4, s); },
         0.03},  // a shorter pin has less resistance
        {"terminals for less heat",
         {"terminal temperature"},
         [](Installation& y, double s) { lessen(element(y).terminal_limit_c, 0.4, s); }},
        {"insulation that leaks",
         {"earth fault"},
         [](Installation& y, double s) { lessen(element(y).insulation_resistance_mohm, 0.01, s); }},
        {"thermostat inside",
         {"built-in control"},
         [](Installation& y, double) { element(y).built_in_ac_control = true; }},
        {"sheath for less heat",
         {"sheath temperature", "survivor sheath", "stagnation"},
         [](Installation& y, double s) {
             y.parts.sheaths.front().verdict_limit_c *= 1.0 - 0.5 * s;
         }},
        {"coil for less heat",
         {"coil temperature"},
         [](Installation& y, double s) { lessen(y.parts.alloys.front().limit_c, 0.3, s); }},
        {"elements closer together",
         {"sheath temperature", "coil temperature"},
         [](Installation& y, double s) { lessen(y.store->element_spacing_mm, 0.5, s); }},
    };
}

std::vector<YardDirection> of_stores() {
    return {
        {"fill for less heat",
         {"store ceiling"},
         [](Installation& y, double s) {
             if (fill(y).ceiling_c) {
                 fill(y).ceiling_c = std::max(40.0, *fill(y).ceiling_c * (1.0 - 0.8 * s));
             }
         }},
        {"fill that conducts less", in_the_bed,
         [](Installation& y, double s) { lessen(fill(y).k20_low_w_mk, 0.5, s); }},
        {"fill that conducts more",
         {"wall and lid", "touch temperature"},
         [](Installation& y, double s) { lessen(fill(y).k20_high_w_mk, 2.0, s); },
         0.04},  // beside a leg the hottest spot is between the ends
        {"warmer air", all_of({by_kept_heat, {"touch temperature"}}),
         [](Installation& y, double s) { *y.store->air_c += 25.0 * s; }},
        {"longer charge",
         all_of({in_the_bed, at_the_end, {"wall and lid", "touch temperature", "store ceiling"}}),
         [](Installation& y, double s) { *y.store->charge_hours += 8.0 * s; }},
        {"lid that keeps more", by_kept_heat,
         [](Installation& y, double s) { lessen(y.store->top_u_w_m2k, 0.2, s); }},
        {"floor that keeps more", by_kept_heat,
         [](Installation& y, double s) { lessen(y.store->bottom_u_w_m2k, 0.2, s); }},
        {"wall that keeps more", by_kept_heat,
         [](Installation& y, double s) { lessen(y.store->side_u_w_m2k, 0.2, s); }},
        {"smaller measured loss", by_kept_heat,
         [](Installation& y, double s) { lessen(y.store->loss_factor, 0.4, s); }},
        {"lower store",
         {"fit in store"},
         [](Installation& y, double s) { lessen(y.store->height_m, 0.4, s); }},
        {"wood nearer",
         {"wall and lid"},
         [](Installation& y, double s) { lessen(y.store->combustible_distance_mm, 0.0, s); }},
        {"stones that are larger", in_the_bed,
         [](Installation& y, double s) {
             if (fill(y).stone_mm) *fill(y).stone_mm *= 1.0 + 2.0 * s;
         },
         0.02},  // a wider gap has more surface
        {"rods not packed", in_the_bed,
         [](Installation& y, double) { y.store->rods_packed = false; }},
        {"closed vessel",
         {"store ceiling", "pressure"},
         [](Installation& y, double) { y.store->vented = false; }},
        {"damp fill",
         {"dry-out", "pressure"},
         [](Installation& y, double) { y.store->moist = true; }},
        {"element that may fall dry",
         {"element covered"},
         [](Installation& y, double) { y.store->element_covered = false; }},
        {"vessel of foam",
         {"vessel material"},
         [](Installation& y, double) { y.store->vessel = StoreMaterial::polystyrene; }},
        {"liner of foam",
         {"liner material"},
         [](Installation& y, double) { y.store->liner = StoreMaterial::polystyrene; }},
        {"lagging of foam",
         {"lagging material"},
         [](Installation& y, double) { y.store->lagging = StoreMaterial::polystyrene; }},
        {"thicker lagging",
         {"terminal temperature", "end seal", "hot tail insulation", "hot tail joint"},
         [](Installation& y, double s) { *y.store->lagging_mm += 200.0 * s; }},
        {"still air at the tail",
         {"terminal temperature", "end seal", "hot tail insulation", "hot tail joint"},
         [](Installation& y, double s) {
             for (auto& run : y.runs) {
                 auto& wind = run.surroundings.wind_m_s;
                 if (wind) *wind *= 1.0 - s;
             }
         }},
        {"more wires at the tail",
         {"terminal temperature", "end seal", "hot tail insulation", "hot tail joint"},
         [](Installation& y, double s) {
             for (auto& run : y.runs) {
                 *run.surroundings.loaded_conductors += 1 + static_cast<int>(20.0 * s);
             }
         }},
        {"vessel not bonded",
         {"bonding"},
         [](Installation& y, double) { y.store->vessel_bonded = false; }},
        {"sheaths not bonded",
         {"bonding"},
         [](Installation& y, double) { y.store->sheath_bonded = false; }},
    };
}

}  // namespace

const std::vector<YardDirection>& thermal_directions() {
    static const std::vector<YardDirection> all = [] {
        std::vector<YardDirection> made = of_elements();
        const std::vector<YardDirection> more = of_stores();
        made.insert(made.end(), more.begin(), more.end());
        return made;
    }();
    return all;
}
