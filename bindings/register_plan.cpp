#include "docs_plan.hpp"
#include "parts_view.hpp"
#include "progress_call.hpp"
#include "state.hpp"

#include <memory>
#include <optional>

#include "heatmatch/match/plan/plan.hpp"
#include "heatmatch/match/plan/unlocks.hpp"
#include "heatmatch/text/installation_json.hpp"

namespace heatmatch::python {

namespace {

Plan run_plan(const Catalog& catalog, const Installation& installation, const Weather* weather,
              int max_bank, bool exact_weather, std::size_t threads, const py::object& progress,
              std::shared_ptr<RankMemory> memory) {
    ProgressCall call(progress);
    RankOptions options{.weather = {weather, [](const Weather*) {}},
                        .exact_weather = exact_weather,
                        .max_bank = max_bank,
                        .threads = threads,
                        .memory = std::move(memory)};
    options.progress = call.callback();
    const auto parts = snapshot_of(catalog);
    return call.run([&] { return plan(*parts, installation, options); });
}

std::vector<Unlock> find_unlocks(const Plan& plan, const Catalog& catalog, const Weather* weather,
                                 int max_bank, std::size_t threads, const py::object& progress,
                                 std::shared_ptr<RankMemory> memory) {
    ProgressCall call(progress);
    RankOptions options{.weather = {weather, [](const Weather*) {}},
                        .max_bank = max_bank,
                        .threads = threads,
                        .memory = std::move(memory)};
    options.progress = call.callback();
    const auto parts = snapshot_of(catalog);
    Installation yard = plan.installation;
    yard.circuits.clear();
    return call.run([&] { return unlocks(*parts, yard, plan, options); });
}

py::tuple state_of_unlock(const Unlock& unlock) {
    return py::make_tuple(installation_to_json(unlock.changed), unlock.kwh, unlock.price,
                          unlock.crosses_v, unlock.change, unlock.said);
}

Unlock unlock_from(const py::tuple& state) {
    return {.changed = installation_from_json(state[0].cast<std::string>()),
            .kwh = state[1].cast<double>(),
            .price = state[2].cast<std::optional<double>>(),
            .crosses_v = state[3].cast<std::optional<double>>(),
            .change = state[4].cast<Sentence>(),
            .said = state[5].cast<Sentence>()};
}

py::tuple state_of_offer(const PlanOffer& offer) {
    Installation holder;
    holder.circuits = offer.circuits;
    return py::make_tuple(offer.headroom, offer.volts_max, offer.kwh, offer.price,
                          installation_to_json(holder), offer.said);
}

PlanOffer offer_from(const py::tuple& state) {
    return {.headroom = state[0].cast<double>(),
            .volts_max = state[1].cast<std::optional<double>>(),
            .kwh = state[2].cast<double>(),
            .price = state[3].cast<std::optional<double>>(),
            .circuits = installation_from_json(state[4].cast<std::string>()).circuits,
            .said = state[5].cast<Sentence>()};
}

py::tuple state_of_idle(const IdlePanels& idle) {
    return py::make_tuple(idle.group, idle.count, idle.why);
}

IdlePanels idle_from(const py::tuple& state) {
    return {.group = state[0].cast<std::string>(),
            .count = state[1].cast<int>(),
            .why = state[2].cast<Sentence>()};
}

template <class Item, class State>
py::tuple list_state(const std::vector<Item>& items, const State& state) {
    py::tuple states(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) states[i] = state(items[i]);
    return states;
}

py::tuple state_of_plan(const Plan& plan) {
    py::object single = py::none();
    if (plan.single) single = state_of(*plan.single);
    return py::make_tuple(
        states_of(plan.circuits), installation_to_json(plan.installation), state_of(plan.bill),
        py::make_tuple(plan.kwh, plan.days, plan.headroom, plan.at_most_kwh),
        py::make_tuple(plan.bounds.panels_kwh, plan.bounds.store_kwh, plan.bounds.bill_kwh),
        list_state(plan.others, state_of_offer), list_state(plan.idle, state_of_idle), single,
        plan.arrays, plan.remarks);
}

Plan plan_from(const py::tuple& state) {
    const auto numbers = state[3].cast<py::tuple>();
    const auto bounds = state[4].cast<py::tuple>();
    Plan plan{.circuits = items_from(state[0], candidate_from),
              .installation = installation_from_json(state[1].cast<std::string>()),
              .bill = bill_from(state[2].cast<py::tuple>()),
              .kwh = numbers[0].cast<double>(),
              .days = numbers[1].cast<double>(),
              .headroom = numbers[2].cast<double>(),
              .at_most_kwh = numbers[3].cast<double>(),
              .bounds = {.panels_kwh = bounds[0].cast<double>(),
                         .store_kwh = bounds[1].cast<double>(),
                         .bill_kwh = bounds[2].cast<double>()},
              .others = items_from(state[5], offer_from),
              .idle = items_from(state[6], idle_from),
              .arrays = state[8].cast<std::size_t>(),
              .remarks = state[9].cast<Sentences>()};
    if (!state[7].is_none()) plan.single = candidate_from(state[7].cast<py::tuple>());
    return plan;
}

void register_offers(py::module_& module) {
    py::class_<PlanOffer>(module, "PlanOffer", docs::class_plan_offer)
        .def_readonly("headroom", &PlanOffer::headroom, "Smallest headroom required of its checks.")
        .def_readonly("volts_max", &PlanOffer::volts_max,
                      "Largest voltage at the record low that was allowed [V]; None: any.")
        .def_readonly("kwh", &PlanOffer::kwh, "Heat of the season [kWh]; 0 if there is no plan.")
        .def_readonly("price", &PlanOffer::price,
                      "Typical total of its bill, in the currency of the goals; None if not known.")
        .def_property_readonly(
            "circuits",
            [](const PlanOffer& offer) {
                py::list circuits;
                for (const ExistingCircuit& circuit : offer.circuits) {
                    circuits.append(record_to_dict(existing_circuit_fields(), &circuit));
                }
                return circuits;
            },
            "Its circuits, as dicts for `circuits` of an installation.")
        .def_readonly("said", &PlanOffer::said, "Difference from the plan, in words.")
        .def("__repr__",
             [](const PlanOffer& offer) { return "<PlanOffer: " + offer.said.text() + ">"; })
        .def(py::pickle(&state_of_offer, &offer_from));
    py::class_<IdlePanels>(module, "IdlePanels", docs::class_idle_panels)
        .def_readonly("group", &IdlePanels::group, "Group of the panels.")
        .def_readonly("count", &IdlePanels::count, "Number of panels left out.")
        .def_readonly("why", &IdlePanels::why, "Reason, in words.")
        .def("__repr__",
             [](const IdlePanels& idle) {
                 return "<IdlePanels: " + std::to_string(idle.count) + " of " + idle.group + ">";
             })
        .def(py::pickle(&state_of_idle, &idle_from));
}

void register_unlocks(py::module_& module) {
    py::class_<Unlock>(module, "Unlock", docs::class_unlock)
        .def_readonly("changed", &Unlock::changed, "Installation with the change.")
        .def_readonly("kwh", &Unlock::kwh, "More heat of the season [kWh].")
        .def_readonly("price", &Unlock::price,
                      "More on the bill, in the currency of the goals; None if not known.")
        .def_property_readonly("price_per_kwh", &Unlock::price_per_kwh,
                               "Money for each kWh of one season [1/kWh]; infinite if not known.")
        .def_readonly("crosses_v", &Unlock::crosses_v,
                      "30 (where wet), 60 or 80 V, if its arrays now exceed it [V]; else None.")
        .def_readonly("change", &Unlock::change, "The change, in words.")
        .def_readonly("said", &Unlock::said, "The change with its heat and price, in words.")
        .def("__repr__",
             [](const Unlock& unlock) { return "<Unlock: " + unlock.said.text() + ">"; })
        .def(py::pickle(&state_of_unlock, &unlock_from));
    module.def(
        "unlock_lines",
        [](const std::vector<Unlock>& found, const std::string& currency) {
            return unlock_lines(found, currency);
        },
        py::arg("unlocks"), py::arg("currency"),
        "Return the unlocks in words, numbered by falling heat, and their order by money.");
    module.def("plan_unlocks", &find_unlocks, py::arg("plan"), py::arg("catalog"),
               py::arg("weather") = py::none(), py::kw_only(), py::arg("max_bank") = 4,
               py::arg("threads") = 0, py::arg("progress") = py::none(),
               py::arg("memory") = py::none(), docs::plan_unlocks);
}

}  // namespace

void register_plan(py::module_& module) {
    register_offers(module);
    register_unlocks(module);
    py::class_<Plan>(module, "Plan", "Circuits that together deliver the most heat.")
        .def_readonly("circuits", &Plan::circuits, "its circuits, assessed together")
        .def_readonly("installation", &Plan::installation, "installation with these circuits")
        .def_readonly("bill", &Plan::bill, "bill of all circuits")
        .def_readonly("kwh", &Plan::kwh, "heat of the season [kWh]")
        .def_readonly("days", &Plan::days, "days of the season")
        .def_property_readonly("mean_kwh_per_day", &Plan::mean_kwh_per_day,
                               "heat per day of the season [kWh]")
        .def_readonly("headroom", &Plan::headroom, "headroom that was required")
        .def_readonly("at_most_kwh", &Plan::at_most_kwh, "heat that no plan exceeds [kWh]")
        .def_property_readonly("gap", &Plan::gap, "share by which a plan may have more heat")
        .def_property_readonly(
            "bounds",
            [](const Plan& plan) {
                py::dict bounds;
                bounds["panels"] = plan.bounds.panels_kwh;
                bounds["store"] = plan.bounds.store_kwh;
                bounds["bill"] = plan.bounds.bill_kwh;
                return bounds;
            },
            "heat that no plan exceeds by each limit alone [kWh]")
        .def_readonly("others", &Plan::others, "plans at less headroom or fewer volts")
        .def_readonly("idle", &Plan::idle, "panels that it leaves out")
        .def_readonly("single", &Plan::single, "best circuit alone, or None")
        .def_readonly("arrays", &Plan::arrays, "number of arrays considered")
        .def_readonly("remarks", &Plan::remarks, "remarks")
        .def("summary", &Plan::summary, "The answer in words, heat and price first.")
        .def("__len__", [](const Plan& plan) { return plan.circuits.size(); })
        .def(py::pickle(&state_of_plan, &plan_from));
    module.def("plan", &run_plan, py::arg("catalog"), py::arg("installation"),
               py::arg("weather") = py::none(), py::kw_only(), py::arg("max_bank") = 4,
               py::arg("exact_weather") = false, py::arg("threads") = 0,
               py::arg("progress") = py::none(), py::arg("memory") = py::none(), docs::plan);
}

}  // namespace heatmatch::python
