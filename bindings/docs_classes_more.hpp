#pragma once

// Docstrings of classes whose objects come from functions, by name from L.
namespace heatmatch::python::docs {

inline constexpr const char* class_largest_point =
    R"(Largest power, voltage and current of one panel over some weather.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
>>> curve.largest(4.0).power_w > 200
True)";

inline constexpr const char* class_meter_check =
    R"(Measurement or inspection of a circuit.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.meter_sheet().checks[0].letter
'A')";

inline constexpr const char* class_meter_row =
    R"(Expected readings at one irradiance and cell temperature.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.meter_sheet().rows[0].irradiance_w_m2
1000.0)";

inline constexpr const char* class_next_measurement =
    R"(Measurement that separates explanations of readings.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> read = hm.Readings.from_rows([{"bank_v": 68.9, "bank_a": 1.21, "irradiance_w_m2": 820}])
>>> found = hm.diagnose(circuit, read)
>>> all(measurement.separation > 0 for measurement in found.next)
True)";

inline constexpr const char* class_not_checked =
    R"(Checks that lack the same facts.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> all(group.checks for group in circuit.not_checked)
True)";

inline constexpr const char* class_operating_point =
    R"(Operating point of a load on an I-V curve.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.fit_single_diode(panel).at(irradiance_w_m2=800, cell_temperature_c=40)
>>> print(f"{curve.maximum_power().voltage_v:.0f} V")
28 V)";

inline constexpr const char* class_operating_points =
    R"(Operating points as arrays.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> curve = hm.fit_single_diode(panel).at(irradiance_w_m2=800, cell_temperature_c=40)
>>> curve.into_resistance([2.0, 4.0]).power_w.shape
(2,))";

inline constexpr const char* class_parts =
    R"(Snapshot of all parts, one list per kind.

Examples
--------
>>> import heatmatch as hm
>>> parts = hm.Catalog.starter().parts()
>>> parts.alloys[0].kind
'alloy')";

inline constexpr const char* class_placed_device =
    R"(Device with its control.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.circuit.devices[0].control.id == circuit.circuit.devices[0].device.part
True)";

inline constexpr const char* class_plane_irradiance =
    R"(Irradiance on a plane, by origin.

Examples
--------
>>> import heatmatch as hm
>>> on = hm.plane_irradiance(
...     tilt_deg=60, plane_azimuth_deg=180, apparent_zenith_deg=65, sun_azimuth_deg=180,
...     ghi_w_m2=400, dni_w_m2=800, dhi_w_m2=62,
... )
>>> on.beam_w_m2 < on.total_w_m2
True)";

inline constexpr const char* class_plane_irradiances =
    R"(Irradiance on a plane, by origin, as arrays.

Examples
--------
>>> import heatmatch as hm
>>> on = hm.plane_irradiance(
...     tilt_deg=[30, 60], plane_azimuth_deg=180, apparent_zenith_deg=65, sun_azimuth_deg=180,
...     ghi_w_m2=400, dni_w_m2=800, dhi_w_m2=62,
... )
>>> on.total_w_m2.shape
(2,))";

inline constexpr const char* class_probe =
    R"(Place of a thermometer in or on a store.

Examples
--------
>>> import heatmatch as hm
>>> log = hm.StoreLog.from_csv("hours,power_w,air_c,wall_c\n0,0,15,15\n1,300,15,16\n")
>>> log.probes[0].place.value
'wall')";

inline constexpr const char* class_rank_memory =
    R"(Results that one ranking keeps for the next: heat limits of banks, the year of twelve means.

A ranking is the same with and without it.

Examples
--------
>>> import heatmatch as hm
>>> memory = hm.RankMemory()
>>> len(hm.rank(hm.Catalog.starter(), hm.demo(), group="thin pair", top=3, memory=memory))
3)";

inline constexpr const char* class_refused_row =
    R"(Row of a file that cannot be used.

Examples
--------
>>> import heatmatch as hm, os, tempfile
>>> with tempfile.TemporaryDirectory() as folder:
...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
...         text = "id,label,u_w_m2k,source,source_kind\nfoil,foil,-6,meter,measured"
...         catalog.import_csv_text("cover", text, keep_good=True).refused[0].line
2)";

inline constexpr const char* class_run_parts =
    R"(Run of wire with its parts.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> [run.name for run in circuit.circuit.runs]
['home run', 'along the wall', 'hot tail'])";

inline constexpr const char* class_sheath_temperature =
    R"(Temperatures of a store that elements heat, each as a band.

Examples
--------
>>> import heatmatch as hm
>>> element = hm.Catalog.starter().elements["storage-rod-1000-240"]
>>> heated = hm.sheath_temperature(element, hm.demo().store, power_w=600, elements=4)
>>> heated.sheath_c.low_c < heated.sheath_c.high_c
True)";

inline constexpr const char* class_single_diode =
    R"(Single-diode parameters of a panel at 1000 W/m2 and 25 °C.

Examples
--------
>>> import heatmatch as hm
>>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
>>> diode = hm.fit_single_diode(panel)
>>> print(f"{diode.light_current_a:.2f} A")
8.67 A)";

inline constexpr const char* class_sky_irradiance =
    R"(Irradiance on the ground.

Examples
--------
>>> import heatmatch as hm
>>> sky = hm.clear_sky(40.0)
>>> sky.dhi_w_m2 < sky.ghi_w_m2
True)";

inline constexpr const char* class_sky_irradiances =
    R"(Irradiance on the ground, as arrays.

Examples
--------
>>> import heatmatch as hm
>>> hm.clear_sky([40.0, 60.0]).ghi_w_m2.shape
(2,))";

inline constexpr const char* class_space_balance =
    R"(Heat loss of a heated space on a dark night, through its covers and by its air.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> print(f"{circuit.space.loss_w_k:.0f} W/K")
98 W/K)";

inline constexpr const char* class_step =
    R"(Step of an explanation.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> all(step.name and step.description for step in circuit.explain())
True)";

inline constexpr const char* class_sun_positions =
    R"(Positions of the sun, as arrays.

Examples
--------
>>> import heatmatch as hm
>>> import pandas as pd
>>> moment = pd.date_range("2026-06-21 12:00", periods=1, tz="UTC")
>>> sun = hm.sun_position(latitude_deg=50, longitude_deg=0, elevation_m=0, times_utc=moment)
>>> print(f"{sun.zenith_deg[0]:.1f} deg")
26.6 deg)";

inline constexpr const char* class_switch_event =
    R"(Action of a control in a simulation.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> year = hm.Weather.from_installation(hm.demo())
>>> run = hm.simulate_day(circuit, year, month=1, days=1)
>>> [event.what for event in run.events if event.hours > run.hours[-1]]
[])";

inline constexpr const char* class_temperature_band =
    R"(Temperature as a band, for the unknown conductivity of the fill.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> band = circuit.heat.sheath_band
>>> band.low_c < band.typical_c < band.high_c
True)";

inline constexpr const char* class_wire_check =
    R"(Temperatures and limits of one run, and a suitable wire.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> circuit.check_wires()[0].run
'home run')";

inline constexpr const char* class_wire_limit =
    R"(Temperature limit of one part of a run.

Examples
--------
>>> import heatmatch as hm
>>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
>>> limits = circuit.check_wires()[0].limits
>>> limits[0].limit_c == min(limit.limit_c for limit in limits)
True)";

}  // namespace heatmatch::python::docs
