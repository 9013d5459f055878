#include "placed_array.hpp"

#include <algorithm>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/array.hpp"

namespace heatmatch::python {

namespace {

/// Equal panels one by one, without bypass diodes: under equal light none conducts.
MixedArray mixed_of(const Array& array) {
    const StringPanel panel{.diode = array.panel, .bypass = false};
    const PanelString string{
        .panels = std::vector<StringPanel>(static_cast<std::size_t>(array.series), panel)};
    return MixedArray::of(
        std::vector<PanelString>(static_cast<std::size_t>(array.parallel), string));
}

void append_weathers(std::vector<const Weather*>& to, const py::handle& given) {
    if (py::isinstance<Weather>(given)) {
        to.push_back(&given.cast<const Weather&>());
        return;
    }
    if (!py::isinstance<py::list>(given) && !py::isinstance<py::tuple>(given)) {
        throw InvalidInput(
            ErrorDetail{.part = "energy curve",
                        .field = "weather",
                        .value = quote(py::repr(given).cast<std::string>()),
                        .allowed = "a Weather, or a list with that of each panel",
                        .remedy = verbatim("make one with Weather.from_months or from_frame")});
    }
    for (const py::handle each : given) append_weathers(to, each);
}

}  // namespace

bool is_array(const py::object& object) {
    return py::isinstance<MixedArray>(object) || py::isinstance<Array>(object);
}

PlacedArray placed_array(const py::object& array, const py::object& weather,
                         const NodeOptions& options, const std::optional<double>& noct_c) {
    PlacedArray placed{.array = py::isinstance<Array>(array) ? mixed_of(array.cast<Array>())
                                                             : array.cast<MixedArray>()};
    std::vector<const Weather*> given;
    append_weathers(given, weather);
    const std::size_t count = placed.array.panel_count();
    if (given.size() != 1 && given.size() != count) {
        throw InvalidInput(ErrorDetail{
            .part = "energy curve",
            .field = "weather",
            .value = std::to_string(given.size()) + " of them",
            .allowed = "one for the array, or one for each of its " + std::to_string(count) +
                       " panels, string by string",
            .remedy = verbatim("make the weather of each plane with Weather.on_plane")});
    }
    std::vector<const Weather*> planes;
    std::size_t panel_index = 0;
    for (const PanelString& string : placed.array.strings) {
        for (const StringPanel& panel : string.panels) {
            const Weather* own = given[given.size() == 1 ? 0 : panel_index];
            ++panel_index;
            auto known = std::find_if(planes.begin(), planes.end(), [own](const Weather* plane) {
                return plane == own || *plane == *own;
            });
            if (known == planes.end()) known = planes.insert(planes.end(), own);
            placed.places.push_back({.plane = static_cast<std::size_t>(known - planes.begin()),
                                     .noct_c = noct_c.value_or(panel.noct_c)});
        }
    }
    const py::gil_scoped_release release;
    check_places(placed.array, placed.places, planes);
    placed.planes = plane_nodes(planes, options);
    return placed;
}

py::tuple nodes_state(const WeatherNodes& nodes) {
    const auto array_of = [](const std::vector<double>& list) {
        return py::array_t<double>(static_cast<py::ssize_t>(list.size()), list.data());
    };
    return py::make_tuple(array_of(nodes.irradiance_w_m2), array_of(nodes.base_c),
                          array_of(nodes.heating_irradiance_w_m2), array_of(nodes.hours));
}

WeatherNodes nodes_from(const py::tuple& state) {
    const auto list = [&state](std::size_t i) { return state[i].cast<std::vector<double>>(); };
    return {.irradiance_w_m2 = list(0),
            .base_c = list(1),
            .heating_irradiance_w_m2 = list(2),
            .hours = list(3)};
}

py::tuple placed_array_state(const PlacedArray& placed) {
    py::list places;
    for (const PanelPlace& place : placed.places) {
        places.append(py::make_tuple(place.plane, place.noct_c, place.shade));
    }
    py::list planes;
    for (const WeatherNodes& nodes : placed.planes) planes.append(nodes_state(nodes));
    return py::make_tuple(mixed_array_state(placed.array), places, planes);
}

PlacedArray placed_array_from(const py::tuple& state) {
    PlacedArray placed{.array = mixed_array_from(state[0])};
    for (const py::handle each : state[1]) {
        const auto parts = each.cast<py::tuple>();
        placed.places.push_back({.plane = parts[0].cast<std::size_t>(),
                                 .noct_c = parts[1].cast<double>(),
                                 .shade = parts[2].cast<std::vector<double>>()});
    }
    for (const py::handle each : state[2])
        placed.planes.push_back(nodes_from(each.cast<py::tuple>()));
    return placed;
}

}  // namespace heatmatch::python
