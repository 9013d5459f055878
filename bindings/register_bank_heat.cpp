#include "charged_bed.hpp"
#include "docs_bank_heat.hpp"
#include "docs_classes.hpp"
#include "state.hpp"

#include <functional>

#include "heatmatch/match/candidate/advice.hpp"

namespace heatmatch::python {

namespace {

/// The bed that one of a bank's charges describes.
ChargedBed bed_of(const BankHeat& heat, const std::string& conductivity, bool stagnation,
                  bool moist) {
    heat.need_equal();
    const ConductivityEnd end = conductivity_end_from(conductivity);
    const BedCharge& like = stagnation ? heat.stagnant : heat.careful;
    ChargedBed made = charged_bed(
        heat.store->medium, heat.store->store, heat.element, heat.elements,
        {.hours = like.hours, .air_c = like.air_c, .days = like.days, .moist = moist}, end);
    if (like.others.empty()) return made;
    // Beside the elements of other circuits, which are at full power.
    made.bed.legs = like.legs;
    made.bed.others = like.others;
    return made;
}

void register_point(py::module_& module) {
    py::class_<HeatPoint>(module, "HeatPoint", docs::class_heat_point)
        .def_readonly("w_per_cm", &HeatPoint::w_per_cm, "Power per heated length [W/cm].")
        .def_readonly(
            "sheath_c", &HeatPoint::sheath_c,
            "Sheath temperature that margins use [°C]: low conductivity, rise times 1.10.")
        .def_readonly("sheath_band", &HeatPoint::sheath_band,
                      "Sheath temperature from low to high [°C], without the factor in `sheath_c`.")
        .def_readonly(
            "gap_k", &HeatPoint::gap_k,
            "Share of the rise of `sheath_c` across the air gap between sheath and fill [K].")
        .def_readonly("coil_c", &HeatPoint::coil_c,
                      "Temperature of the coil when its sheath is at `sheath_c` [°C].")
        .def_readonly("void_c", &HeatPoint::void_c,
                      "Temperature of a sheath from which the sand has settled away [°C].")
        .def_readonly("bed_mean_c", &HeatPoint::bed_mean_c,
                      "Typical mean temperature of the bed [°C].")
        .def_readonly("wall_c", &HeatPoint::wall_c,
                      "Temperature of the outer wall at its hottest spot, at its worst end [°C].")
        .def_readonly("lid_c", &HeatPoint::lid_c,
                      "Temperature of the lid's outer surface, at its worst end [°C].")
        .def_readonly(
            "floor_c", &HeatPoint::floor_c,
            "Temperature of the floor under the store at its hottest spot, at its worst end [°C].")
        .def_readonly("inner_c", &HeatPoint::inner_c,
                      "Temperature where the fill meets wall, lid or floor, hottest spot, at its "
                      "worst end [°C].")
        .def_readonly("stagnation_sheath_c", &HeatPoint::stagnation_sheath_c,
                      "Sheath temperature at stagnation [°C]: after fourteen bright days in the "
                      "hottest air, at its worst end.")
        .def_readonly("stagnation_least_c", &HeatPoint::stagnation_least_c,
                      "Sheath temperature at stagnation in a fill that conducts well [°C], without "
                      "the factor in `sheath_c`.")
        .def_readonly("stagnation_wall_c", &HeatPoint::stagnation_wall_c,
                      "Temperature of the wall, at stagnation and at its worst end [°C].")
        .def_readonly("stagnation_inner_c", &HeatPoint::stagnation_inner_c,
                      "Temperature where the fill meets wall, lid or floor, at stagnation and at "
                      "its worst end [°C].")
        .def_readonly("stagnation_lid_c", &HeatPoint::stagnation_lid_c,
                      "Temperature of the lid, at stagnation and at its worst end [°C].")
        .def_readonly(
            "stagnation_floor_c", &HeatPoint::stagnation_floor_c,
            "Temperature of the floor under the store, at stagnation and at its worst end [°C].")
        .def_readonly(
            "stagnation_bottom_c", &HeatPoint::stagnation_bottom_c,
            "Temperature where the fill meets the floor, at stagnation and at its worst end [°C].")
        .def_property_readonly(
            "moist_sheath_c",
            [](const HeatPoint& at) {
                return at.moist_sheath_c == 0.0 ? std::nullopt : std::optional(at.moist_sheath_c);
            },
            "Typical sheath temperature before the fill dries [°C]; None if the fill is not moist.")
        .def_readonly("boils", &HeatPoint::boils,
                      "Whether a liquid fill reaches its boiling point.")
        .def("__repr__",
             [](const HeatPoint& at) {
                 return "<HeatPoint " + format_number(at.w_per_cm, 3) + " W/cm: sheath " +
                        format_number(at.sheath_c, 4) + " °C judged, wall " +
                        format_number(at.wall_c, 4) + " °C>";
             })
        .def(py::pickle(
            [](const HeatPoint& at) {
                return py::make_tuple(
                    at.w_per_cm, at.sheath_c, state_of(at.sheath_band), at.coil_c, at.void_c,
                    at.bed_mean_c, at.wall_c, at.lid_c, at.stagnation_sheath_c,
                    at.stagnation_wall_c, at.moist_sheath_c, at.boils, at.inner_c,
                    at.stagnation_inner_c, at.gap_k, at.floor_c, at.stagnation_lid_c,
                    at.stagnation_floor_c, at.stagnation_least_c, at.stagnation_bottom_c);
            },
            [](const py::tuple& state) {
                const auto number = [&state](std::size_t i) { return state[i].cast<double>(); };
                return HeatPoint{.w_per_cm = number(0),
                                 .sheath_c = number(1),
                                 .sheath_band = temperature_band_from(state[2].cast<py::tuple>()),
                                 .gap_k = number(14),
                                 .coil_c = number(3),
                                 .void_c = number(4),
                                 .bed_mean_c = number(5),
                                 .wall_c = number(6),
                                 .lid_c = number(7),
                                 .floor_c = number(15),
                                 .inner_c = number(12),
                                 .stagnation_sheath_c = number(8),
                                 .stagnation_least_c = number(18),
                                 .stagnation_wall_c = number(9),
                                 .stagnation_inner_c = number(13),
                                 .stagnation_lid_c = number(16),
                                 .stagnation_floor_c = number(17),
                                 .stagnation_bottom_c = number(19),
                                 .moist_sheath_c = number(10),
                                 .boils = state[11].cast<bool>()};
            }));
}

template <class Number>
std::vector<double> of_each(const Extremes& bright, Number number) {
    std::vector<double> numbers;
    for (const UnlikeLoad& load : bright.elements) numbers.push_back(std::invoke(number, load));
    return numbers;
}

void register_extremes(py::module_& module) {
    py::class_<Extremes>(module, "Extremes", docs::class_extremes)
        .def_readonly("element_power_w", &Extremes::element_power_w,
                      "Largest power of one element [W].")
        .def_readonly("element_voltage_v", &Extremes::element_voltage_v,
                      "Largest voltage across one element [V].")
        .def_readonly("survivor_power_w", &Extremes::survivor_power_w,
                      "Largest power of one element after a parallel branch has opened [W].")
        .def_readonly("current_a", &Extremes::current_a, "Largest current of the array [A].")
        .def_property_readonly(
            "powers_w",
            [](const Extremes& bright) { return of_each(bright, &UnlikeLoad::power_w); },
            "Largest power of each unlike element [W]; empty for equal elements.")
        .def_property_readonly(
            "voltages_v",
            [](const Extremes& bright) { return of_each(bright, &UnlikeLoad::voltage_v); },
            "Largest voltage across each unlike element [V]; empty for equal elements.")
        .def_property_readonly(
            "survivor_powers_w",
            [](const Extremes& bright) { return of_each(bright, &UnlikeLoad::survivor_power_w); },
            "Largest power of each unlike element after any other has opened [W].")
        .def("__repr__",
             [](const Extremes& bright) {
                 return "Extremes(element_power_w=" + format_number(bright.element_power_w, 4) +
                        ", element_voltage_v=" + format_number(bright.element_voltage_v, 4) +
                        ", survivor_power_w=" + format_number(bright.survivor_power_w, 4) +
                        ", current_a=" + format_number(bright.current_a, 4) + ')';
             })
        .def(py::pickle([](const Extremes& bright) { return state_of(bright); }, &extremes_from));
}

void register_advice(py::module_& module) {
    py::class_<Advice>(module, "Advice", docs::class_advice)
        .def_readonly("element_w", &Advice::element_w,
                      "Largest power of one element in cold, bright weather [W].")
        .def_readonly("largest_element_w", &Advice::largest_element_w,
                      "Largest power that one element may have every bright day [W]; None if no "
                      "limit is known.")
        .def_readonly("largest_w_per_cm", &Advice::largest_w_per_cm,
                      "Largest power per heated length [W/cm]; None if no limit is known.")
        .def_readonly(
            "within_limit", &Advice::within_limit,
            "Whether `element_w` is within `largest_element_w`; False if no limit is known.")
        .def_readonly("heated_length_mm", &Advice::heated_length_mm,
                      "Heated length of each element that would be within the limit [mm]; None if "
                      "none is found.")
        .def_readonly("length_fits", &Advice::length_fits,
                      "Whether legs of `heated_length_mm` fit the store.")
        .def_readonly("element_spacing_mm", &Advice::element_spacing_mm,
                      "Spacing of the elements at which their power would be within the limit "
                      "[mm]; None if none does.")
        .def_readonly("elements", &Advice::elements,
                      "Number of elements whose shares of the same power would be within the "
                      "limit; None if up to 16 are too few.")
        .def_readonly("legs", &Advice::legs,
                      "Number of legs into which an element that does not fit must be bent; None "
                      "if it fits or none would do.")
        .def_readonly("sentences", &Advice::sentences, "Advice, one sentence each.")
        .def("__repr__",
             [](const Advice& advice) {
                 const std::string text = text_of(advice.sentences);
                 return text.empty() ? std::string("<Advice:>") : "<Advice: " + text + '>';
             })
        .def(py::pickle(
            [](const Advice& advice) {
                return py::make_tuple(
                    advice.element_w, advice.largest_element_w, advice.largest_w_per_cm,
                    advice.within_limit, advice.heated_length_mm, advice.length_fits,
                    advice.element_spacing_mm, advice.elements, advice.legs, advice.sentences);
            },
            [](const py::tuple& state) {
                using Maybe = std::optional<double>;
                return Advice{.element_w = state[0].cast<double>(),
                              .largest_element_w = state[1].cast<Maybe>(),
                              .largest_w_per_cm = state[2].cast<Maybe>(),
                              .within_limit = state[3].cast<bool>(),
                              .heated_length_mm = state[4].cast<Maybe>(),
                              .length_fits = state[5].cast<bool>(),
                              .element_spacing_mm = state[6].cast<Maybe>(),
                              .elements = state[7].cast<std::optional<int>>(),
                              .legs = state[8].cast<std::optional<int>>(),
                              .sentences = state[9].cast<Sentences>()};
            }));
}

}  // namespace

py::tuple state_of(const Extremes& bright) {
    py::list elements;
    for (const UnlikeLoad& load : bright.elements) {
        elements.append(py::make_tuple(load.power_w, load.voltage_v, load.with_open_w));
    }
    return py::make_tuple(bright.element_power_w, bright.element_voltage_v, bright.survivor_power_w,
                          bright.current_a, elements);
}

Extremes extremes_from(const py::tuple& state) {
    std::vector<UnlikeLoad> elements;
    for (const py::handle& each : state[4]) {
        const auto load = each.cast<py::tuple>();
        elements.push_back({.power_w = load[0].cast<double>(),
                            .voltage_v = load[1].cast<double>(),
                            .with_open_w = load[2].cast<std::vector<double>>()});
    }
    return {.element_power_w = state[0].cast<double>(),
            .element_voltage_v = state[1].cast<double>(),
            .survivor_power_w = state[2].cast<double>(),
            .current_a = state[3].cast<double>(),
            .elements = std::move(elements)};
}

void register_bank_heat(py::module_& module) {
    register_point(module);
    register_extremes(module);
    register_advice(module);
    // Shared by circuits and immutable; pybind11 stores it in a holder without const.
    py::class_<BankHeat, std::shared_ptr<BankHeat>>(
        module, "BankHeat", "The elements of a circuit in its store, ready for any power.")
        .def_readonly("missing", &BankHeat::missing, "fields without which nothing is computed")
        .def_readonly("misfit", &BankHeat::misfit, "reason that the elements do not fit, or empty")
        .def_property_readonly("known", &BankHeat::known, "whether temperatures can be computed")
        .def_readonly("elements", &BankHeat::elements, "number of elements")
        .def_readonly("heated_length_m", &BankHeat::heated_length_m,
                      "heated length of all elements [m]")
        .def_readonly("liquid", &BankHeat::liquid, "whether the fill is a liquid")
        .def_property_readonly(
            "store", [](const BankHeat& heat) { return heat.store->store; }, "the store")
        .def_property_readonly(
            "medium", [](const BankHeat& heat) { return heat.store->medium; }, "the fill")
        .def_property_readonly(
            "charge_hours", [](const BankHeat& heat) { return heat.store->charge_hours; },
            "bright sun per day [h]")
        .def_property_readonly(
            "air_c", [](const BankHeat& heat) { return heat.store->air_c; },
            "air around the store on a bright day of the season [°C]")
        .def_property_readonly(
            "hottest_air_c", [](const BankHeat& heat) { return heat.store->hottest_air_c; },
            "air around the store in high summer [°C]")
        .def_readonly("sheath", &BankHeat::sheath, "sheath of the elements, or None")
        .def_readonly("coil_limit_c", &BankHeat::coil_limit_c,
                      "temperature limit of the alloy of the coil [°C], or None")
        .def_property_readonly(
            "assumed", [](const BankHeat& heat) { return texts_of(heat.assumed); },
            "Assumptions, one sentence each.")
        .def(
            "at",
            [](const BankHeat& heat, double element_w) -> std::optional<HeatPoint> {
                check_argument("element_w", element_w, unit::watt, {.low = 0.0, .high = 1e5});
                return heat.known() ? std::optional(heat.at(element_w)) : std::nullopt;
            },
            py::arg("element_w"), docs::bank_heat_at)
        .def("largest_element_w", &BankHeat::largest_element_w, py::kw_only(),
             py::arg("with_stagnation") = true, docs::bank_heat_largest_element_w)
        .def("bed", &bed_of, py::kw_only(), py::arg("conductivity") = "low",
             py::arg("stagnation") = false, py::arg("moist") = false, docs::bank_heat_bed)
        .def("__repr__",
             [](const BankHeat& heat) {
                 const std::string kind = heat.unlike ? "unlike elements" : heat.element.id;
                 return "<BankHeat " + std::to_string(heat.elements) + " x " + kind + " in " +
                        heat.store->medium.id + (heat.known() ? ">" : ", not computed>");
             })
        .def(py::pickle([](const BankHeat& heat) { return state_of(heat); },
                        [](const py::tuple& state) {
                            return std::const_pointer_cast<BankHeat>(bank_heat_from(state));
                        }));
}

}  // namespace heatmatch::python
