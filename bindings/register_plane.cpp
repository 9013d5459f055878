#include "docs_classes_more.hpp"
#include "docs_plane.hpp"
#include "pybind.hpp"
#include "sun.hpp"

#include "heatmatch/solar/cell_temperature.hpp"
#include "heatmatch/solar/plane_irradiance.hpp"

namespace heatmatch::python {

namespace {

constexpr Unit metre_per_second{"m/s", Dimension::ratio};
constexpr Range azimuth_range{.low = 0.0, .high = 360.0};
constexpr Range tilt_range{.low = 0.0, .high = 90.0};
constexpr Range air_range{.low = -90.0, .high = 70.0};

py::object on_plane(const py::object& tilt_deg, const py::object& plane_azimuth_deg,
                    const py::object& apparent_zenith_deg, const py::object& sun_azimuth_deg,
                    const py::object& ghi_w_m2, const py::object& dni_w_m2,
                    const py::object& dhi_w_m2, const py::object& extraterrestrial_w_m2,
                    const py::object& albedo, const std::string& model, bool glass) {
    const SkyModel sky_model = sky_model_named(model);
    const auto in = broadcast<9>({
        NumberArgument{"tilt_deg", tilt_deg, unit::degree, tilt_range},
        NumberArgument{"plane_azimuth_deg", plane_azimuth_deg, unit::degree, azimuth_range},
        NumberArgument{"albedo", albedo, unit::none, {.low = 0.0, .high = 1.0}},
        NumberArgument{"apparent_zenith_deg", apparent_zenith_deg, unit::degree, zenith_range},
        NumberArgument{"sun_azimuth_deg", sun_azimuth_deg, unit::degree, azimuth_range},
        NumberArgument{"ghi_w_m2", ghi_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"dni_w_m2", dni_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"dhi_w_m2", dhi_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"extraterrestrial_w_m2", extraterrestrial_w_m2, unit::watt_per_m2,
                       extraterrestrial_range},
    });
    const auto out = map_broadcast<5>(in, [&](const std::array<double, 9>& v) {
        const Plane plane{v[0], v[1], v[2]};
        const SunPosition sun{.apparent_zenith_deg = v[3], .azimuth_deg = v[4]};
        PlaneIrradiance on = plane_irradiance(plane, sun, {v[5], v[6], v[7]}, v[8], sky_model);
        if (glass) on = behind_glass(on, plane, incidence_angle_deg(plane, sun));
        return in_parts(on);
    });
    return plane_result(in.shape, out);
}

py::object incidence(const py::object& tilt_deg, const py::object& plane_azimuth_deg,
                     const py::object& apparent_zenith_deg, const py::object& sun_azimuth_deg) {
    const std::array arguments{
        NumberArgument{"tilt_deg", tilt_deg, unit::degree, tilt_range},
        NumberArgument{"plane_azimuth_deg", plane_azimuth_deg, unit::degree, azimuth_range},
        NumberArgument{"apparent_zenith_deg", apparent_zenith_deg, unit::degree, zenith_range},
        NumberArgument{"sun_azimuth_deg", sun_azimuth_deg, unit::degree, azimuth_range}};
    return map_to_one(arguments, [](const std::array<double, 4>& v) {
        return incidence_angle_deg({.tilt_deg = v[0], .azimuth_deg = v[1]},
                                   {.apparent_zenith_deg = v[2], .azimuth_deg = v[3]});
    });
}

py::object noct_temperature(const py::object& irradiance_w_m2, const py::object& air_c,
                            double noct_c) {
    check_argument("noct_c", noct_c, unit::celsius, {.low = 30.0, .high = 80.0});
    const std::array arguments{
        NumberArgument{"irradiance_w_m2", irradiance_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"air_c", air_c, unit::celsius, air_range}};
    return map_to_one(arguments, [noct_c](const std::array<double, 2>& v) {
        return noct_cell_temperature_c(v[0], v[1], noct_c);
    });
}

py::object faiman_temperature(const py::object& irradiance_w_m2, const py::object& air_c,
                              const py::object& wind_m_s, double still_w_m2k,
                              double wind_w_m2k_per_ms) {
    check_argument("still_w_m2k", still_w_m2k, unit::watt_per_m2_k, {.low = 1.0, .high = 200.0});
    check_argument("wind_w_m2k_per_ms", wind_w_m2k_per_ms, unit::none, {.low = 0.0, .high = 50.0});
    const std::array arguments{
        NumberArgument{"irradiance_w_m2", irradiance_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"air_c", air_c, unit::celsius, air_range},
        NumberArgument{"wind_m_s", wind_m_s, metre_per_second, {.low = 0.0, .high = 100.0}}};
    const FaimanCooling cooling{still_w_m2k, wind_w_m2k_per_ms};
    return map_to_one(arguments, [&cooling](const std::array<double, 3>& v) {
        return faiman_cell_temperature_c(v[0], v[1], v[2], cooling);
    });
}

py::object transmission(const py::object& incidence_deg) {
    const std::array arguments{
        NumberArgument{"incidence_deg", incidence_deg, unit::degree, zenith_range}};
    return map_to_one(arguments,
                      [](const std::array<double, 1>& v) { return glass_transmission(v[0]); });
}

/// Irradiance on a plane, as numbers or as arrays.
template <class On>
void describe_plane(py::class_<On>& cls) {
    cls.def_readonly("beam_w_m2", &On::beam_w_m2, "Irradiance from the sun's disc [W/m2].")
        .def_readonly("circumsolar_w_m2", &On::circumsolar_w_m2,
                      "Irradiance from around the sun [W/m2].")
        .def_readonly("sky_w_m2", &On::sky_w_m2, "Irradiance from the rest of the sky [W/m2].")
        .def_readonly("ground_w_m2", &On::ground_w_m2,
                      "Irradiance reflected by the ground [W/m2].");
}

void register_plane_classes(py::module_& module) {
    py::class_<PlaneIrradiance> one(module, "PlaneIrradiance", docs::class_plane_irradiance);
    describe_plane(one);
    one.def_property_readonly("total_w_m2", &PlaneIrradiance::total_w_m2,
                              "Irradiance from all of these [W/m2].")
        .def("__repr__",
             [](const PlaneIrradiance& on) {
                 return "PlaneIrradiance(total_w_m2=" + format_number(on.total_w_m2()) + ')';
             })
        .def(pickle_of(&PlaneIrradiance::beam_w_m2, &PlaneIrradiance::circumsolar_w_m2,
                       &PlaneIrradiance::sky_w_m2, &PlaneIrradiance::ground_w_m2));
    py::class_<PlaneIrradiances> many(module, "PlaneIrradiances", docs::class_plane_irradiances);
    describe_plane(many);
    many.def_readonly("total_w_m2", &PlaneIrradiances::total_w_m2,
                      "Irradiance from all of these [W/m2].")
        .def("__repr__",
             [](const PlaneIrradiances& on) {
                 return "PlaneIrradiances(" + std::to_string(on.total_w_m2.size()) + " values)";
             })
        .def(pickle_of(&PlaneIrradiances::beam_w_m2, &PlaneIrradiances::circumsolar_w_m2,
                       &PlaneIrradiances::sky_w_m2, &PlaneIrradiances::ground_w_m2,
                       &PlaneIrradiances::total_w_m2));
}

}  // namespace

void register_plane(py::module_& module) {
    register_plane_classes(module);
    module.def("plane_irradiance", &on_plane, py::kw_only(), py::arg("tilt_deg"),
               py::arg("plane_azimuth_deg"), py::arg("apparent_zenith_deg"),
               py::arg("sun_azimuth_deg"), py::arg("ghi_w_m2"), py::arg("dni_w_m2"),
               py::arg("dhi_w_m2"), py::arg("extraterrestrial_w_m2") = solar_constant_w_m2,
               py::arg("albedo") = 0.2, py::arg("model") = "hay_davies",
               py::arg("behind_glass") = false, docs::plane_irradiance);
    module.def("incidence_angle_deg", &incidence, py::kw_only(), py::arg("tilt_deg"),
               py::arg("plane_azimuth_deg"), py::arg("apparent_zenith_deg"),
               py::arg("sun_azimuth_deg"), docs::incidence_angle_deg);
    module.def("glass_transmission", &transmission, py::arg("incidence_deg"),
               docs::glass_transmission);
    module.def("noct_cell_temperature_c", &noct_temperature, py::arg("irradiance_w_m2"),
               py::arg("air_c"), py::kw_only(), py::arg("noct_c") = usual_noct_c,
               docs::noct_cell_temperature_c);
    module.def("faiman_cell_temperature_c", &faiman_temperature, py::arg("irradiance_w_m2"),
               py::arg("air_c"), py::arg("wind_m_s"), py::kw_only(),
               py::arg("still_w_m2k") = FaimanCooling{}.still_w_m2k,
               py::arg("wind_w_m2k_per_ms") = FaimanCooling{}.wind_w_m2k_per_ms,
               docs::faiman_cell_temperature_c);
}

}  // namespace heatmatch::python
