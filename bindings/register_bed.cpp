#include "charged_bed.hpp"
#include "docs_bed.hpp"
#include "state.hpp"

#include <limits>

#include "heatmatch/text/part_json.hpp"

namespace heatmatch::python {

namespace {

const char* end_name(ConductivityEnd end) {
    if (end == ConductivityEnd::low) return "low";
    return end == ConductivityEnd::typical ? "typical" : "high";
}

void check_power(double power_w) {
    check_argument("power_w", power_w, unit::watt, {.low = 0.0, .high = 1e6});
}

void check_limit(double limit_c) {
    check_argument("limit_c", limit_c, unit::celsius, {.low = -60.0, .high = 2000.0});
}

double largest_power(const ChargedBed& made, double limit_c, double factor) {
    check_limit(limit_c);
    check_argument("factor", factor, unit::none, {.low = 1.0, .high = 3.0});
    const py::gil_scoped_release release;
    return largest_power_w(made.bed, limit_c, factor);
}

py::object hours_until(const ChargedBed& made, const py::object& power_w, double limit_c,
                       double longest_h) {
    check_limit(limit_c);
    check_argument("longest_h", longest_h, unit::hour, {.low = 0.001, .high = 1e5});
    return map_numbers(power_w, "power_w", [&](double power) {
        check_power(power);
        return hours_to_limit(made.bed, power, limit_c, longest_h)
            .value_or(std::numeric_limits<double>::infinity());
    });
}

ChargedBed bed_from(const Element& element, const Store& store, double hours, double air_c,
                    double days, bool moist, int elements, const std::string& conductivity,
                    const py::object& medium) {
    return charged_bed(medium_from(medium, store), store, element, elements,
                       {.hours = hours, .air_c = air_c, .days = days, .moist = moist},
                       conductivity_end_from(conductivity));
}

py::tuple legs_state(const LegLayout& legs, double power_w) {
    py::list places;
    for (const LegLayout::Leg& leg : legs.legs) places.append(py::make_tuple(leg.x_m, leg.y_m));
    return py::make_tuple(places, legs.leg_length_m, legs.radius_m, legs.sheath_radius_m,
                          legs.low_m, legs.lies, legs.aside_m, power_w);
}

HeatedLegs legs_from(const py::tuple& state) {
    LegLayout legs{.leg_length_m = state[1].cast<double>(),
                   .radius_m = state[2].cast<double>(),
                   .sheath_radius_m = state[3].cast<double>(),
                   .low_m = state[4].cast<std::optional<double>>(),
                   .lies = state[5].cast<bool>(),
                   .aside_m = state[6].cast<double>()};
    for (const auto& [x_m, y_m] : state[0].cast<std::vector<std::pair<double, double>>>()) {
        legs.legs.push_back({.x_m = x_m, .y_m = y_m});
    }
    return {.legs = std::move(legs), .power_w = state[7].cast<double>()};
}

/// The legs of a shared bed, its own first; empty for a bed of one circuit.
py::list shared_state(const BedCharge& bed) {
    py::list states;
    if (bed.others.empty()) return states;
    states.append(legs_state(bed.legs, 0.0));
    for (const HeatedLegs& other : bed.others) {
        states.append(legs_state(other.legs, other.power_w));
    }
    return states;
}

void share_bed(BedCharge& bed, const py::handle& states) {
    bool own = true;
    for (const py::handle& each : states) {
        HeatedLegs legs = legs_from(each.cast<py::tuple>());
        if (own) {
            bed.legs = std::move(legs.legs);
        } else {
            bed.others.push_back(std::move(legs));
        }
        own = false;
    }
}

py::tuple charged_bed_state(const ChargedBed& made) {
    return py::make_tuple(
        part_to_json(Part{made.medium}, -1), record_to_dict(store_fields(), &made.store),
        part_to_json(Part{made.element}, -1), made.elements, made.charge.hours, made.charge.air_c,
        made.charge.days, made.charge.moist, end_name(made.end), shared_state(made.bed));
}

ChargedBed charged_bed_from(const py::tuple& state) {
    ChargedBed made = charged_bed(
        std::get<Medium>(part_from_json(PartKind::medium, state[0].cast<std::string>())),
        store_from(state[1]),
        std::get<Element>(part_from_json(PartKind::element, state[2].cast<std::string>())),
        state[3].cast<int>(),
        {.hours = state[4].cast<double>(),
         .air_c = state[5].cast<double>(),
         .days = state[6].cast<double>(),
         .moist = state[7].cast<bool>()},
        conductivity_end_from(state[8].cast<std::string>()));
    share_bed(made.bed, state[9]);
    return made;
}

void add_properties(py::class_<ChargedBed>& cls) {
    cls.def_readonly("medium", &ChargedBed::medium, "the fill")
        .def_readonly("store", &ChargedBed::store, "the store")
        .def_readonly("element", &ChargedBed::element, "one of the elements")
        .def_readonly("elements", &ChargedBed::elements, "number of elements")
        .def_property_readonly(
            "hours", [](const ChargedBed& made) { return made.charge.hours; },
            "charging time per day [h]")
        .def_property_readonly(
            "air_c", [](const ChargedBed& made) { return made.charge.air_c; },
            "air around the store [°C]")
        .def_property_readonly(
            "days", [](const ChargedBed& made) { return made.charge.days; }, "equal days in a row")
        .def_property_readonly(
            "moist", [](const ChargedBed& made) { return made.charge.moist; },
            "whether the fill is still moist")
        .def_property_readonly(
            "conductivity", [](const ChargedBed& made) { return std::string(end_name(made.end)); },
            "end of the conductivity of the fill: low, typical or high")
        .def_property_readonly(
            "heated_length_m",
            [](const ChargedBed& made) { return made.bed.legs.heated_length_m(); },
            "heated length of all legs together [m]")
        .def_property_readonly(
            "leg_length_m", [](const ChargedBed& made) { return made.bed.legs.leg_length_m; },
            "heated length of one leg [m]")
        .def_property_readonly(
            "legs",
            [](const ChargedBed& made) {
                py::array_t<double> points({made.bed.legs.legs.size(), std::size_t{2}});
                auto at = points.mutable_unchecked<2>();
                for (py::ssize_t i = 0; i < at.shape(0); ++i) {
                    const auto& leg = made.bed.legs.legs[static_cast<std::size_t>(i)];
                    at(i, 0) = leg.x_m;
                    at(i, 1) = leg.y_m;
                }
                return points;
            },
            "positions of the legs across their length, from the axis [m], shape (legs, 2)")
        .def_property_readonly(
            "radius_m", [](const ChargedBed& made) { return made.bed.shell.radius_m; },
            "radius of the store, or half the narrow side of a box [m]")
        .def_property_readonly(
            "assumed",
            [](const ChargedBed& made) {
                std::vector<Assumption> all = made.bed.fill.assumed;
                for (const auto* more : {&made.bed.shell.assumed, &made.bed.legs.assumed}) {
                    all.insert(all.end(), more->begin(), more->end());
                }
                return texts_of(all);
            },
            "Assumptions, one sentence each.");
}

}  // namespace

void register_bed(py::module_& module) {
    py::class_<ChargedBed> cls(module, "BedCharge",
                               "A bed that equal elements charge with constant power, at one end "
                               "of its fill's conductivity.");
    cls.def(py::init(&bed_from), py::arg("element"), py::arg("store"), py::kw_only(),
            py::arg("hours") = StoreCharge{}.hours, py::arg("air_c") = StoreCharge{}.air_c,
            py::arg("days") = StoreCharge{}.days, py::arg("moist") = false, py::arg("elements") = 1,
            py::arg("conductivity") = "low", py::arg("medium") = py::none(), docs::bed_charge);
    add_properties(cls);
    cls.def(
           "temperatures",
           [](const ChargedBed& made, double power_w) {
               check_power(power_w);
               return bed_temperatures(made.bed, power_w);
           },
           py::arg("power_w"), docs::bed_temperatures)
        .def(
            "sheath_c",
            [](const ChargedBed& made, const py::object& power_w) {
                return map_numbers(power_w, "power_w", [&](double power) {
                    check_power(power);
                    return bed_temperatures(made.bed, power).sheath_c;
                });
            },
            py::arg("power_w"), docs::bed_sheath_c)
        .def(
            "bed_temperature_c",
            [](const ChargedBed& made, const py::object& distance_m, double power_w) {
                check_power(power_w);
                return map_numbers(distance_m, "distance_m", [&](double distance) {
                    check_argument("distance_m", distance, unit::metre,
                                   {.low = 0.0, .high = 100.0});
                    return bed_temperature_c(made.bed, power_w, distance);
                });
            },
            py::arg("distance_m"), py::kw_only(), py::arg("power_w"), docs::bed_temperature_c)
        .def("largest_power_w", &largest_power, py::kw_only(), py::arg("limit_c"),
             py::arg("factor") = verdict_factor, docs::bed_largest_power_w)
        .def("hours_to_limit", &hours_until, py::arg("power_w"), py::kw_only(), py::arg("limit_c"),
             py::arg("longest_h") = 1000.0, docs::bed_hours_to_limit)
        .def("__repr__",
             [](const ChargedBed& made) {
                 return "<BedCharge " + std::to_string(made.elements) + " x " + made.element.id +
                        " in " + made.medium.id + ", " + format_number(made.charge.hours, 4) +
                        " h a day, conductivity " + end_name(made.end) + ">";
             })
        .def(py::pickle([](const ChargedBed& made) { return charged_bed_state(made); },
                        &charged_bed_from));
    const StoreCharge usual;
    module.def(
        "largest_power_w",
        [](const Element& element, const Store& store, double limit_c, double hours, double air_c,
           double days, bool moist, int elements, const std::string& conductivity, double factor,
           const py::object& medium) {
            return largest_power(
                bed_from(element, store, hours, air_c, days, moist, elements, conductivity, medium),
                limit_c, factor);
        },
        py::arg("element"), py::arg("store"), py::kw_only(), py::arg("limit_c"),
        py::arg("hours") = usual.hours, py::arg("air_c") = usual.air_c,
        py::arg("days") = usual.days, py::arg("moist") = false, py::arg("elements") = 1,
        py::arg("conductivity") = "low", py::arg("factor") = verdict_factor,
        py::arg("medium") = py::none(), docs::largest_power_w);
    module.def(
        "hours_to_limit",
        [](const Element& element, const Store& store, const py::object& power_w, double limit_c,
           double air_c, bool moist, int elements, const std::string& conductivity,
           double longest_h, const py::object& medium) {
            return hours_until(bed_from(element, store, StoreCharge{}.hours, air_c, 1.0, moist,
                                        elements, conductivity, medium),
                               power_w, limit_c, longest_h);
        },
        py::arg("element"), py::arg("store"), py::kw_only(), py::arg("power_w"), py::arg("limit_c"),
        py::arg("air_c") = usual.air_c, py::arg("moist") = false, py::arg("elements") = 1,
        py::arg("conductivity") = "low", py::arg("longest_h") = 1000.0,
        py::arg("medium") = py::none(), docs::hours_to_limit);
}

}  // namespace heatmatch::python
