#include "docs_classes.hpp"
#include "lived_days.hpp"
#include "views.hpp"

namespace heatmatch::python {

namespace {

constexpr std::array<NamedNumber<DarkHours>, 11> dark_numbers{{
    {"days", &DarkHours::days, "Number of days simulated [days]."},
    {"available_kwh_day", &DarkHours::available_kwh_day,
     "Energy available at the maximum power point [kWh/day]."},
    {"delivered_kwh_day", &DarkHours::delivered_kwh_day, "Energy into the bank [kWh/day]."},
    {"to_space_kwh_day", &DarkHours::to_space_kwh_day,
     "Heat from the store to the space [kWh/day]."},
    {"dark_hours", &DarkHours::dark_hours, "Hours without sun on the panels [h]."},
    {"above_target_hours", &DarkHours::above_target_hours,
     "Dark hours at or above the target temperature [h]; 0 without a target."},
    {"above_target_unheated_hours", &DarkHours::above_target_unheated_hours,
     "Dark hours at or above the target temperature without the store [h]; 0 without a target."},
    {"lowest_c", &DarkHours::lowest_c, "Lowest temperature of the space in the dark [°C]."},
    {"lowest_unheated_c", &DarkHours::lowest_unheated_c,
     "Lowest temperature of the space in the dark without the store [°C]."},
    {"lift_k", &DarkHours::lift_k,
     "Warming of the space by the store, mean of the dark hours [K]."},
    {"required_lift_k", &DarkHours::required_lift_k,
     "Height of the target above the temperature without the store, mean of the dark hours [K]; 0 "
     "without a target."},
}};

py::tuple dark_hours_state(const DarkHours& dark) {
    return py::make_tuple(dark.month, numbers_state(dark, dark_numbers));
}

DarkHours dark_hours_from(const py::tuple& state) {
    DarkHours dark{.month = state[0].cast<int>()};
    fill_numbers(dark, dark_numbers, state[1]);
    return dark;
}

void register_dark_hours(py::module_& module) {
    py::class_<DarkHours> cls(module, "DarkHours", docs::class_dark_hours);
    cls.def_readonly("month", &DarkHours::month, "Month, 1 to 12; 0 for all days.");
    add_numbers(cls, dark_numbers);
    cls.def("__repr__",
            [](const DarkHours& dark) {
                return "<DarkHours of " +
                       (dark.month == 0 ? "all days" : "month " + std::to_string(dark.month)) +
                       ": lift " + format_number(dark.lift_k, 3) + " K>";
            })
        .def(py::pickle([](const DarkHours& dark) { return dark_hours_state(dark); },
                        &dark_hours_from));
}

}  // namespace

py::tuple state_of(const PartPeak& peak) {
    return py::make_tuple(state_of(peak.margin), peak.hours);
}

PartPeak part_peak_from(const py::tuple& state) {
    return {.margin = margin_from(state[0].cast<py::tuple>()), .hours = state[1].cast<double>()};
}

py::tuple state_of(const DayAnswer& answer) {
    py::list months;
    for (const DarkHours& month : answer.months) months.append(dark_hours_state(month));
    return py::make_tuple(dark_hours_state(answer.all), months, answer.dusk_lift_k,
                          answer.dawn_lift_k, answer.carry_over_h, answer.warmer_until_hour,
                          answer.lid_until_hour, tuple_with<PartPeak>(answer.peaks, &state_of),
                          answer.sentences, answer.most_lift_k, answer.most_lift_hour,
                          answer.warmer_from_hour);
}

DayAnswer day_answer_from(const py::tuple& state) {
    using Maybe = std::optional<double>;
    return {.all = dark_hours_from(state[0].cast<py::tuple>()),
            .months = items_from(state[1], dark_hours_from),
            .dusk_lift_k = state[2].cast<double>(),
            .dawn_lift_k = state[3].cast<double>(),
            .carry_over_h = state[4].cast<Maybe>(),
            .most_lift_k = state[9].cast<double>(),
            .most_lift_hour = state[10].cast<double>(),
            .warmer_from_hour = state[11].cast<Maybe>(),
            .warmer_until_hour = state[5].cast<Maybe>(),
            .lid_until_hour = state[6].cast<Maybe>(),
            .peaks = items_from(state[7], part_peak_from),
            .sentences = state[8].cast<Sentences>()};
}

void register_day_answer(py::module_& module) {
    register_dark_hours(module);
    py::class_<PartPeak>(module, "PartPeak", "The highest that a part reached, against its limit.")
        .def_readonly("margin", &PartPeak::margin,
                      "its margin, with the highest temperature as its value")
        .def_readonly("hours", &PartPeak::hours, "when, since the beginning [h]")
        .def("__repr__",
             [](const PartPeak& peak) {
                 return "<PartPeak after " + format_number(peak.hours, 4) + " h, " +
                        text_of_choice(peak.margin.severity) + ": " + peak.margin.sentence() + ">";
             })
        .def(py::pickle([](const PartPeak& peak) { return state_of(peak); }, &part_peak_from));
    py::class_<DayAnswer>(module, "DayAnswer", "Results of a simulation of days.")
        .def_readonly("all", &DayAnswer::all, "dark hours and heat of all days")
        .def_readonly("months", &DayAnswer::months, "of each month, in the order of time")
        .def_readonly("dusk_lift_k", &DayAnswer::dusk_lift_k,
                      "of the space when the dark begins, mean of the nights [K]")
        .def_readonly("dawn_lift_k", &DayAnswer::dawn_lift_k, "the same when it ends [K]")
        .def_readonly("carry_over_h", &DayAnswer::carry_over_h,
                      "after dusk that the store gives off half as much as at its best in that "
                      "night, mean of the nights [h], or None")
        .def_readonly("warmer_until_hour", &DayAnswer::warmer_until_hour,
                      "of the day until which the space is 0.5 K warmer by the store, in the mean "
                      "night [h]; None where it never is")
        .def_readonly("warmer_from_hour", &DayAnswer::warmer_from_hour,
                      "of the day from which it is [h]; None: from dusk on, or never")
        .def_readonly("most_lift_k", &DayAnswer::most_lift_k, "highest rise of the mean night [K]")
        .def_readonly("most_lift_hour", &DayAnswer::most_lift_hour, "hour of the day of it [h]")
        .def_readonly("lid_until_hour", &DayAnswer::lid_until_hour,
                      "the same for the lid, 4 K above the space [h]")
        .def_readonly("peaks", &DayAnswer::peaks, "the highest of every part")
        .def_readonly("sentences", &DayAnswer::sentences, "the verdict first")
        .def("__repr__",
             [](const DayAnswer& answer) {
                 const Sentences& told = answer.sentences;
                 return "<DayAnswer: " + (told.empty() ? "" : told.front().text()) + ">";
             })
        .def(
            py::pickle([](const DayAnswer& answer) { return state_of(answer); }, &day_answer_from));
}

}  // namespace heatmatch::python
