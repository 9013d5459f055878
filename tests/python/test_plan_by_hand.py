"""The plan of the demo recomputed from its nameplates, beside what the plan says.

The circuit and its chosen wire are the plan's, the sun and the air of each hour those of the
weather; all else is worked out in `hand_physics.py` from `catalog/*.json` and the demo's file.
`pytest -s` prints both numbers of each comparison.
"""

from __future__ import annotations

import json

import heatmatch as hm
import numpy as np
import pytest
from case_yards import ROOT
from demo_by_hand import Hand, row, typical
from hand_physics import Bed, Sand, string_current_a

CODE = 1.25  # NEC 690.8(A) and (B), once each


def agree(what: str, hand: float, plan: float | None, rel: float) -> None:
    assert plan is not None, what
    said = f"{what}: {hand:.7g} by hand, {plan:.7g} in the plan, {plan / hand - 1:+.1e}"
    print(said)
    assert plan == pytest.approx(hand, rel=rel), said


@pytest.fixture(scope="module")
def plan(starter: hm.Catalog, demo: hm.Installation) -> hm.Plan:
    return hm.plan(starter, demo)


@pytest.fixture(scope="module")
def hand(plan: hm.Plan) -> Hand:
    path = ROOT / "notebooks" / "data" / "demo_installation.json"
    yard = json.loads(path.read_text(encoding="utf-8"))
    (circuit,) = plan.installation.to_dict()["circuits"]  # worked out for one circuit
    (candidate,) = plan.circuits
    wire = next(run.wire.id for run in candidate.circuit.runs if run.run.name == "home run")
    return Hand(yard, circuit, wire)


@pytest.fixture(scope="module")
def weather(demo: hm.Installation) -> hm.Weather:
    return hm.Weather.from_installation(demo)


@pytest.fixture(scope="module")
def brightest(weather: hm.Weather) -> float:
    return float(max(weather.plane_irradiance_w_m2))


def margin(plan: hm.Plan, name: str, subject: str) -> hm.Margin:
    return next(
        each for each in plan.circuits[0].margins if each.name == name and subject in each.subject
    )


# Source: the label's coefficient, as NEC 690.7(A)(2) has it; measured volts are lower here.
def test_the_cold_voltage_is_the_labels_by_its_coefficient(plan: hm.Plan, hand: Hand) -> None:
    below = hand.yard["site"]["record_low_c"] - 25
    volts = 0.0
    for panels in hand.string:
        label = panels.diode.label
        cold = label["v_oc"] * (1 + label["beta_voc_pct_per_k"] / 100 * below)
        volts += panels.count * cold * max(1.0, panels.volts)
    agree("cold Voc [V]", volts, plan.circuits[0].circuit.cold_voltage_v, 1e-9)
    for panels in hand.string:
        subject = f'"{panels.diode.label["id"]}"'
        found = margin(plan, "cold voltage", subject)
        agree(f"of {subject} [V]", volts, found.value, 1e-9)
        assert found.limit == panels.diode.label["max_system_voltage_v"]


# Source: NEC 690.8 (continuous, 1.25 twice; 1.25 for breaking), E = R/(R + Rw) of a loop.
def test_runs_carry_what_the_code_counts(plan: hm.Plan, hand: Hand, brightest: float) -> None:
    isc = hand.short_circuit_a()
    for named in ("home run", "along the wall"):
        agree(
            f"{named}, current [A]",
            CODE**2 * isc,
            margin(plan, "run current", named).value,
            1e-9,
        )
    breaking = margin(plan, "dc breaking", "isolator").value
    agree("to be broken [A]", CODE * isc * brightest / 1000, breaking, 1e-9)


# Source: Churchill and Chu 1975, IEC 60028, ASTM B258; a table's diameter of strands: 0.05 K.
def test_conductors_and_their_drop(plan: hm.Plan, hand: Hand, brightest: float) -> None:
    hot = hand.conductors_c(hand.short_circuit_a() * brightest / 1000)
    for named, celsius in hot.items():
        agree(f"{named} [°C]", celsius, margin(plan, "insulation", named).value, 1.5e-3)
    wire, bank = hand.wire_ohm(hot), hand.series * hand.ohm("typical")
    circuit = plan.circuits[0].circuit
    agree("bank [ohm]", bank, circuit.bank_ohm, 1e-9)
    agree("wire [ohm]", wire, circuit.wire_ohm, 2e-4)
    drop = 100 * wire / (wire + bank)
    agree("voltage drop [%]", drop, margin(plan, "voltage drop", "runs").value, 2e-4)


# Source: De Soto 2006 by pvlib, fitted by SciPy to the label; the fits differ by 1e-5.
def test_points_of_operation(plan: hm.Plan, hand: Hand, brightest: float) -> None:
    bank = hand.series * hand.ohm("typical")
    load = bank + hand.wire_ohm(hand.conductors_c(hand.short_circuit_a() * brightest / 1000))
    for delivered in plan.circuits[0].delivered:
        cells = [delivered.cell_temperature_c] * len(hand.string)
        sun = delivered.irradiance_w_m2
        current = string_current_a(hand.string, sun, cells, load)[0]
        agree(f"at {sun:g} W/m2 [A]", current, delivered.current_a, 5e-5)
        agree(f"at {sun:g} W/m2 [W]", current**2 * bank, delivered.power_w, 1e-4)


