#pragma once

// Docstrings of classes whose objects come from functions, by name to I.
namespace heatmatch::python::docs {

inline constexpr const char* class_advice =
    R"(Largest power of an element in its store, and changes that bring its power within the limit.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.advice().element_w > 0
True)";

inline constexpr const char* class_array_curve =
    R"(I-V curve of an array of equal panels.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> array = hm.Array.uniform(panel, series=2)
>>> array.at(irradiance_w_m2=600, cell_temperature_c=35).series
2)";

inline constexpr const char* class_bed_temperatures =
    R"(Temperatures of a store at the end of a charge.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> heated = circuit.circuit.heat.bed().temperatures(200)
>>> heated.sheath_c > heated.wall_c
True)";

inline constexpr const char* class_check_counts =
    R"(Numbers of checks, by finding.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> checks = circuit.checks
>>> checks.made == checks.dangers + checks.warnings + checks.cautions + checks.no_finding
True)";

inline constexpr const char* class_bill_line =
    R"(One kind of part on a bill, in pieces, or in metres of wire.

Examples
--------
>>> import heatmatch as hm
>>> line = hm.assess(hm.Catalog.starter(), hm.demo()).bill.lines[0]
>>> line.kind, line.part, line.quantity
('element', 'storage-rod-1000-240', 2.0))";

inline constexpr const char* class_code_duty =
    R"(Requirement of a wiring code, and how it is met.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> duty = circuit.code_duties()[0]
>>> duty.code
'nec')";

inline constexpr const char* class_conductor_temperature =
    R"(Temperatures of a wire.

Examples
--------
>>> import heatmatch as hm
>>> wire = hm.Catalog.starter().wires["fep-14-awg"]
>>> hot = hm.conductor_temperature(wire, current_a=10, surroundings=hm.Surroundings.open_air(30))
>>> hot.conductor_c > hot.surface_c
True)";

inline constexpr const char* class_dark_hours =
    R"(Dark hours and heat of one month or of all days; dark is without sun on the panels.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> year = hm.Weather.from_installation(hm.demo())
>>> run = hm.simulate_day(circuit, year, month=1, days=1)
>>> run.answer.all.days
1.0)";

inline constexpr const char* class_datasheet_fit =
    R"(Single diode fitted to a label.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> hm.fit_single_diode(panel).fit_mode.value
'exact')";

inline constexpr const char* class_day_energy =
    R"(Energies of all days of a simulation.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> year = hm.Weather.from_installation(hm.demo())
>>> run = hm.simulate_day(circuit, year, month=1, days=1)
>>> run.energy.delivered_kwh <= run.energy.available_kwh
True)";

inline constexpr const char* class_delivered =
    R"(Power of a circuit at one irradiance and cell temperature.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> at = circuit.delivered[0]
>>> at.power_low_w <= at.power_w <= at.power_high_w
True)";

inline constexpr const char* class_diode_curve =
    R"(I-V curve of a panel at one irradiance and cell temperature.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.fit_single_diode(panel).at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.open_circuit_voltage_v:.0f} V")
35 V)";

inline constexpr const char* class_element_resistance =
    R"(Resistance of one hot element.

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["tubular-1000-120"]
>>> found = hm.element_resistance(element)
>>> found.low_ohm < found.typical_ohm < found.high_ohm
True)";

inline constexpr const char* class_expected_band =
    R"(Expected meter reading as a band, without meter error.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> band = circuit.meter_sheet().rows[0].bank_v
>>> band.low < band.typical < band.high
True)";

inline constexpr const char* class_extremes =
    R"(Largest power, voltage and current of the elements in cold, bright weather with new panels.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.bright.survivor_power_w >= circuit.bright.element_power_w
True)";

inline constexpr const char* class_fitted =
    R"(Fitted number with its uncertainty.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> import pandas as pd
>>> year = hm.Weather.from_installation(hm.demo())
>>> run = hm.simulate_day(circuit, year, month=3, days=1, warm_up_days=0, start_c=15,
...                       air_around_c=15)
>>> log = pd.DataFrame({"hours": run.hours, "power_w": run.power_w, "air_c": 15.0,
...                     "sheath_c": run.sheath_c, "lid_c": run.lid_c})
>>> fitted = hm.calibrate(circuit, hm.StoreLog.from_frame(log)).k20_w_mk
>>> fitted.low < fitted.value < fitted.high
True)";

inline constexpr const char* class_fitted_value =
    R"(Number fitted for an explanation of readings.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> read = hm.Readings.from_rows([{"bank_v": 68.9, "bank_a": 1.21, "irradiance_w_m2": 820}])
>>> found = hm.diagnose(circuit, read)
>>> all(one.low <= one.value <= one.high for each in found.ranked for one in each.fitted)
True)";

inline constexpr const char* class_heat_point =
    R"(Temperatures of a store at one power of each element.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.heat.coil_c > circuit.heat.sheath_c
True)";

inline constexpr const char* class_history_entry =
    R"(Change of a catalog file.

Examples
--------
>>> import heatmatch as hm, os, tempfile
>>> with tempfile.TemporaryDirectory() as folder:
...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
...         _ = catalog.edit("panel", "cdte-100", price_low=20)
...         catalog.history()[0].number
1)";

inline constexpr const char* class_hot_tail =
    R"(Temperatures from the end of an element to its wire in cold, bright weather.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.tail.terminal_c > circuit.tail.far_wire_c
True)";

inline constexpr const char* class_hypothesis =
    R"(Explanation of readings.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> read = hm.Readings.from_rows([{"bank_v": 68.9, "bank_a": 1.21, "irradiance_w_m2": 820}])
>>> found = hm.diagnose(circuit, read)
>>> found.ranked[0].kind.value
'element open')";

inline constexpr const char* class_import_report =
    R"(Result of an import into a catalog.

Examples
--------
>>> import heatmatch as hm, os, tempfile
>>> with tempfile.TemporaryDirectory() as folder:
...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
...         catalog.import_json_text('{"heatmatch_catalog": 1}').added
0)";

inline constexpr const char* class_insulation_reach =
    R"(Distance from an element beyond which an insulation stays within its rating.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> tail = circuit.check_wires()[-1]
>>> [reach.insulation for reach in tail.reach if reach.from_m == 0][:1]
['etfe-150'])";

}  // namespace heatmatch::python::docs
