#include "docs_rear.hpp"
#include "pybind.hpp"
#include "sun.hpp"

#include "heatmatch/solar/rear_light.hpp"

namespace heatmatch::python {

namespace {

constexpr Range direction_range{.low = 0.0, .high = 360.0};

/// The row layout of a site; throws InvalidInput if its tilt is not stated.
RowLayout layout_of(const Site& site) {
    if (!site.tilt_deg) {
        throw InvalidInput(ErrorDetail{.part = "site",
                                       .field = "tilt_deg",
                                       .value = "(missing)",
                                       .allowed = "given, for the light on the backs",
                                       .remedy = verbatim("0 for flat panels, 90 for upright")});
    }
    RowLayout layout{.tilt_deg = *site.tilt_deg, .pitch_m = site.row_pitch_m};
    layout.height_m = site.panel_height_m.value_or(layout.height_m);
    layout.slant_m = site.row_slant_m.value_or(layout.slant_m);
    return layout;
}

py::object on_backs(const Site& site, const py::object& apparent_zenith_deg,
                    const py::object& sun_azimuth_deg, const py::object& dni_w_m2,
                    const py::object& dhi_w_m2, const py::object& extraterrestrial_w_m2,
                    const std::string& model, bool glass) {
    const SkyModel sky_model = sky_model_named(model);
    const auto in = broadcast<5>({
        NumberArgument{"apparent_zenith_deg", apparent_zenith_deg, unit::degree, zenith_range},
        NumberArgument{"sun_azimuth_deg", sun_azimuth_deg, unit::degree, direction_range},
        NumberArgument{"dni_w_m2", dni_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"dhi_w_m2", dhi_w_m2, unit::watt_per_m2, irradiance_range},
        NumberArgument{"extraterrestrial_w_m2", extraterrestrial_w_m2, unit::watt_per_m2,
                       extraterrestrial_range},
    });
    const RowLayout layout = layout_of(site);
    const RearView view(layout);
    const double towards_equator = site.latitude_deg.value_or(0.0) < 0.0 ? 0.0 : 180.0;
    const Plane plane{layout.tilt_deg, site.azimuth_deg.value_or(towards_equator),
                      site.albedo.value_or(Plane{}.albedo)};
    const auto out = map_broadcast<5>(in, [&](const std::array<double, 5>& v) {
        const SunPosition sun{.apparent_zenith_deg = v[0], .azimuth_deg = v[1]};
        const SunBehind behind = view.sun_behind(plane, sun);
        const SkyIrradiance sky{.dni_w_m2 = v[2], .dhi_w_m2 = v[3]};
        PlaneIrradiance on = view.on_back(behind, plane, sun, sky, v[4], sky_model);
        if (glass) on = view.behind_glass(on, behind);
        return in_parts(on);
    });
    return plane_result(in.shape, out);
}

}  // namespace

void register_rear(py::module_& module) {
    auto site = py::reinterpret_borrow<py::class_<Site>>(module.attr("Site"));
    site.def("rear_irradiance", &on_backs, py::kw_only(), py::arg("apparent_zenith_deg"),
             py::arg("sun_azimuth_deg"), py::arg("dni_w_m2"), py::arg("dhi_w_m2"),
             py::arg("extraterrestrial_w_m2") = solar_constant_w_m2,
             py::arg("model") = "hay_davies", py::arg("behind_glass") = false,
             docs::rear_irradiance);
}

}  // namespace heatmatch::python
