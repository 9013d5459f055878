#include "docs_classes_more.hpp"
#include "docs_space.hpp"
#include "state.hpp"
#include "views.hpp"

#include "heatmatch/heat/space_balance.hpp"

namespace heatmatch::python {

namespace {

constexpr std::array<NamedNumber<SpaceBalance>, 5> space_numbers{{
    {"cover_w_k", &SpaceBalance::cover_w_k,
     "Heat loss through the covers, per kelvin above the outside, sum of U A [W/K]."},
    {"cover_low_w_k", &SpaceBalance::cover_low_w_k,
     "Low end of the heat loss through the covers [W/K]."},
    {"cover_high_w_k", &SpaceBalance::cover_high_w_k,
     "High end of the heat loss through the covers [W/K]."},
    {"air_w_k", &SpaceBalance::air_w_k,
     "Heat loss by air change, per kelvin above the outside [W/K]."},
    {"heat_capacity_wh_k", &SpaceBalance::heat_capacity_wh_k,
     "Heat capacity of air, ground and objects that warm with the space [Wh/K]; 0 if the air "
     "follows at once."},
}};

}  // namespace

py::tuple state_of(const SpaceBalance& space) {
    return py::make_tuple(numbers_state(space, space_numbers), space.target_c,
                          assumption_states(space.assumed), space.needed_kwh_per_day);
}

SpaceBalance space_balance_from(const py::tuple& state) {
    SpaceBalance space;
    fill_numbers(space, space_numbers, state[0]);
    space.target_c = state[1].cast<std::optional<double>>();
    space.assumed = assumptions_from(state[2]);
    space.needed_kwh_per_day = state[3].cast<std::optional<double>>();
    return space;
}

void register_space(py::module_& module) {
    py::class_<SpaceBalance> cls(module, "SpaceBalance", docs::class_space_balance);
    add_numbers(cls, space_numbers);
    cls.def_readonly("target_c", &SpaceBalance::target_c,
                     "Target temperature at night [°C]; None if not stated.")
        .def_readonly(
            "needed_kwh_per_day", &SpaceBalance::needed_kwh_per_day,
            "Heat that keeps it at its target, mean over the season of a ranking [kWh/day]; "
            "without sun and ground; None if not known.")
        .def_property_readonly("known", &SpaceBalance::known, "Whether the covers are known.")
        .def_property_readonly("loss_w_k", &SpaceBalance::loss_w_k,
                               "Total heat loss, per kelvin above the outside [W/K].")
        .def_property_readonly(
            "assumed", [](const SpaceBalance& space) { return texts_of(space.assumed); },
            "Assumptions, one sentence each.")
        .def(
            "lift_k",
            [](const SpaceBalance& space, const py::object& heat_w) {
                return map_numbers(heat_w, "heat_w", [&](double watts) {
                    check_argument("heat_w", watts, unit::watt, {.low = 0.0, .high = 1e7});
                    return space.lift_k(watts);
                });
            },
            py::arg("heat_w"), docs::space_lift_k)
        .def("__repr__",
             [](const SpaceBalance& space) {
                 return "<SpaceBalance loses " + format_number(space.loss_w_k(), 4) + " W/K>";
             })
        .def(py::pickle([](const SpaceBalance& space) { return state_of(space); },
                        &space_balance_from));
}

}  // namespace heatmatch::python
