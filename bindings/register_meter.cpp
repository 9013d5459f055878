#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "docs_meter.hpp"
#include "lived_days.hpp"
#include "state.hpp"
#include "views.hpp"

#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch::python {

namespace {

using Texts = std::vector<std::string>;

constexpr std::array<NamedNumber<ExpectedBand>, 3> band_numbers{{
    {"low", &ExpectedBand::low, "Low end of the expected reading, in the unit of its row."},
    {"typical", &ExpectedBand::typical, "Typical reading, in the unit of its row."},
    {"high", &ExpectedBand::high, "High end of the expected reading, in the unit of its row."},
}};

constexpr std::array<ExpectedBand MeterRow::*, 6> row_bands{&MeterRow::open_v,  &MeterRow::short_a,
                                                            &MeterRow::array_v, &MeterRow::bank_v,
                                                            &MeterRow::bank_a,  &MeterRow::bank_w};

py::tuple band_state(const ExpectedBand& band) {
    return numbers_state(band, band_numbers);
}

ExpectedBand band_from(const py::tuple& state) {
    ExpectedBand band;
    fill_numbers(band, band_numbers, state);
    return band;
}

py::tuple row_state(const MeterRow& row) {
    py::tuple bands(row_bands.size());
    for (std::size_t i = 0; i < row_bands.size(); ++i) bands[i] = band_state(row.*row_bands[i]);
    return py::make_tuple(row.irradiance_w_m2, row.cell_temperature_c, bands);
}

MeterRow row_from(const py::tuple& state) {
    MeterRow row{.irradiance_w_m2 = state[0].cast<double>(),
                 .cell_temperature_c = state[1].cast<double>()};
    const auto bands = state[2].cast<py::tuple>();
    for (std::size_t i = 0; i < row_bands.size(); ++i) {
        row.*row_bands[i] = band_from(bands[i].cast<py::tuple>());
    }
    return row;
}

py::tuple check_state(const MeterCheck& check) {
    return py::make_tuple(check.letter, check.reading, check.how, check.expect, check.low,
                          check.typical, check.high, std::string(check.unit.symbol), check.if_low,
                          check.if_high, check.source);
}

MeterCheck check_from(const py::tuple& state) {
    const auto text = [&state](std::size_t i) { return state[i].cast<std::string>(); };
    const auto said = [&state](std::size_t i) { return state[i].cast<Sentence>(); };
    const auto number = [&state](std::size_t i) { return state[i].cast<std::optional<double>>(); };
    const Unit* unit = find_unit(text(7));
    return {.letter = text(0),
            .reading = said(1),
            .how = said(2),
            .expect = said(3),
            .low = number(4),
            .typical = number(5),
            .high = number(6),
            .unit = unit == nullptr ? Unit{} : *unit,
            .if_low = said(8),
            .if_high = said(9),
            .source = text(10)};
}

py::tuple sheet_state(const MeterSheet& sheet) {
    return py::make_tuple(sheet.title, tuple_with(sheet.rows, &row_state),
                          tuple_with(sheet.checks, &check_state), assumption_states(sheet.assumed),
                          sheet.missing, sheet.remarks, sheet.without_sun_meter);
}

MeterSheet sheet_from(const py::tuple& state) {
    return {.title = state[0].cast<Sentence>(),
            .rows = items_from(state[1], row_from),
            .checks = items_from(state[2], check_from),
            .without_sun_meter = state[6].cast<Sentences>(),
            .assumed = assumptions_from(state[3]),
            .missing = state[4].cast<Sentences>(),
            .remarks = state[5].cast<Sentences>()};
}

MeterSheet sheet_of(const Candidate& candidate, const py::object& irradiance_w_m2, double air_c,
                    double uncovered_cell_c, const std::string& units) {
    static_cast<void>(unit_system_of(units));
    MeterSheetOptions options{.air_c = air_c, .uncovered_cell_c = uncovered_cell_c};
    if (!irradiance_w_m2.is_none()) {
        const DoubleArray suns = numbers_from(irradiance_w_m2, "irradiance_w_m2");
        options.irradiance_w_m2.assign(suns.data(), suns.data() + suns.size());
    }
    const py::gil_scoped_release release;
    return meter_sheet(candidate, options);
}

}  // namespace