# Source: the same, summed over every hour. Condensed weather adds its own 1e-4 (tests/README.md).
def test_the_heat_of_the_season_is_the_sum_of_its_hours(
    plan: hm.Plan,
    hand: Hand,
    weather: hm.Weather,
    brightest: float,
    starter: hm.Catalog,
    demo: hm.Installation,
) -> None:
    sun = np.asarray(weather.plane_irradiance_w_m2)
    season = np.isin(weather.month, hand.yard["goals"]["months"]) & (sun > 0)
    cells = [
        np.asarray(weather.cell_temperature_c(noct_c=panels.diode.label["noct_c"]))[season]
        for panels in hand.string
    ]
    bank = hand.series * hand.ohm("typical")
    load = bank + hand.wire_ohm(hand.conductors_c(hand.short_circuit_a() * brightest / 1000))
    current = string_current_a(hand.string, sun[season], cells, load)
    kwh = float(np.sum(current**2 * bank * np.asarray(weather.hours)[season])) / 1000
    exact = hm.assess(starter, plan.installation, weather, exact_weather=True)
    assert exact.season is not None
    agree("heat, every hour [kWh]", kwh, exact.season.kwh, 1e-4)
    agree("heat of the plan [kWh]", kwh, plan.kwh, 5e-4)


# Source: prices of the catalog, the middle of low and high; lengths are one-way.
def test_the_bill_is_what_is_not_owned(plan: hm.Plan, hand: Hand) -> None:
    owned = {each["element"]: each["count"] for each in hand.yard["elements"] if "any" not in each}
    count = hand.series * hand.branches
    wanted = {hand.element["id"]: (hand.element, max(0, count - owned.get(hand.element["id"], 0)))}
    for run in hand.yard["runs"]:
        _, wire = hand.run(run["name"])
        wanted[wire["id"]] = (wire, max(0.0, 2 * run["length_m"] - run.get("owned_m", 0)))
        if "connector" in run:  # two conductors, two ends
            joint = row("connectors", run["connector"])
            wanted[joint["id"]] = (joint, max(0, 4 - run.get("owned_connectors", 0)))
    # A disconnect, a thermostat, a limit and its contactor are all in the yard, one of each.
    for device in hand.yard["devices"]:
        control = row("controls", device["part"])
        wanted[control["id"]] = (control, max(0, 1 - device.get("owned", 0)))
    lines = {line.part: line for line in plan.bill.lines}
    assert lines.keys() == wanted.keys()
    for part, (record, to_buy) in wanted.items():
        assert lines[part].to_buy == pytest.approx(to_buy), part
        if to_buy:
            agree(f"{part}, price", to_buy * typical(record), lines[part].typical, 1e-9)
    for end in ("low", "high"):
        total = sum(to_buy * record[f"price_{end}"] for record, to_buy in wanted.values())
        agree(f"bill, {end}", total, getattr(plan.bill, end), 1e-9)
    total = sum(to_buy * typical(record) for record, to_buy in wanted.values())
    agree("bill, typical", total, plan.bill.typical, 1e-9)
    assert total <= hand.yard["goals"]["budget"]


# Source: design page, closed form of the sheath (lines of Carslaw and Jaeger 1959), three days.
def test_the_sheath_by_the_closed_form(plan: hm.Plan, hand: Hand, brightest: float) -> None:
    element_w = hand.element_power_w(brightest)
    candidate = plan.circuits[0]
    agree("one element, cold and bright [W]", element_w, candidate.bright.element_power_w, 5e-4)
    store, sand = hand.yard["store"], row("media", hand.yard["store"]["medium"])
    number, apart = hand.element["legs"], hand.element["leg_spacing_mm"] / 1000
    across = [(i - (number - 1) / 2) * apart for i in range(number)]
    beside = store["element_spacing_mm"] / 1000
    # One element behind the other: the narrowest that fits the drum.
    behind = [(i - (hand.series - 1) / 2) * beside for i in range(hand.series)]
    legs = [(x, y) for y in behind for x in across]

    def sheath_c(k20: float) -> float:
        bed = Bed(
            sand=Sand(k20, sand),
            diameter_m=store["diameter_m"],
            height_m=store["height_m"],
            emissivity=store["wall_emissivity"],
            top_u=store["top_u_w_m2k"],
            bottom_u=store["bottom_u_w_m2k"],
            leg_m=hand.element["heated_length_mm"] / 1000 / number,
            rod_m=hand.element["sheath_diameter_mm"] / 2000,
            legs=legs,
            hours=store["charge_hours"],
            air_c=store["air_c"],
        )
        return bed.sheath_c(hand.series * element_w)

    assert candidate.heat is not None
    band = candidate.heat.sheath_band
    agree("sheath, k 0.35 [°C]", sheath_c(sand["k20_high_w_mk"]), band.low_c, 5e-4)
    agree("sheath, k 0.27 [°C]", sheath_c(sand["k20_w_mk"]), band.typical_c, 5e-4)
    hottest = sheath_c(sand["k20_low_w_mk"])
    agree("sheath, k 0.17 [°C]", hottest, band.high_c, 5e-4)
    judged = store["air_c"] + 1.10 * (hottest - store["air_c"])
    agree("sheath as judged [°C]", judged, margin(plan, "sheath temperature", "").value, 5e-4)
