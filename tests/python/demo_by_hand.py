"""The demo and the circuit of its plan, by the nameplates of `catalog/*.json` alone."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import Any

from case_yards import ROOT
from hand_physics import Diode, Panels, Wire, copper_ohm_per_m, gauge_m2, string_current_a
from scipy import optimize

Row = dict[str, Any]

AGE_SHARE = 0.005  # of the current, a year (Jordan and Kurtz 2012)
# An unknown alloy at 700 °C over 20 °C: the table GB/T 1234 has, and what is likely (from memory).
ALLOY_AT_700_C = {"low": 0.97, "typical": 1.02, "high": 1.17}
COIL_C, RATED_COIL_C = 300.0, 600.0


def row(kind: str, named: str) -> Row:
    text = (ROOT / "catalog" / f"{kind}.json").read_text(encoding="utf-8")
    return next(each for each in json.loads(text)[kind] if each["id"] == named)


def typical(record: Row) -> float:
    return float(record["price_low"] + record["price_high"]) / 2


@dataclass
class Hand:
    """The demo and its plan, as far as the hand takes them over."""

    yard: Row
    circuit: Row
    home_wire: str
    string: list[Panels] = field(default_factory=list)
    new: list[Panels] = field(default_factory=list)

    def __post_init__(self) -> None:
        for part in self.circuit["array"].split(" + "):
            group, _, count = part.rpartition(" x")
            self.add(next(g for g in self.yard["panels"] if g["group"] == group), int(count))
        self.element = row("elements", self.circuit["element"])
        self.series, self.branches = map(int, self.circuit["bank"].rstrip("P").split("S"))
        assert self.branches == 1, "worked out for elements in series"

    def add(self, group: Row, count: int) -> None:
        """Measured volts and amperes win; else age takes amperes."""
        diode = Diode.fitted(row("panels", group["panel"]))
        self.new.append(Panels(diode, count))
        measured = group.get("measured")
        if measured is None:
            self.string.append(Panels(diode, count, 1 - AGE_SHARE * group["age_years"]))
            return
        points = diode.points(measured["irradiance_w_m2"], measured["cell_temperature_c"])
        amperes, volts = measured["i_sc"] / points["i_sc"], measured["v_oc"] / points["v_oc"]
        self.string.append(Panels(diode, count, float(amperes), float(volts)))

    def run(self, named: str) -> tuple[Row, Row]:
        run = next(each for each in self.yard["runs"] if each["name"] == named)
        wire = self.home_wire if run["wire"] == "choose" else run["wire"]
        return run, row("wires", wire)

    def ohm(self, end: str) -> float:
        """Of one element in use: V²/W at its rated coil temperature."""
        rated = self.element["rated_v"] ** 2 / self.element["rated_w"]
        ratios = {}
        for name, at_700 in ALLOY_AT_700_C.items():
            use, at_rated = (1 + (at_700 - 1) * (t - 20) / 680 for t in (COIL_C, RATED_COIL_C))
            ratios[name] = use / at_rated
        if end == "typical":
            return float(rated * ratios["typical"])
        if end == "low":
            more = 1 + self.element["power_tolerance_plus_pct"] / 100
            return float(rated / more * min(ratios.values()))
        less = 1 - self.element["power_tolerance_minus_pct"] / 100
        return float(rated / less * max(ratios.values()))

    def wire_ohm(self, conductors_c: dict[str, float]) -> float:
        ohm = 0.0
        for named, conductor_c in conductors_c.items():
            run, wire = self.run(named)
            area = gauge_m2(int(wire["area_mm2"].split()[0]))
            ohm += 2 * run["length_m"] * copper_ohm_per_m(area, conductor_c)
        return ohm

    def conductors_c(self, amperes: float) -> dict[str, float]:
        """In sun of 1000 W/m2 outdoors; in conduit the current counts as I/0.7."""
        found = {}
        for run, wire in (self.run(each["name"]) for each in self.yard["runs"]):
            around = run["surroundings"]
            made = Wire(
                gauge_m2(int(wire["area_mm2"].split()[0])),
                wire["outer_diameter_mm"] / 1000,
                row("insulations", wire["insulation"])["conductivity_w_mk"],
            )
            counted = amperes / 0.7 if around["kind"] == "conduit" else amperes
            sun = 1000.0 if around["kind"] == "sunlit" else 0.0
            found[run["name"]] = made.conductor_c(counted, around["air_c"], sun)
        return found

    def short_circuit_a(self) -> float:
        return float(max(panels.diode.label["i_sc"] for panels in self.string))

    def element_power_w(self, brightest: float) -> float:
        """Of one element in cold, bright weather: new panels, it at its worst, the others least."""
        cold_c = self.yard["site"]["record_low_c"]
        wire = self.wire_ohm({run["name"]: cold_c for run in self.yard["runs"]})
        rest = wire + (self.series - 1) * self.ohm("low")

        def less_w(own: float) -> float:
            cells = [cold_c + 20.0] * len(self.new)
            current = string_current_a(self.new, brightest, cells, own + rest)[0]
            return float(-(current**2) * own)

        ends = (self.ohm("low"), self.ohm("high"))
        return -float(optimize.minimize_scalar(less_w, bounds=ends, method="bounded").fun)
