#include "charged_bed.hpp"
#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "docs_day.hpp"
#include "lived_days.hpp"
#include "progress_call.hpp"
#include "views.hpp"

#include "heatmatch/base/error.hpp"

namespace heatmatch::python {

namespace {

using SeriesList = std::vector<double>;

struct NamedList {
    const char* name = "";
    SeriesList DaySeries::*member = nullptr;
    const char* meaning = "";
};

constexpr std::array<NamedList, 17> lists{{
    {"hours", &DaySeries::hours, "since the beginning, at the end of each step [h]"},
    {"irradiance_w_m2", &DaySeries::irradiance_w_m2, "on the cells [W/m2]"},
    {"available_w", &DaySeries::available_w, "at the maximum power point [W]"},
    {"power_w", &DaySeries::power_w, "into the bank [W]"},
    {"bank_v", &DaySeries::bank_v, "voltage at the bank [V]"},
    {"bank_a", &DaySeries::bank_a, "amperes into the bank [A]"},
    {"sheath_c", &DaySeries::sheath_c, "of the hottest leg [°C]"},
    {"coil_c", &DaySeries::coil_c, "inside it [°C]"},
    {"terminal_c", &DaySeries::terminal_c, "[°C]; None where it is not known"},
    {"bed_mean_c", &DaySeries::bed_mean_c, "by mass [°C]"},
    {"wall_c", &DaySeries::wall_c, "outside, its hottest spot [°C]"},
    {"lid_c", &DaySeries::lid_c, "outside, its hottest spot [°C]"},
    {"released_w", &DaySeries::released_w, "that leaves the store, by its walls and the fan [W]"},
    {"to_space_w", &DaySeries::to_space_w, "part of it that reaches the space [W]"},
    {"space_c", &DaySeries::space_c,
     "of the space; air around the store where there is no space [°C]"},
    {"space_unheated_c", &DaySeries::space_unheated_c, "the same without the store [°C]"},
    {"outside_c", &DaySeries::outside_c, "air outside [°C]"},
}};

constexpr std::array<NamedNumber<DayEnergy>, 8> energies{{
    {"available_kwh", &DayEnergy::available_kwh,
     "Energy available at the maximum power point [kWh]."},
    {"delivered_kwh", &DayEnergy::delivered_kwh, "Energy into the bank [kWh]."},
    {"wire_kwh", &DayEnergy::wire_kwh, "Energy lost in wire and joints [kWh]."},
    {"stored_kwh", &DayEnergy::stored_kwh,
     "Heat in the store at the end minus that at the beginning [kWh]."},
    {"to_space_kwh", &DayEnergy::to_space_kwh,
     "Heat from the store to the space, through its walls and by the fan [kWh]."},
    {"outside_kwh", &DayEnergy::outside_kwh,
     "Heat from the store to places other than the space [kWh]."},
    {"steam_kwh", &DayEnergy::steam_kwh,
     "Part of `outside_kwh` that boiling water carried away [kWh]."},
    {"unbalanced_share", &DayEnergy::unbalanced_share,
     "Energy that the balance does not account for, over `delivered_kwh` [dimensionless]; 0 is "
     "exact."},
}};

SwitchCase switch_case_from(const std::string& name) {
    if (const auto known = find_choice<SwitchCase>(name)) return *known;
    throw InvalidInput(ErrorDetail{
        .part = "days",
        .field = "switches",
        .value = quote(name),
        .allowed = "\"works\", \"thermostat welded\" or \"breaker welded\"",
        .remedy = verbatim("breaker welded: neither thermostat nor limit opens the circuit")});
}

/// An optional whole number: the library uses 0 for a missing one, a caller must not.
int given_or_none(const char* name, std::optional<int> value, int highest) {
    if (!value) return 0;
    check_argument(name, *value, unit::none, {.low = 1.0, .high = static_cast<double>(highest)});
    return *value;
}

using Circuits = std::vector<const Candidate*>;

std::vector<std::shared_ptr<LivedDays>> simulated_together(
    const Circuits& circuits, const Weather& weather, std::optional<int> month,
    std::optional<int> days, double air_shift_k, double electrical_step_s, double thermal_step_s,
    int warm_up_days, std::optional<double> start_c, const std::string& conductivity,
    const std::string& switches, double extraction_w_k, double extraction_from_hour,
    double extraction_until_hour, std::optional<double> air_around_c, const py::object& progress) {
    ProgressCall call(progress, between_looks);
    const DayOptions options{.span = {.month = given_or_none("month", month, 12),
                                      .days = given_or_none("days", days, 3660),
                                      .air_shift_k = air_shift_k},
                             .electrical_step_s = electrical_step_s,
                             .thermal_step_s = thermal_step_s,
                             .warm_up_days = warm_up_days,
                             .start_c = start_c,
                             .conductivity = conductivity_end_from(conductivity),
                             .switches = switch_case_from(switches),
                             .extraction = {.w_k = extraction_w_k,
                                            .from_hour = extraction_from_hour,
                                            .until_hour = extraction_until_hour},
                             .air_around_c = air_around_c,
                             .progress = call.callback()};
    const std::vector<Candidate> shared = copies_of(circuits);
    return call.run([&] {
        std::vector<DayRun> runs = simulate_circuits(shared, weather, options);
        std::vector<std::shared_ptr<LivedDays>> all;
        for (std::size_t i = 0; i < runs.size(); ++i) {
            all.push_back(lived_days(shared[i], std::move(runs[i])));
        }
        return all;
    });
}

template <class... Options>
std::shared_ptr<LivedDays> simulated(const Candidate& candidate, const Weather& weather,
                                     Options... options) {
    return simulated_together({&candidate}, weather, std::move(options)...).front();
}

py::tuple switch_event_state(const SwitchEvent& event) {
    return py::make_tuple(event.hours, event.device, text_of_choice(event.what));
}

SwitchEvent switch_event_from(const py::tuple& state) {
    return {state[0].cast<double>(), state[1].cast<std::string>(), state[2].cast<SwitchAction>()};
}

DayEnergy day_energy_from(const py::tuple& state) {
    DayEnergy energy;
    fill_numbers(energy, energies, state);
    return energy;
}

void register_pieces(py::module_& module) {
    py::class_<DayEnergy> energy(module, "DayEnergy", docs::class_day_energy);
    add_numbers(energy, energies);
    energy
        .def("__repr__",
             [](const DayEnergy& made) {
                 return "<DayEnergy: " + format_number(made.delivered_kwh, 4) + " kWh in, " +
                        format_number(made.to_space_kwh, 4) + " kWh to the space>";
             })
        .def(py::pickle([](const DayEnergy& made) { return numbers_state(made, energies); },
                        &day_energy_from));
    py::class_<SwitchEvent>(module, "SwitchEvent", docs::class_switch_event)
        .def_readonly("hours", &SwitchEvent::hours,
                      "Time since the beginning of the simulation [h].")
        .def_readonly("device", &SwitchEvent::device, "Id of the control that acted.")
        .def_readonly("what", &SwitchEvent::what,
                      "Action of the control: \"opens\", \"closes\" or \"cannot open\".")
        .def("__repr__",
             [](const SwitchEvent& event) {
                 return "<after " + format_number(event.hours, 4) + " h: " + event.device + " " +
                        text_of_choice(event.what) + ">";
             })
        .def(py::pickle([](const SwitchEvent& event) { return switch_event_state(event); },
                        &switch_event_from));
}

void add_series(py::class_<LivedDays, std::shared_ptr<LivedDays>>& cls) {
    for (const NamedList& list : lists) {
        cls.def_property_readonly(
            list.name,
            [member = list.member](const py::object& self) -> py::object {
                const SeriesList& values = self.cast<const LivedDays&>().run.series.*member;
                if (values.empty()) return py::none();
                return view_of(self, std::span<const double>(values));
            },
            list.meaning);
    }
    cls.def_property_readonly(
           "month",
           [](const py::object& self) {
               const auto& months = self.cast<const LivedDays&>().run.series.month;
               return view_of(self, std::span<const std::uint8_t>(months));
           },
           "1 to 12; 0 where not known")
        .def_property_readonly(
            "hour_of_day",
            [](const LivedDays& lived) {
                const DayRun& run = lived.run;
                py::array_t<double> hours(static_cast<py::ssize_t>(run.series.hours.size()));
                for (std::size_t i = 0; i < run.series.hours.size(); ++i) {
                    hours.mutable_data()[i] = run.hour_of_day(i);
                }
                return hours;
            },
            "at the end of each step, by mean solar time, 0 to 24 [h]");
}

}  // namespace

py::tuple state_of(const LivedDays& lived) {
    const DayRun& run = lived.run;
    py::tuple series(lists.size());
    for (std::size_t i = 0; i < lists.size(); ++i) {
        series[i] = array_of(run.series.*(lists[i].member));
    }
    return py::make_tuple(
        state_of(lived.candidate), run.title, run.days, run.first_hour, run.heats_space, series,
        array_of(run.series.month), numbers_state(run.energy, energies),
        tuple_with<SwitchEvent>(run.events, &switch_event_state), text_of_choice(run.bed_model),
        run.remarks, assumption_states(run.assumed), state_of(lived.answer), run.circuits);
}

std::shared_ptr<LivedDays> lived_days_from(const py::tuple& state) {
    auto lived = std::make_shared<LivedDays>();
    lived->candidate = candidate_from(state[0].cast<py::tuple>());
    DayRun& run = lived->run;
    run.title = state[1].cast<std::string>();
    run.days = state[2].cast<double>();
    run.first_hour = state[3].cast<double>();
    run.heats_space = state[4].cast<bool>();
    const auto series = state[5].cast<py::tuple>();
    for (std::size_t i = 0; i < lists.size(); ++i) {
        run.series.*(lists[i].member) = series[i].cast<SeriesList>();
    }
    run.series.month = state[6].cast<std::vector<std::uint8_t>>();
    run.energy = day_energy_from(state[7].cast<py::tuple>());
    run.events = items_from(state[8], switch_event_from);
    run.bed_model = state[9].cast<BedModel>();
    run.remarks = state[10].cast<Sentences>();
    run.assumed = assumptions_from(state[11]);
    lived->answer = day_answer_from(state[12].cast<py::tuple>());
    run.circuits = state[13].cast<int>();
    return lived;
}

void register_day(py::module_& module) {
    register_pieces(module);
    py::class_<LivedDays, std::shared_ptr<LivedDays>> cls(
        module, "DayRun",
        "Simulated days: lists of one length, at the end of every thermal step; powers are "
        "its means.");
    cls.def_readonly("candidate", &LivedDays::candidate, "candidate that was simulated")
        .def_readonly("answer", &LivedDays::answer, "results")
        .def_property_readonly(
            "title", [](const LivedDays& lived) { return lived.run.title; }, "of the circuit")
        .def_property_readonly(
            "days", [](const LivedDays& lived) { return lived.run.days; }, "how many")
        .def_property_readonly(
            "first_hour", [](const LivedDays& lived) { return lived.run.first_hour; },
            "of the day at the beginning, by mean solar time [h]")
        .def_property_readonly(
            "heats_space", [](const LivedDays& lived) { return lived.run.heats_space; },
            "whether the store heats a space with a known heat loss")
        .def_property_readonly(
            "bed_model", [](const LivedDays& lived) { return lived.run.bed_model; },
            "r-z field or water")
        .def_property_readonly(
            "energy", [](const LivedDays& lived) { return lived.run.energy; },
            "energy of all days [kWh]")
        .def_property_readonly(
            "events", [](const LivedDays& lived) { return lived.run.events; },
            "controls that acted")
        .def_property_readonly(
            "remarks", [](const LivedDays& lived) { return lived.run.remarks; }, "remarks")
        .def_property_readonly(
            "assumed", [](const LivedDays& lived) { return texts_of(lived.run.assumed); },
            "assumptions")
        .def(
            "sentences",
            [](const LivedDays& lived, const std::string& units) {
                std::vector<std::string> texts;
                const UnitSystem system = unit_system_of(units);
                for (const Sentence& sentence : lived.answer.sentences) {
                    texts.push_back(sentence.text(system));
                }
                return texts;
            },
            py::kw_only(), py::arg("units") = "si",
            "The result, the verdict first, in either unit set.")
        .def("__len__", [](const LivedDays& lived) { return lived.run.series.hours.size(); })
        .def(py::pickle([](const LivedDays& lived) { return state_of(lived); }, &lived_days_from));
    add_series(cls);
    const auto define = [&module](const char* name, auto function, const char* first,
                                  const char* second, const char* doc) {
        module.def(name, function, py::arg(first), py::arg(second), py::kw_only(),
                   py::arg("month") = py::none(), py::arg("days") = py::none(),
                   py::arg("air_shift_k") = 0.0, py::arg("electrical_step_s") = 60.0,
                   py::arg("thermal_step_s") = 300.0, py::arg("warm_up_days") = 3,
                   py::arg("start_c") = py::none(), py::arg("conductivity") = "typical",
                   py::arg("switches") = "works", py::arg("extraction_w_k") = 0.0,
                   py::arg("extraction_from_hour") = 0.0, py::arg("extraction_until_hour") = 24.0,
                   py::arg("air_around_c") = py::none(), py::arg("progress") = py::none(), doc);
    };
    define("simulate_day",
           &simulated<std::optional<int>, std::optional<int>, double, double, double, int,
                      std::optional<double>, std::string, std::string, double, double, double,
                      std::optional<double>, py::object>,
           "candidate", "weather", docs::simulate_day);
    define("simulate_circuits", &simulated_together, "circuits", "weather",
           docs::simulate_circuits);
}

}  // namespace heatmatch::python