void register_meter(py::module_& module) {
    py::class_<ExpectedBand> band(module, "ExpectedBand", docs::class_expected_band);
    add_numbers(band, band_numbers);
    band.def("__repr__",
             [](const ExpectedBand& made) {
                 return "<ExpectedBand " + format_number(made.typical, 4) + ", " +
                        format_number(made.low, 4) + " to " + format_number(made.high, 4) + ">";
             })
        .def(py::pickle(&band_state, &band_from));
    py::class_<MeterRow>(module, "MeterRow", docs::class_meter_row)
        .def_readonly("irradiance_w_m2", &MeterRow::irradiance_w_m2,
                      "Irradiance on the panels [W/m2].")
        .def_readonly("cell_temperature_c", &MeterRow::cell_temperature_c, "Cell temperature [°C].")
        .def_readonly(
            "open_v", &MeterRow::open_v,
            "Open-circuit voltage of the array, disconnected from the bank, as a band [V].")
        .def_readonly("short_a", &MeterRow::short_a,
                      "Short-circuit current of the array, as a band [A].")
        .def_readonly("array_v", &MeterRow::array_v,
                      "Voltage at the array while it heats the bank, as a band [V].")
        .def_readonly("bank_v", &MeterRow::bank_v, "Voltage at the bank, as a band [V].")
        .def_readonly("bank_a", &MeterRow::bank_a, "Current of the bank, as a band [A].")
        .def_readonly("bank_w", &MeterRow::bank_w, "Power into the bank, as a band [W].")
        .def(py::pickle(&row_state, &row_from));
    py::class_<MeterCheck>(module, "MeterCheck", docs::class_meter_check)
        .def_readonly("letter", &MeterCheck::letter, "Letter of the check, from A.")
        .def_readonly("reading", &MeterCheck::reading, "Quantity to read.")
        .def_readonly("how", &MeterCheck::how, "Instruction for the reading.")
        .def_readonly("expect", &MeterCheck::expect,
                      "Expected reading, or that it is not known, in words.")
        .def_readonly("low", &MeterCheck::low,
                      "Low end of the expected reading, in `unit`; None if not known.")
        .def_readonly("typical", &MeterCheck::typical,
                      "Typical reading, in `unit`; None if not known.")
        .def_readonly("high", &MeterCheck::high,
                      "High end of the expected reading, in `unit`; None if not known.")
        .def_property_readonly(
            "unit", [](const MeterCheck& check) { return std::string(check.unit.symbol); },
            "Unit of `low`, `typical` and `high`; empty if there is no number.")
        .def_readonly("if_low", &MeterCheck::if_low, "Meaning of a lower reading.")
        .def_readonly("if_high", &MeterCheck::if_high, "Meaning of a higher reading.")
        .def_readonly("source", &MeterCheck::source,
                      "Source of the expected reading: a key of ``sources``, or words.")
        .def("__repr__",
             [](const MeterCheck& check) {
                 return "<MeterCheck " + check.letter + ": " + check.reading.text() + ">";
             })
        .def(py::pickle(&check_state, &check_from));
    py::class_<MeterSheet>(module, "MeterSheet", "Expected meter readings of a circuit.")
        .def_readonly("title", &MeterSheet::title, "the circuit")
        .def_readonly("rows", &MeterSheet::rows,
                      "warmed-up panels by falling sun, then the same just uncovered")
        .def_readonly("checks", &MeterSheet::checks, "what to measure and inspect")
        .def_readonly("without_sun_meter", &MeterSheet::without_sun_meter,
                      "how to read without a sun meter")
        .def_property_readonly(
            "assumed", [](const MeterSheet& sheet) { return texts_of(sheet.assumed); },
            "assumptions")
        .def_readonly("missing", &MeterSheet::missing, "fields that are missing, with remedy")
        .def_readonly("remarks", &MeterSheet::remarks, "remarks")
        .def(py::pickle(&sheet_state, &sheet_from));
    module.def("meter_sheet", &sheet_of, py::arg("candidate"), py::kw_only(),
               py::arg("irradiance_w_m2") = py::none(), py::arg("air_c") = 10.0,
               py::arg("uncovered_cell_c") = 25.0, py::arg("units") = "si", docs::meter_sheet);
}

}  // namespace heatmatch::python
