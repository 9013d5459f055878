#include "charged_bed.hpp"
#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "docs_sheath_heat.hpp"

#include "heatmatch/heat/packed_bed.hpp"

namespace heatmatch::python {

namespace {

std::string text_of(const TemperatureBand& band) {
    return format_number(band.low_c, 4) + " to " + format_number(band.high_c, 4) + " °C";
}

void register_bands(py::module_& module) {
    py::class_<TemperatureBand>(module, "TemperatureBand", docs::class_temperature_band)
        .def_readonly("low_c", &TemperatureBand::low_c, "Low end of the temperature [°C].")
        .def_readonly("typical_c", &TemperatureBand::typical_c, "Typical temperature [°C].")
        .def_readonly("high_c", &TemperatureBand::high_c, "High end of the temperature [°C].")
        .def("__repr__",
             [](const TemperatureBand& band) {
                 return "TemperatureBand(low_c=" + format_number(band.low_c, 4) +
                        ", typical_c=" + format_number(band.typical_c, 4) +
                        ", high_c=" + format_number(band.high_c, 4) + ')';
             })
        .def(py::pickle([](const TemperatureBand& band) { return state_of(band); },
                        &temperature_band_from));
}

void register_result(py::module_& module) {
    using Result = SheathTemperature;
    py::class_<Result>(module, "SheathTemperature", docs::class_sheath_temperature)
        .def_readonly("sheath_c", &Result::sheath_c,
                      "Sheath temperature of the hottest leg, as a band [°C].")
        .def_readonly("coil_c", &Result::coil_c,
                      "Temperature of the coil of the hottest leg, as a band [°C].")
        .def_readonly("bed_mean_c", &Result::bed_mean_c,
                      "Mean temperature of the bed, as a band [°C].")
        .def_readonly("wall_c", &Result::wall_c,
                      "Temperature of the outer wall at its hottest spot, as a band [°C].")
        .def_readonly("lid_c", &Result::lid_c,
                      "Temperature of the lid's outer surface, as a band [°C].")
        .def_readonly(
            "sheath_verdict_c", &Result::sheath_verdict_c,
            "Sheath temperature that margins use [°C]: low conductivity, rise times 1.10.")
        .def_readonly("w_per_cm", &Result::w_per_cm, "Power per heated length [W/cm].")
        .def_property_readonly(
            "assumed", [](const Result& at) { return texts_of(at.assumed); },
            "Assumptions, one sentence each.")
        .def_readonly("warnings", &Result::warnings,
                      "Suspicious values of fill or store, one sentence each.")
        .def("__repr__",
             [](const Result& at) {
                 return "<sheath " + text_of(at.sheath_c) + ", judged " +
                        format_number(at.sheath_verdict_c, 4) + " °C, at " +
                        format_number(at.w_per_cm, 3) + " W/cm>";
             })
        .def(py::pickle(
            [](const Result& at) {
                return py::make_tuple(state_of(at.sheath_c), state_of(at.coil_c),
                                      state_of(at.bed_mean_c), state_of(at.wall_c),
                                      state_of(at.lid_c), at.sheath_verdict_c, at.w_per_cm,
                                      assumption_states(at.assumed), at.warnings);
            },
            [](const py::tuple& state) {
                const auto band = [&state](std::size_t i) {
                    return temperature_band_from(state[i].cast<py::tuple>());
                };
                return Result{.sheath_c = band(0),
                              .coil_c = band(1),
                              .bed_mean_c = band(2),
                              .wall_c = band(3),
                              .lid_c = band(4),
                              .sheath_verdict_c = state[5].cast<double>(),
                              .w_per_cm = state[6].cast<double>(),
                              .assumed = assumptions_from(state[7]),
                              .warnings = state[8].cast<Sentences>()};
            }));
    py::class_<BedTemperatures>(module, "BedTemperatures", docs::class_bed_temperatures)
        .def_readonly("sheath_c", &BedTemperatures::sheath_c,
                      "Sheath temperature of the hottest leg [°C].")
        .def_readonly("bed_mean_c", &BedTemperatures::bed_mean_c,
                      "Mean temperature of the bed [°C].")
        .def_readonly("edge_c", &BedTemperatures::edge_c,
                      "Mean temperature of the bed where it meets the wall [°C].")
        .def_readonly(
            "inner_c", &BedTemperatures::inner_c,
            "Temperature of the bed where it meets wall, lid or floor, at the hottest spot [°C].")
        .def_readonly("wall_c", &BedTemperatures::wall_c,
                      "Temperature of the wall's outer surface at its hottest spot [°C].")
        .def_readonly("lid_c", &BedTemperatures::lid_c,
                      "Temperature of the lid's outer surface at its hottest spot [°C].")
        .def_readonly("floor_c", &BedTemperatures::floor_c,
                      "Temperature of the floor under the store at its hottest spot [°C].")
        .def_readonly("floor_inner_c", &BedTemperatures::floor_inner_c,
                      "Temperature of the bed where it meets the floor, at the hottest spot [°C].")
        .def("__repr__",
             [](const BedTemperatures& at) {
                 return "BedTemperatures(sheath_c=" + format_number(at.sheath_c, 4) +
                        ", bed_mean_c=" + format_number(at.bed_mean_c, 4) +
                        ", edge_c=" + format_number(at.edge_c, 4) +
                        ", wall_c=" + format_number(at.wall_c, 4) +
                        ", lid_c=" + format_number(at.lid_c, 4) + ')';
             })
        .def(py::pickle(
            [](const BedTemperatures& at) {
                return py::make_tuple(at.sheath_c, at.bed_mean_c, at.edge_c, at.inner_c, at.wall_c,
                                      at.lid_c, at.floor_c, at.floor_inner_c);
            },
            [](const py::tuple& state) {
                const auto number = [&state](std::size_t i) { return state[i].cast<double>(); };
                return BedTemperatures{.sheath_c = number(0),
                                       .bed_mean_c = number(1),
                                       .edge_c = number(2),
                                       .inner_c = number(3),
                                       .floor_inner_c = number(7),
                                       .wall_c = number(4),
                                       .lid_c = number(5),
                                       .floor_c = number(6)};
            }));
}

}  // namespace

void register_sheath_heat(py::module_& module) {
    register_bands(module);
    register_result(module);
    module.def(
        "sheath_temperature",
        [](const Element& element, const Store& store, double power_w, double hours, double air_c,
           double days, bool moist, int elements, const py::object& medium) {
            const Medium fill = medium_from(medium, store);
            const py::gil_scoped_release release;
            return sheath_temperature(
                fill, store, element, elements,
                {.power_w = power_w, .hours = hours, .air_c = air_c, .days = days, .moist = moist});
        },
        py::arg("element"), py::arg("store"), py::kw_only(), py::arg("power_w"),
        py::arg("hours") = StoreCharge{}.hours, py::arg("air_c") = StoreCharge{}.air_c,
        py::arg("days") = StoreCharge{}.days, py::arg("moist") = false, py::arg("elements") = 1,
        py::arg("medium") = py::none(), docs::sheath_temperature);
    module.def(
        "packed_bed_conductivity",
        [](double temperature_c, double porosity, double grain_mm, double solid_w_mk,
           double emissivity, double shape, double contact) {
            check_argument("temperature_c", temperature_c, unit::celsius,
                           {.low = -60.0, .high = 1500.0});
            check_argument("porosity", porosity, unit::none, {.low = 0.05, .high = 0.95});
            check_argument("grain_mm", grain_mm, unit::millimetre, {.low = 0.001, .high = 200.0});
            check_argument("solid_w_mk", solid_w_mk, unit::watt_per_m_k,
                           {.low = 0.02, .high = 500.0});
            check_argument("emissivity", emissivity, unit::none, {.low = 0.01, .high = 1.0});
            check_argument("shape", shape, unit::none, {.low = 1.0, .high = 3.0});
            check_argument("contact", contact, unit::none, {.low = 0.0, .high = 0.2});
            constexpr double zero_c = 273.15;
            return packed_bed_conductivity({.porosity = porosity,
                                            .grain_mm = grain_mm,
                                            .solid_w_mk = solid_w_mk,
                                            .emissivity = emissivity,
                                            .shape = shape,
                                            .contact = contact},
                                           temperature_c + zero_c);
        },
        py::kw_only(), py::arg("temperature_c"), py::arg("porosity") = PackedBed{}.porosity,
        py::arg("grain_mm") = PackedBed{}.grain_mm, py::arg("solid_w_mk") = PackedBed{}.solid_w_mk,
        py::arg("emissivity") = PackedBed{}.emissivity, py::arg("shape") = PackedBed{}.shape,
        py::arg("contact") = PackedBed{}.contact, docs::packed_bed_conductivity);
    module.def(
        "sheath_in_air_c",
        [](double diameter_mm, const py::object& w_per_cm, double emissivity, double air_c) {
            check_argument("diameter_mm", diameter_mm, unit::millimetre,
                           {.low = 0.5, .high = 300.0});
            check_argument("emissivity", emissivity, unit::none, {.low = 0.0, .high = 1.0});
            check_argument("air_c", air_c, unit::celsius, {.low = -60.0, .high = 900.0});
            constexpr double mm_per_m = 1000.0;
            constexpr double cm_per_m = 100.0;
            return map_numbers(w_per_cm, "w_per_cm", [&](double load) {
                check_argument("w_per_cm", load, unit::none, {.low = 0.0, .high = 1000.0});
                return sheath_in_air_c(diameter_mm / mm_per_m, load * cm_per_m, emissivity, air_c);
            });
        },
        py::kw_only(), py::arg("diameter_mm"), py::arg("w_per_cm"), py::arg("emissivity") = 0.9,
        py::arg("air_c") = 20.0, docs::sheath_in_air_c);
    module.def(
        "coil_above_sheath_k",
        [](const py::object& w_per_cm) {
            return map_numbers(w_per_cm, "w_per_cm", [](double load) {
                check_argument("w_per_cm", load, unit::none, {.low = 0.0, .high = 1000.0});
                constexpr double cm_per_m = 100.0;
                return coil_above_sheath_k(load * cm_per_m);
            });
        },
        py::kw_only(), py::arg("w_per_cm"), docs::coil_above_sheath_k);
}

}  // namespace heatmatch::python
