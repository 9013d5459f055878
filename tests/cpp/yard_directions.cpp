#include "yard_directions.hpp"

#include <algorithm>
#include <string>

using heatmatch::Installation;

namespace {

heatmatch::Panel& panel(Installation& yard) {
    return yard.parts.panels.front();
}

void scale(std::optional<double>& number, double factor) {
    if (number) *number *= factor;
}

/// The factor at a share of the way from 1 to it.
double towards(double factor, double share) {
    return 1.0 + (factor - 1.0) * share;
}

template <class List, class Change>
void each(List& list, Change change) {
    for (auto& item : list) change(item);
}

std::string grown(const std::string& hookup, int more_series, int more_parallel) {
    const std::size_t s = hookup.find('S');
    const int series = std::stoi(hookup.substr(0, s)) + more_series;
    const int parallel = std::stoi(hookup.substr(s + 1)) + more_parallel;
    return std::to_string(series) + 'S' + std::to_string(parallel) + 'P';
}

using Names = std::vector<std::string_view>;
// A higher cold voltage stresses everything that insulates, interrupts or can be touched.
const Names by_volts{"cold voltage",  "joint voltage", "sheath voltage",
                     "touch voltage", "series arc",    "bonding"};
const Names by_amperes{"run current", "joint current", "reverse current", "dc breaking",
                       "dc carrying", "insulation",    "plating",         "joint"};
const Names by_wire_heat{"insulation", "plating", "joint"};

std::vector<YardDirection> of_the_sun() {
    return {
        {"colder record", by_volts,
         [](Installation& y, double s) { y.site.record_low_c -= 25.0 * s; }},
        {"brighter sun",
         {"insulation", "plating", "joint", "dc breaking", "dc carrying"},
         [](Installation& y, double s) { y.site.bright_irradiance_w_m2 += 400.0 * s; }},
        {"wet place",
         {"touch voltage", "insulation"},
         [](Installation& y, double) { y.site.wet = true; }},
        {"bare live parts",
         {"touch voltage"},
         [](Installation& y, double) { y.site.live_parts_enclosed = false; }},
        {"frames not bonded",
         {"bonding"},
         [](Installation& y, double) { y.site.frames_bonded = false; }},
        {"array on a building",
         {"series arc", "placing"},
         [](Installation& y, double) { y.site.array_on = heatmatch::ArrayPlace::building; }},
        {"array that floats",
         {"disconnect", "dc breaking"},
         [](Installation& y, double) { y.site.earthing = heatmatch::Earthing::floating; }},
        {"either code",
         {"run current", "string fuse wire"},
         [](Installation& y, double) { y.site.code.reset(); }},
        {"more panels in series", by_volts,
         [](Installation& y, double) { y.circuit->panels = grown(y.circuit->panels, 1, 0); }},
        {"more strings", by_amperes,
         [](Installation& y, double) { y.circuit->panels = grown(y.circuit->panels, 0, 1); }},
        {"more open-circuit volts", by_volts,
         [](Installation& y, double s) { panel(y).v_oc *= towards(1.12, s); }},
        {"more short-circuit amperes", by_amperes,
         [](Installation& y, double s) {
             for (auto* amperes : {&panel(y).i_sc_bnpi, &panel(y).i_sc_bsi}) {
                 scale(*amperes, towards(1.25, s));
             }
             panel(y).i_sc *= towards(1.25, s);
         }},
        {"backs that take more light", by_amperes,
         [](Installation& y, double s) {
             heatmatch::Panel& own = panel(y);
             *own.bifaciality += (1.0 - *own.bifaciality) * s;
             if (own.i_sc_bnpi) *own.i_sc_bnpi += (1.135 * own.i_sc - *own.i_sc_bnpi) * s;
             if (own.i_sc_bsi) *own.i_sc_bsi += (1.3 * own.i_sc - *own.i_sc_bsi) * s;
         }},
        {"backs that are free", by_amperes,
         [](Installation& y, double) { y.panels.front().rear_blocked = false; }},
        {"volts that rise more in cold", by_volts,
         [](Installation& y, double s) { *panel(y).beta_voc_pct_per_k -= 0.2 * s; }},
        {"panel for fewer volts",
         {"cold voltage"},
         [](Installation& y, double s) { scale(panel(y).max_system_voltage_v, towards(0.2, s)); }},
        {"panel for a smaller fuse",
         {"reverse current"},
         [](Installation& y, double s) { scale(panel(y).max_series_fuse_a, towards(0.4, s)); }},
    };
}

std::vector<YardDirection> of_wires() {
    return {
        {"longer runs",
         {"voltage drop"},
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) { run.length_m *= 1.0 + 5.0 * s; });
         }},
        {"worse joints",
         {"voltage drop"},
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) { scale(run.joint_ohm, 1.0 + 8.0 * s); });
         }},
        {"hotter air around wire",
         {"plating", "joint", "run current", "terminal temperature", "end seal", "hot tail plating",
          "hot tail insulation", "hot tail joint", "device temperature"},
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) { *run.surroundings.air_c += 50.0 * s; });
         }},
        {"sun on wire", by_wire_heat,
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) { scale(run.surroundings.irradiance_w_m2, 1.0 + s); });
         }},
        {"still air", by_wire_heat,
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) { scale(run.surroundings.wind_m_s, 1.0 - s); });
         }},
        {"more wires in a bundle",
         {"insulation", "plating", "joint", "run current"},
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) {
                 *run.surroundings.loaded_conductors += 1 + static_cast<int>(20.0 * s);
             });
         }},
        {"inside a building",
         {"placing"},
         [](Installation& y, double) { each(y.runs, [](auto& run) { run.inside = true; }); }},
        {"no metal raceway",
         {"placing"},
         [](Installation& y, double) {
             each(y.runs, [](auto& run) { run.surroundings.metal_raceway = false; });
         }},
        {"nearer to the roof",
         {"run current"},
         [](Installation& y, double s) {
             each(y.runs, [s](auto& run) { scale(run.surroundings.roof_distance_mm, 1.0 - s); });
         }},
        {"wire for fewer amperes",
         {"run current"},
         [](Installation& y, double s) {
             each(y.parts.wires, [s](auto& wire) { scale(wire.ampacity_a, towards(0.4, s)); });
         }},
        {"wire for fewer volts",
         {"cold voltage"},
         [](Installation& y, double s) {
             each(y.parts.wires,
                  [s](auto& wire) { scale(wire.voltage_rating_v, towards(0.1, s)); });
         }},
        {"wire not for the sun",
         {"sunlight"},
         [](Installation& y, double) {
             each(y.parts.wires, [](auto& wire) { wire.sunlight_resistant = false; });
         }},
        {"insulation for less heat",
         {"insulation", "hot tail insulation", "run current"},
         [](Installation& y, double s) {
             each(y.parts.insulations, [s](auto& cover) {
                 cover.limit_c = std::max(45.0, cover.limit_c * (1.0 - 0.6 * s));
             });
         }},
        {"joints for less heat",
         {"joint", "hot tail joint"},
         [](Installation& y, double s) {
             each(y.parts.connectors, [s](auto& joint) {
                 joint.limit_c = std::max(45.0, joint.limit_c * (1.0 - 0.6 * s));
             });
         }},
        {"joints for fewer volts",
         {"joint voltage"},
         [](Installation& y, double s) {
             each(y.parts.connectors,
                  [s](auto& joint) { scale(joint.voltage_rating_v, towards(0.1, s)); });
         }},
        {"joints for fewer amperes",
         {"joint current"},
         [](Installation& y, double s) {
             each(y.parts.connectors,
                  [s](auto& joint) { scale(joint.current_rating_a, towards(0.2, s)); });
         }},
    };
}

