#include "docs_classes_more.hpp"
#include "docs_store_log.hpp"
#include "pybind.hpp"
#include "store_log.hpp"
#include "views.hpp"

#include "heatmatch/operation/calibration/first_fire.hpp"
#include "heatmatch/text/text_file.hpp"

namespace heatmatch::python {

namespace {

template <auto member>
py::array logged(const py::object& self) {
    return view_of(self, std::span<const double>(self.cast<const StoreLog&>().*member));
}

/// A path, also as a text of one line; otherwise the text itself.
StoreLog log_from(const py::object& given) {
    if (py::isinstance<py::str>(given)) {
        const std::string text = text_from(given, "text_or_path");
        if (text.find('\n') != std::string::npos) return store_log_from_csv(text);
    }
    return store_log_from_csv(read_text_file(path_from(given)));
}

py::tuple log_state(const StoreLog& log) {
    py::list probes;
    for (const Probe& probe : log.probes) probes.append(state_of(probe));
    py::list temperatures;
    for (const auto& list : log.temperature_c) temperatures.append(array_of(list));
    return py::make_tuple(array_of(log.hours), array_of(log.power_w), array_of(log.air_c), probes,
                          temperatures, log.remarks);
}

StoreLog log_from_state(const py::tuple& state) {
    using List = std::vector<double>;
    StoreLog log{.hours = state[0].cast<List>(),
                 .power_w = state[1].cast<List>(),
                 .air_c = state[2].cast<List>(),
                 .remarks = state[5].cast<Sentences>()};
    for (const py::handle& probe : state[3]) {
        log.probes.push_back(probe_from(probe.cast<py::tuple>()));
    }
    for (const py::handle& list : state[4]) log.temperature_c.push_back(list.cast<List>());
    return log;
}

}  // namespace

py::tuple state_of(const Probe& probe) {
    return py::make_tuple(probe.name, text_of_choice(probe.place), probe.radius_m, probe.height_m);
}

Probe probe_from(const py::tuple& state) {
    return {.name = state[0].cast<std::string>(),
            .place = state[1].cast<ProbePlace>(),
            .radius_m = state[2].cast<std::optional<double>>(),
            .height_m = state[3].cast<std::optional<double>>()};
}

void register_store_log(py::module_& module) {
    py::class_<Probe>(module, "Probe", docs::class_probe)
        .def_readonly("name", &Probe::name, "Name of the column in the log.")
        .def_readonly("place", &Probe::place,
                      "Place of the probe: \"bed\", \"wall\", \"lid\" or \"sheath\".")
        .def_readonly("radius_m", &Probe::radius_m,
                      "Distance from the axis of the store [m]; None outside the bed.")
        .def_readonly("height_m", &Probe::height_m,
                      "Height above the floor of the store [m]; None outside the bed.")
        .def("__repr__", [](const Probe& probe) { return "<Probe " + probe.name + ">"; })
        .def(py::pickle([](const Probe& probe) { return state_of(probe); }, &probe_from));
    py::class_<StoreLog>(module, "StoreLog",
                         "Temperatures and power of a store over time. Make it with from_csv or "
                         "from_frame.")
        .def_static("from_csv", &log_from, py::arg("text_or_path"), py::pos_only(),
                    docs::store_log_from_csv)
        .def_static("first_fire", &first_fire, py::arg("candidate"), docs::first_fire)
        .def_property_readonly("hours", &logged<&StoreLog::hours>, "time since any beginning [h]")
        .def_property_readonly("power_w", &logged<&StoreLog::power_w>,
                               "mean power into the bank since the row before [W]")
        .def_property_readonly("air_c", &logged<&StoreLog::air_c>, "air around the store [°C]")
        .def_readonly("probes", &StoreLog::probes, "probes, one for each list of temperatures")
        .def_property_readonly(
            "temperature_c",
            [](const py::object& self) {
                py::list lists;
                for (const auto& list : self.cast<const StoreLog&>().temperature_c) {
                    lists.append(view_of(self, std::span<const double>(list)));
                }
                return lists;
            },
            "temperatures of each probe [°C]; nan where none was read")
        .def_property_readonly("readings", &StoreLog::readings, "number of temperatures read")
        .def_readonly("remarks", &StoreLog::remarks, "omitted readings")
        .def("__len__", &StoreLog::size)
        .def("__repr__",
             [](const StoreLog& log) {
                 return "<StoreLog of " + std::to_string(log.size()) + " rows, " +
                        std::to_string(log.probes.size()) + " probes>";
             })
        .def(py::pickle(&log_state, &log_from_state));
}

}  // namespace heatmatch::python
