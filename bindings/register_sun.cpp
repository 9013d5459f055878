#include "docs_classes_more.hpp"
#include "docs_sun.hpp"
#include "pybind.hpp"
#include "sun.hpp"

#include <limits>

#include "heatmatch/solar/plane_irradiance.hpp"
#include "heatmatch/solar/sun_position.hpp"

namespace heatmatch::python {

namespace {

// Pyranometers read a few W/m2 below zero at night.
constexpr Range measured_range{.low = -100.0, .high = 3000.0};

struct SunPositions {
    Numbers zenith_deg{};
    Numbers apparent_zenith_deg{};
    Numbers azimuth_deg{};
    Numbers extraterrestrial_w_m2{};
};

struct SkyIrradiances {
    Numbers ghi_w_m2{};
    Numbers dni_w_m2{};
    Numbers dhi_w_m2{};
};

SunPositions sun_positions(double latitude_deg, double longitude_deg, double elevation_m,
                           const py::object& times_utc) {
    check_argument("latitude_deg", latitude_deg, unit::degree, {.low = -90.0, .high = 90.0});
    check_argument("longitude_deg", longitude_deg, unit::degree, {.low = -180.0, .high = 180.0});
    check_argument("elevation_m", elevation_m, unit::metre, {.low = -450.0, .high = 9000.0});
    const py::object seconds =
        py::module_::import("heatmatch.io.times").attr("seconds_since_1970")(times_utc);
    const Place place{latitude_deg, longitude_deg, elevation_m};
    const auto in = broadcast<1>({NumberArgument{.name = "times_utc", .given = seconds}});
    const auto out = map_broadcast<4>(in, [&place](const std::array<double, 1>& time_s) {
        const SunPosition sun = sun_position(place, time_s[0]);
        return std::array<double, 4>{sun.zenith_deg, sun.apparent_zenith_deg, sun.azimuth_deg,
                                     extraterrestrial_normal_w_m2(time_s[0])};
    });
    return {out[0], out[1], out[2], out[3]};
}

/// Skies as a SkyIrradiance for numbers, SkyIrradiances for arrays.
template <std::size_t In, class Function>
py::object skies(const std::array<NumberArgument, In>& arguments, Function function) {
    const Broadcast<In> in = broadcast(arguments);
    const auto out = map_broadcast<3>(in, [&function](const std::array<double, In>& values) {
        const SkyIrradiance sky = function(values);
        return std::array<double, 3>{sky.ghi_w_m2, sky.dni_w_m2, sky.dhi_w_m2};
    });
    if (!in.shape.empty()) return py::cast(SkyIrradiances{out[0], out[1], out[2]});
    return py::cast(SkyIrradiance{*out[0].data(), *out[1].data(), *out[2].data()});
}

py::object clear_sky(const py::object& apparent_zenith_deg, const std::string& model,
                     double elevation_m, double linke_turbidity,
                     const py::object& extraterrestrial_w_m2) {
    check_argument("elevation_m", elevation_m, unit::metre, {.low = -450.0, .high = 9000.0});
    check_argument("linke_turbidity", linke_turbidity, unit::none, {.low = 1.0, .high = 15.0});
    const bool ineichen = model == "ineichen";
    if (!ineichen && model != "haurwitz")
        refuse_word("model", model, "\"ineichen\" or \"haurwitz\"");
    const std::array arguments{
        NumberArgument{"apparent_zenith_deg", apparent_zenith_deg, unit::degree, zenith_range},
        NumberArgument{"extraterrestrial_w_m2", extraterrestrial_w_m2, unit::watt_per_m2,
                       extraterrestrial_range}};
    constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
    return skies(arguments, [&](const std::array<double, 2>& values) {
        if (!ineichen) return SkyIrradiance{haurwitz_ghi_w_m2(values[0]), unknown, unknown};
        return ineichen_clear_sky(values[0], {elevation_m, linke_turbidity, values[1]});
    });
}

py::object split(const py::object& ghi_w_m2, const py::object& zenith_deg,
                 const py::object& extraterrestrial_w_m2) {
    const std::array arguments{
        NumberArgument{"ghi_w_m2", ghi_w_m2, unit::watt_per_m2, measured_range},
        NumberArgument{"zenith_deg", zenith_deg, unit::degree, zenith_range},
        NumberArgument{"extraterrestrial_w_m2", extraterrestrial_w_m2, unit::watt_per_m2,
                       extraterrestrial_range}};
    return skies(arguments, [](const std::array<double, 3>& values) {
        return erbs_split(values[0], values[1], values[2]);
    });
}

/// Irradiances of the ground, as numbers or as arrays.
template <class Sky>
py::class_<Sky> register_sky(py::module_& module, const char* name, const char* doc) {
    return py::class_<Sky>(module, name, doc)
        .def_readonly("ghi_w_m2", &Sky::ghi_w_m2, "Global horizontal irradiance [W/m2].")
        .def_readonly("dni_w_m2", &Sky::dni_w_m2, "Direct normal irradiance [W/m2].")
        .def_readonly("dhi_w_m2", &Sky::dhi_w_m2, "Diffuse horizontal irradiance [W/m2].")
        .def(pickle_of(&Sky::ghi_w_m2, &Sky::dni_w_m2, &Sky::dhi_w_m2));
}

}  // namespace

void register_sun(py::module_& module) {
    py::class_<SunPositions>(module, "SunPositions", docs::class_sun_positions)
        .def_readonly("zenith_deg", &SunPositions::zenith_deg,
                      "Zenith angle without refraction [deg].")
        .def_readonly("apparent_zenith_deg", &SunPositions::apparent_zenith_deg,
                      "Zenith angle with refraction [deg].")
        .def_readonly("azimuth_deg", &SunPositions::azimuth_deg,
                      "Azimuth clockwise from north, 0 to 360 [deg].")
        .def_readonly("extraterrestrial_w_m2", &SunPositions::extraterrestrial_w_m2,
                      "Irradiance normal to the sun outside the atmosphere [W/m2].")
        .def("__repr__",
             [](const SunPositions& sun) {
                 return "SunPositions(" + std::to_string(sun.zenith_deg.size()) + " moments)";
             })
        .def(pickle_of(&SunPositions::zenith_deg, &SunPositions::apparent_zenith_deg,
                       &SunPositions::azimuth_deg, &SunPositions::extraterrestrial_w_m2));
    register_sky<SkyIrradiance>(module, "SkyIrradiance", docs::class_sky_irradiance)
        .def("__repr__", [](const SkyIrradiance& sky) {
            return "SkyIrradiance(ghi_w_m2=" + format_number(sky.ghi_w_m2) +
                   ", dni_w_m2=" + format_number(sky.dni_w_m2) +
                   ", dhi_w_m2=" + format_number(sky.dhi_w_m2) + ')';
        });
    register_sky<SkyIrradiances>(module, "SkyIrradiances", docs::class_sky_irradiances)
        .def("__repr__", [](const SkyIrradiances& sky) {
            return "SkyIrradiances(" + std::to_string(sky.ghi_w_m2.size()) + " values)";
        });
    module.def("sun_position", &sun_positions, py::arg("latitude_deg"), py::arg("longitude_deg"),
               py::arg("elevation_m"), py::arg("times_utc"), docs::sun_position);
    module.def("clear_sky", &clear_sky, py::arg("apparent_zenith_deg"), py::kw_only(),
               py::arg("model") = "ineichen", py::arg("elevation_m") = 0.0,
               py::arg("linke_turbidity") = ClearAir{}.linke_turbidity,
               py::arg("extraterrestrial_w_m2") = solar_constant_w_m2, docs::clear_sky);
    module.def("erbs_split", &split, py::arg("ghi_w_m2"), py::arg("zenith_deg"),
               py::arg("extraterrestrial_w_m2"), docs::erbs_split);
}

}  // namespace heatmatch::python
