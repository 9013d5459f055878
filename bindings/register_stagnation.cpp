#include "docs_stagnation.hpp"
#include "lived_days.hpp"
#include "progress_call.hpp"
#include "views.hpp"

#include "heatmatch/operation/days/stagnation.hpp"

namespace heatmatch::python {

namespace {

/// A stagnation with its candidate.
struct HeldStagnation {
    Stagnation told{};  //!< without its run
    std::shared_ptr<LivedDays> run{};
};

std::vector<HeldStagnation> stagnated_together(const std::vector<const Candidate*>& circuits,
                                               const py::object& progress) {
    ProgressCall call(progress, between_looks);
    const std::vector<Candidate> shared = copies_of(circuits);
    return call.run([&] {
        std::vector<HeldStagnation> all;
        std::vector<Stagnation> found = simulate_stagnations(shared, call.callback());
        for (std::size_t i = 0; i < found.size(); ++i) {
            HeldStagnation held{.told = std::move(found[i])};
            held.run = lived_days(shared[i], std::move(held.told.run));
            held.told.run = {};
            all.push_back(std::move(held));
        }
        return all;
    });
}

HeldStagnation stagnated(const Candidate& candidate, const py::object& progress) {
    return stagnated_together({&candidate}, progress).front();
}

py::tuple stagnation_state(const HeldStagnation& held) {
    return py::make_tuple(held.told.month, held.told.delivered_kwh, state_of(*held.run),
                          tuple_with<PartPeak>(held.told.peaks, &state_of), held.told.sentences);
}

HeldStagnation stagnation_from(const py::tuple& state) {
    return {.told = {.month = state[0].cast<int>(),
                     .delivered_kwh = state[1].cast<double>(),
                     .peaks = items_from(state[3], part_peak_from),
                     .sentences = state[4].cast<Sentences>()},
            .run = lived_days_from(state[2].cast<py::tuple>())};
}

}  // namespace

void register_stagnation(py::module_& module) {
    py::class_<HeldStagnation>(module, "Stagnation",
                               "Highest temperatures of a store from which no heat is extracted.")
        .def_property_readonly(
            "month", [](const HeldStagnation& held) { return held.told.month; },
            "month in which the fourteen days begin, 1 to 12")
        .def_property_readonly(
            "delivered_kwh", [](const HeldStagnation& held) { return held.told.delivered_kwh; },
            "energy into the bank in these days [kWh]")
        .def_readonly("run", &HeldStagnation::run, "the fourteen days")
        .def_property_readonly(
            "peaks", [](const HeldStagnation& held) { return held.told.peaks; },
            "highest temperature of every part, with its limit")
        .def_property_readonly(
            "sentences", [](const HeldStagnation& held) { return held.told.sentences; },
            "the result, one sentence each")
        .def(py::pickle(&stagnation_state, &stagnation_from));
    module.def("simulate_stagnation", &stagnated, py::arg("candidate"), py::kw_only(),
               py::arg("progress") = py::none(), docs::simulate_stagnation);
    module.def("simulate_stagnations", &stagnated_together, py::arg("circuits"), py::kw_only(),
               py::arg("progress") = py::none(), docs::simulate_stagnations);
}

}  // namespace heatmatch::python
