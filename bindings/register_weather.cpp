#include "monthly_sky.hpp"
#include "pybind.hpp"
#include "state.hpp"
#include "views.hpp"
#include "weather_state.hpp"

#include <cmath>
#include <numeric>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/cell_temperature.hpp"
#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/monthly_weather.hpp"
#include "heatmatch/solar/observed_weather.hpp"
#include "heatmatch/solar/rear_light.hpp"
#include "heatmatch/solar/sky.hpp"

namespace heatmatch::python {

namespace {

template <auto member>
py::object list_of(const py::object& self) {
    const auto& list = self.cast<const Weather&>().*member;
    using Number = typename std::remove_cvref_t<decltype(list)>::value_type;
    return view_of(self, std::span<const Number>(list));
}

/// The same for a list that may be unknown.
template <auto member>
py::object maybe_list_of(const py::object& self) {
    if ((self.cast<const Weather&>().*member).empty()) return py::none();
    return list_of<member>(self);
}

/// Rows that may be unknown (None: empty); keeps the array they lie in.
struct RowList {
    DoubleArray array{};
    std::span<const double> span{};

    RowList(const py::object& input, const char* name) {
        if (input.is_none()) return;
        array = numbers_from(input, name);
        span = row_numbers(array, name);
        if (span.empty()) {
            throw InvalidInput(
                ErrorDetail{.part = "weather",
                            .field = name,
                            .value = "0 values",
                            .allowed = "one for each row, or None",
                            .remedy = verbatim("leave it out where it is not known")});
        }
    }
};

std::vector<std::uint8_t> months_from(const py::object& month) {
    std::vector<std::uint8_t> months;
    if (month.is_none()) return months;
    const DoubleArray numbers = numbers_from(month, "month");
    for (const double number : row_numbers(numbers, "month")) {
        if (!(number >= 0.0 && number <= 12.0 && number == std::floor(number))) {
            throw InvalidInput(
                ErrorDetail{.part = "weather",
                            .field = "month",
                            .value = format_number(number),
                            .allowed = "a whole number, >= 0 and <= 12",
                            .remedy = verbatim("1 for January, 0 where it is not known")});
        }
        months.push_back(static_cast<std::uint8_t>(number));
    }
    return months;
}

Weather from_plane(const py::object& plane_irradiance_w_m2, const py::object& cell_temperature_c,
                   double hours_per_row, const py::object& month) {
    const DoubleArray sun = numbers_from(plane_irradiance_w_m2, "plane_irradiance_w_m2");
    const DoubleArray cell = numbers_from(cell_temperature_c, "cell_temperature_c");
    const std::vector<std::uint8_t> months = months_from(month);
    const auto sun_rows = row_numbers(sun, "plane_irradiance_w_m2");
    const auto cell_rows = row_numbers(cell, "cell_temperature_c");
    const py::gil_scoped_release release;
    return weather_from_plane(sun_rows, cell_rows, hours_per_row, months);
}

Weather from_months(const Site& site, const py::object& sun_hours, const py::object& temp_min_c,
                    const py::object& temp_max_c) {
    const MonthlyNormals normals = normals_from(sun_hours, temp_min_c, temp_max_c);
    const py::gil_scoped_release release;
    return weather_from_months(normals, site);
}

Weather cloudless(const Site& site, const py::object& temp_min_c, const py::object& temp_max_c) {
    if (temp_min_c.is_none() != temp_max_c.is_none()) {
        throw InvalidInput(ErrorDetail{.part = "weather",
                                       .field = temp_min_c.is_none() ? "temp_min_c" : "temp_max_c",
                                       .value = "(missing)",
                                       .allowed = "given where the other is",
                                       .remedy = verbatim("give both, or neither")});
    }
    std::optional<MonthlyNormals> normals;
    if (!temp_min_c.is_none()) {
        normals = normals_from(py::cast(std::vector<double>(12, 0.0)), temp_min_c, temp_max_c);
    }
    const py::gil_scoped_release release;
    return clear_days(site, normals);
}

double label_from(const py::object& label) {
    if (py::isinstance<py::str>(label)) {
        const auto word = text_from(label, "label");
        if (word == "left") return 0.0;
        if (word == "center") return 0.5;
        if (word == "right") return 1.0;
    } else if (py::isinstance<py::float_>(label) || py::isinstance<py::int_>(label)) {
        return label.cast<double>();
    }
    throw InvalidInput(
        ErrorDetail{.part = "weather",
                    .field = "label",
                    .value = quote(py::repr(label).cast<std::string>()),
                    .allowed = "\"left\", \"center\", \"right\" or a number >= 0 and <= 1",
                    .remedy = verbatim("left where the time is the start of the step")});
}

Weather from_arrays(const Site& site, const py::object& unix_time_s, const py::object& air_c,
                    const py::object& ghi_w_m2, const py::object& dni_w_m2,
                    const py::object& dhi_w_m2, const py::object& wind_m_s, const py::object& label,
                    double wind_height_m) {
    const RowList times(unix_time_s, "unix_time_s");
    const RowList air(air_c, "air_c");
    const RowList ghi(ghi_w_m2, "ghi_w_m2");
    const RowList dni(dni_w_m2, "dni_w_m2");
    const RowList dhi(dhi_w_m2, "dhi_w_m2");
    const RowList wind(wind_m_s, "wind_m_s");
    const Observations observations{.unix_time_s = times.span,
                                    .ghi_w_m2 = ghi.span,
                                    .dni_w_m2 = dni.span,
                                    .dhi_w_m2 = dhi.span,
                                    .air_c = air.span,
                                    .wind_m_s = wind.span,
                                    .wind_height_m = wind_height_m,
                                    .label = label_from(label)};
    const py::gil_scoped_release release;
    return weather_from_observations(observations, site);
}

std::string weather_text(const Weather& weather) {
    const double hours = std::accumulate(weather.hours.begin(), weather.hours.end(), 0.0);
    return "Weather(" + std::to_string(weather.size()) + " rows, " + format_number(hours) + " h, " +
           format_number(weather.irradiation_kwh_m2(), 4) + " kWh/m2 on the cells)";
}

void add_makers(py::class_<Weather>& cls) {
    cls.def_static("from_plane", &from_plane, py::arg("plane_irradiance_w_m2"),
                   py::arg("cell_temperature_c"), py::arg("hours_per_row"), py::kw_only(),
                   py::arg("month") = py::none(),
                   "Weather from the sun on the cells and their temperature. A year of rows begins "
                   "on January 1st unless `month` (1 to 12 for each row) is given.")
        .def_static("from_months", &from_months, py::arg("site"), py::arg("sun_hours"),
                    py::arg("temp_min_c"), py::arg("temp_max_c"),
                    "A year of hours from twelve means: daily sum on the panels' plane in kWh/m2, "
                    "daily low and high of the air.")
        .def_static("clear_days", &cloudless, py::arg("site"), py::kw_only(),
                    py::arg("temp_min_c") = py::none(), py::arg("temp_max_c") = py::none(),
                    "A year of cloudless hours; the air between twelve mean lows and highs, "
                    "or at 10 °C.")
        .def_static(
            "from_arrays", &from_arrays, py::arg("site"), py::arg("unix_time_s"), py::arg("air_c"),
            py::kw_only(), py::arg("ghi_w_m2") = py::none(), py::arg("dni_w_m2") = py::none(),
            py::arg("dhi_w_m2") = py::none(), py::arg("wind_m_s") = py::none(),
            py::arg("label") = "left", py::arg("wind_height_m") = mast_height_m,
            "Weather from measured or modeled sun in steps of 1 minute to 1 hour; what is "
            "missing of global, direct and diffuse follows from the others. Wind is brought "
            "down from the height at which it was measured; 2 m: at the panels.");
}

}  // namespace

void register_weather(py::module_& module) {
    py::class_<Weather> cls(
        module, "Weather",
        "Sun on the cells and the inputs of their temperature, row by row. Make it "
        "with from_plane, from_frame, from_months or clear_days.");
    add_makers(cls);
    cls.def_property_readonly("plane_irradiance_w_m2", &list_of<&Weather::irradiance_w_m2>,
                              "that reaches the cells [W/m2]")
        .def_property_readonly("base_c", &list_of<&Weather::base_c>, "cells without sun [°C]")
        .def_property_readonly("heating_irradiance_w_m2",
                               &list_of<&Weather::heating_irradiance_w_m2>,
                               "irradiance that warms the cells, reduced for wind [W/m2]")
        .def_property_readonly("hours", &list_of<&Weather::hours>, "duration of each row [h]")
        .def_property_readonly("month", &list_of<&Weather::month>, "1 to 12; 0 where not known")
        .def_property_readonly("clear_w_m2", &maybe_list_of<&Weather::clear_w_m2>,
                               "on the cells under a cloudless sky [W/m2], or None")
        .def_property_readonly("overcast_w_m2", &maybe_list_of<&Weather::overcast_w_m2>,
                               "on the cells with the sun behind a cloud [W/m2], or None")
        .def_property_readonly("rear_w_m2", &maybe_list_of<&Weather::rear_w_m2>,
                               "on the backs of the panels, the mean over their height [W/m2], or "
                               "None where the weather was made without a site")
        .def_property_readonly(
            "days",
            [](const py::object& self) {
                return view_of(self, std::span<const double>(self.cast<const Weather&>().days));
            },
            "that the rows cover of each month, January first")
        .def_readonly("step_hours", &Weather::step_hours, "over which the rows are means [h]")
        .def_readonly("first_hour", &Weather::first_hour,
                      "of the day by mean solar time where the first row begins [h]; None where "
                      "rows do not follow each other without a gap, or the air is not known")
        .def_readonly("remarks", &Weather::remarks, "gaps and repairs, counted")
        .def_property_readonly(
            "assumed", [](const Weather& weather) { return texts_of(weather.assumed); },
            "assumptions")
        .def_property_readonly(
            "rear_assumed", [](const Weather& weather) { return texts_of(weather.rear_assumed); },
            "assumptions for rear light")
        .def_property_readonly("irradiation_kwh_m2", &Weather::irradiation_kwh_m2,
                               "sun on the cells over all rows [kWh/m2]")
        .def_property_readonly("has_cloud_band", &Weather::has_cloud_band,
                               "whether split_by_cloud can be used")
        .def(
            "cell_temperature_c",
            [](const Weather& weather, double noct_c) {
                check_argument("noct_c", noct_c, unit::celsius, {.low = 20.0, .high = 90.0});
                py::array_t<double> cells(static_cast<py::ssize_t>(weather.size()));
                for (std::size_t row = 0; row < weather.size(); ++row) {
                    cells.mutable_data()[row] = weather.cell_temperature_c(row, noct_c);
                }
                return cells;
            },
            py::kw_only(), py::arg("noct_c") = usual_noct_c,
            "Temperature of the cells of a panel of that NOCT in each row [°C].")
        .def("split_by_cloud", &split_by_cloud, py::call_guard<py::gil_scoped_release>(),
             "Each row as a sunny and an overcast part of the same mean: the bound of cloud within "
             "the step.")
        .def(
            "on_plane",
            [](const Weather& weather, double tilt_deg, double azimuth_deg) {
                check_argument("tilt_deg", tilt_deg, unit::degree, {.low = 0.0, .high = 90.0});
                check_argument("azimuth_deg", azimuth_deg, unit::degree,
                               {.low = 0.0, .high = 360.0});
                const py::gil_scoped_release release;
                return on_plane(weather, tilt_deg, azimuth_deg);
            },
            py::kw_only(), py::arg("tilt_deg"), py::arg("azimuth_deg"),
            "The weather on another plane under the same sky.")
        .def_property_readonly(
            "has_sky", [](const Weather& weather) { return weather.sky.made_from != nullptr; },
            "whether on_plane can be used")
        .def(
            "with_rear_irradiance",
            [](const Weather& weather, double share) {
                check_argument("share", share, unit::none, {.low = 0.0, .high = 1.0});
                return with_rear_irradiance(weather, share);
            },
            py::arg("share"),
            "Weather for panels that convert that share of the light on their back (their "
            "bifaciality) into current as that on the front.")
        .def("__len__", &Weather::size)
        .def(py::self == py::self)
        .def("__repr__", &weather_text)
        .def(py::pickle(&weather_state, &weather_from));
}

}  // namespace heatmatch::python
