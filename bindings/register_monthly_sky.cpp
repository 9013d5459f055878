#include "docs_monthly_sky.hpp"
#include "monthly_sky.hpp"
#include "pybind.hpp"

#include <optional>
#include <vector>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/monthly_sky.hpp"

namespace heatmatch::python {

std::span<const double> row_numbers(const DoubleArray& array, const char* name) {
    if (array.ndim() != 1) {
        throw InvalidInput(ErrorDetail{.part = "weather",
                                       .field = name,
                                       .value = std::to_string(array.ndim()) + " dimensions",
                                       .allowed = "a list or an array of one dimension",
                                       .remedy = verbatim("give one number for each row")});
    }
    return {array.data(), static_cast<std::size_t>(array.size())};
}

MonthlyNormals normals_from(const py::object& sun_hours, const py::object& temp_min_c,
                            const py::object& temp_max_c) {
    const auto list = [](const py::object& input, const char* name) {
        const DoubleArray numbers = numbers_from(input, name);
        const auto rows = row_numbers(numbers, name);
        return std::vector<double>(rows.begin(), rows.end());
    };
    return {.sun_hours = list(sun_hours, "sun_hours"),
            .temp_min_c = list(temp_min_c, "temp_min_c"),
            .temp_max_c = list(temp_max_c, "temp_max_c")};
}

void register_monthly_sky(py::module_& module) {
    using Angle = std::optional<double>;
    py::class_<MonthlySky>(module, "MonthlySky",
                           "The hourly skies of a year that give the site's panels their twelve "
                           "monthly sums, also for panels of another tilt.")
        .def(py::init([](const Site& site, const py::object& sun_hours,
                         const py::object& temp_min_c, const py::object& temp_max_c) {
                 const MonthlyNormals normals = normals_from(sun_hours, temp_min_c, temp_max_c);
                 const py::gil_scoped_release release;
                 return MonthlySky(normals, site);
             }),
             py::arg("site"), py::arg("sun_hours"), py::arg("temp_min_c"), py::arg("temp_max_c"),
             docs::monthly_sky)
        .def_property_readonly("site", &MonthlySky::site, "whose panels have those sums")
        .def(
            "weather",
            [](const MonthlySky& sky, Angle tilt_deg, Angle azimuth_deg) {
                const py::gil_scoped_release release;
                return sky.weather(tilt_deg, azimuth_deg);
            },
            py::kw_only(), py::arg("tilt_deg") = py::none(), py::arg("azimuth_deg") = py::none(),
            docs::monthly_sky_weather)
        .def(
            "sun_hours",
            [](const MonthlySky& sky, Angle tilt_deg, Angle azimuth_deg) {
                const auto sums = sky.sun_hours(tilt_deg, azimuth_deg);
                return py::array_t<double>(static_cast<py::ssize_t>(sums.size()), sums.data());
            },
            py::kw_only(), py::arg("tilt_deg") = py::none(), py::arg("azimuth_deg") = py::none(),
            docs::monthly_sky_sun_hours)
        .def("__repr__",
             [](const MonthlySky& sky) {
                 return "MonthlySky(" + format_number(*sky.site().tilt_deg) + " deg tilt)";
             })
        .def(py::pickle(
            [](const MonthlySky& sky) {
                const MonthlyNormals& normals = sky.normals();
                return py::make_tuple(sky.site(), normals.sun_hours, normals.temp_min_c,
                                      normals.temp_max_c);
            },
            [](const py::tuple& state) {
                using Means = std::vector<double>;
                return MonthlySky({.sun_hours = state[1].cast<Means>(),
                                   .temp_min_c = state[2].cast<Means>(),
                                   .temp_max_c = state[3].cast<Means>()},
                                  state[0].cast<Site>());
            }));
}

}  // namespace heatmatch::python
