#include "weather_state.hpp"

#include "state.hpp"

#include <memory>

#include "heatmatch/solar/sky.hpp"

namespace heatmatch::python {

namespace {

py::array_t<double> rows_array(const std::vector<double>& list) {
    return py::array_t<double>(static_cast<py::ssize_t>(list.size()), list.data());
}

/// The rows of the sky; what they share with the weather is in its own state.
py::object sky_state(const Weather& weather) {
    if (!weather.sky.made_from) return py::none();
    const SkyRows& rows = weather.sky.made_from->rows();
    return py::make_tuple(
        record_to_dict(site_fields(), &rows.site), rows_array(rows.unix_time_s),
        rows_array(rows.ghi_w_m2), rows_array(rows.dni_w_m2), rows_array(rows.dhi_w_m2),
        rows_array(rows.air_c), rows_array(rows.wind_factor), rows_array(rows.hours), rows.days,
        rows.step_hours, rows.first_hour, rows.remarks, assumption_states(rows.assumed));
}

KeptSky sky_from(const py::object& kept) {
    if (kept.is_none()) return {};
    const auto state = kept.cast<py::tuple>();
    const auto list = [&state](std::size_t i) { return state[i].cast<std::vector<double>>(); };
    Site site;
    fill_record(site_fields(), &site, state[0].cast<py::dict>(), "site");
    return {.made_from = std::make_shared<const Sky>(
                SkyRows{.site = std::move(site),
                        .unix_time_s = list(1),
                        .ghi_w_m2 = list(2),
                        .dni_w_m2 = list(3),
                        .dhi_w_m2 = list(4),
                        .air_c = list(5),
                        .wind_factor = list(6),
                        .hours = list(7),
                        .days = state[8].cast<std::array<double, 12>>(),
                        .step_hours = state[9].cast<double>(),
                        .first_hour = state[10].cast<std::optional<double>>(),
                        .remarks = state[11].cast<Sentences>(),
                        .assumed = assumptions_from(state[12])})};
}

}  // namespace

py::tuple weather_state(const Weather& weather) {
    return py::make_tuple(rows_array(weather.irradiance_w_m2), rows_array(weather.base_c),
                          rows_array(weather.heating_irradiance_w_m2), rows_array(weather.hours),
                          py::array_t<std::uint8_t>(static_cast<py::ssize_t>(weather.month.size()),
                                                    weather.month.data()),
                          rows_array(weather.clear_w_m2), rows_array(weather.overcast_w_m2),
                          weather.days, weather.step_hours, weather.remarks,
                          assumption_states(weather.assumed), weather.first_hour,
                          rows_array(weather.rear_w_m2), rows_array(weather.rear_clear_w_m2),
                          rows_array(weather.rear_overcast_w_m2),
                          assumption_states(weather.rear_assumed), sky_state(weather));
}

Weather weather_from(const py::tuple& state) {
    const auto list = [&state](std::size_t i) { return state[i].cast<std::vector<double>>(); };
    return {.irradiance_w_m2 = list(0),
            .base_c = list(1),
            .heating_irradiance_w_m2 = list(2),
            .hours = list(3),
            .month = state[4].cast<std::vector<std::uint8_t>>(),
            .clear_w_m2 = list(5),
            .overcast_w_m2 = list(6),
            .rear_w_m2 = list(12),
            .rear_clear_w_m2 = list(13),
            .rear_overcast_w_m2 = list(14),
            .days = state[7].cast<std::array<double, 12>>(),
            .step_hours = state[8].cast<double>(),
            .first_hour = state[11].cast<std::optional<double>>(),
            .remarks = state[9].cast<Sentences>(),
            .assumed = assumptions_from(state[10]),
            .rear_assumed = assumptions_from(state[15]),
            .sky = sky_from(state[16])};
}

}  // namespace heatmatch::python