std::vector<YardDirection> of_devices() {
    return {
        {"pairs of fewer amperes",
         {"dc breaking", "dc carrying", "disconnect", "independent limit"},
         [](Installation& y, double s) {
             each(y.parts.controls, [s](auto& control) {
                 each(control.dc_ratings, [s](auto& pair) { pair.a_dc *= towards(0.1, s); });
             });
         }},
        {"pairs of fewer volts",
         {"dc breaking", "disconnect", "independent limit"},
         [](Installation& y, double s) {
             each(y.parts.controls, [s](auto& control) {
                 each(control.dc_ratings, [s](auto& pair) { pair.v_dc *= towards(0.1, s); });
             });
         }},
        {"one pole wired",
         {"dc breaking", "disconnect", "independent limit"},
         [](Installation& y, double) {
             each(y.devices, [](auto& device) { device.poles_used = 1; });
         }},
        {"bodies for less heat",
         {"device temperature"},
         [](Installation& y, double s) {
             each(y.parts.controls, [s](auto& control) {
                 if (control.own_limit_c) {
                     *control.own_limit_c = std::max(25.0, *control.own_limit_c * (1.0 - 0.7 * s));
                 }
             });
         }},
        {"polarised",
         {"polarity"},
         [](Installation& y, double) {
             each(y.parts.controls, [](auto& control) { control.polarised = true; });
         }},
        {"semiconductors",
         {"disconnect", "independent limit"},
         [](Installation& y, double) {
             each(y.parts.controls, [](auto& control) { control.semiconductor = true; });
         }},
        {"wider tolerance of set points",
         {"limit acts in time"},
         [](Installation& y, double s) {
             each(y.devices, [s](auto& device) {
                 if (device.set_tolerance_k) *device.set_tolerance_k += 60.0 * s;
             });
         }},
        {"stays closed without supply",
         {"limit supply"},
         [](Installation& y, double) {
             each(y.devices, [](auto& device) {
                 if (device.opens_on_supply_loss) device.opens_on_supply_loss = false;
             });
         }},
        {"stays closed without probe",
         {"limit supply"},
         [](Installation& y, double) {
             each(y.devices, [](auto& device) {
                 if (device.opens_on_probe_break) device.opens_on_probe_break = false;
             });
         }},
        {"nothing driven",
         {"disconnect", "independent limit", "limit acts in time"},
         [](Installation& y, double) {
             each(y.devices, [](auto& device) { device.drives.clear(); });
         }},
    };
}

}  // namespace

const std::vector<YardDirection>& electrical_directions() {
    static const std::vector<YardDirection> all = [] {
        std::vector<YardDirection> made = of_the_sun();
        for (const auto& more : {of_wires(), of_devices()}) {
            made.insert(made.end(), more.begin(), more.end());
        }
        return made;
    }();
    return all;
}
