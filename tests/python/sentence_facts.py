"""What a number in a margin's sentence has to be, from the installation and its parts alone.

`FACTS` has a line for each number that is neither value, limit, low nor high of its margin: by the
id of the sentence and the name of the argument, what it is of a yard as a file holds it and of the
candidate made of it; several where it is one of them. None means: looked at elsewhere, said where.
"""

from __future__ import annotations

import functools
import json
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import heatmatch as hm
from case_yards import ROOT, Yard


@functools.cache
def _starter(kind: str) -> dict[str, Yard]:
    text = (ROOT / "catalog" / f"{kind}.json").read_text(encoding="utf-8")
    return {part["id"]: part for part in json.loads(text)[kind]}


@functools.cache
def _fails_c() -> dict[str, float]:
    """From where on a material fails, as its table has it."""
    table = (ROOT / "libheatmatch/src/parts/store_material.cpp").read_text(encoding="utf-8")
    rows = re.findall(r"\{(\w+), [\d.]+, ([\d.]+), \"", table)
    return {name: float(fails) for name, fails in rows}


@dataclass(frozen=True)
class Told:
    """A margin whose sentence is looked at, and all that it may be of."""

    yard: Yard
    candidate: hm.Candidate
    margin: hm.Margin

    def part(self, kind: str, name: str) -> Yard:
        own = self.yard.get("parts", {}).get(kind, [])
        found = [part for part in own if part["id"] == name]
        return found[0] if found else _starter(kind)[name]

    @property
    def element(self) -> hm.Element:
        return self.candidate.circuit.element

    @property
    def store(self) -> Yard:
        return self.yard["store"]

    def named(self) -> str:
        return re.search(r'"(.*)"', self.margin.subject)[1]

    def run(self) -> Yard:
        return next(run for run in self.yard["runs"] if run["name"] == self.named())

    def insulation(self) -> Yard:
        """Of a run, whose wire may have been chosen."""
        laid = next(run for run in self.candidate.circuit.runs if run.name == self.named())
        return self.part("insulations", laid.insulation.id)

    def devices(self, duty: str = "") -> list[Yard]:
        placed = self.yard.get("devices", [])
        return [device for device in placed if not duty or device.get("duty") == duty]

    def ratings(self, member: str) -> list[float]:
        """For every placed control: its sentence names the one concerned."""
        controls = [self.part("controls", device["part"]) for device in self.devices()]
        return [pair[member] for control in controls for pair in control.get("dc_ratings", [])]

    def of_controls(self, member: str) -> list[float]:
        controls = [self.part("controls", device["part"]) for device in self.devices()]
        return [control[member] for control in controls if member in control]

    def string_fuse_a(self) -> list[float]:
        fuses = [
            self.part("controls", device["part"]) for device in self.devices("protects a string")
        ]
        return [max(pair["a_dc"] for fuse in fuses for pair in fuse["dc_ratings"])]

    def cold_v(self) -> float:
        """Of the open array on the coldest morning, as the margin of an arc has it."""
        return next(one.value for one in self.candidate.margins if one.name == "series arc")

    def lasting_a(self) -> list[float]:
        """1.25 times short-circuit current in the site's sun, of the array and of a string."""
        circuit = self.candidate.circuit
        sun = max(1.0, self.candidate.site.bright_irradiance_w_m2 / 1000.0)
        amperes = {}
        for group in circuit.groups:
            measured = (group.measured or {}).get("i_sc", 0.0)
            amperes[group.group] = max(self.part("panels", group.panel)["i_sc"], measured)
        strings = [1.25 * sun * max(amperes[name] for name in names) for names in circuit.strings]
        return [max(strings), sum(strings)]

    def summer_array(self) -> hm.MixedArrayCurve:
        """The array in full sun with cells of a warm day."""
        return self.candidate.circuit.array.at(irradiance_w_m2=1000.0, cell_temperature_c=45.0)

    def w_per_cm(self) -> float:
        return 10.0 * self.candidate.bright.element_power_w / self.element.heated_length_mm


Fact = Callable[[Told], Any]


def always(number: float | None) -> Fact:
    return lambda _: number


FACTS: dict[tuple[str, str], Fact] = {
    ("array.cold_voltage_alone", "older"): always(600.0),
    ("array.reverse_with_fuses", "fuse"): Told.string_fuse_a,
    # Of each string alone, and back into it: cpp/test_unlike_array_margins.cpp.
    ("array.unequal_strings", "low_v"): always(None),
    ("array.unequal_strings", "high_v"): always(None),
    ("array.unequal_strings", "back"): always(None),
    ("array.unequal_panels", "best"): lambda told: told.summer_array().maximum_power().power_w,
    ("array.unequal_panels", "sum"): lambda told: told.summer_array().sum_of_maxima_w,
    ("array.unequal_panels", "lost"): lambda told: (
        told.summer_array().sum_of_maxima_w - told.summer_array().maximum_power().power_w
    ),
    ("bank.insulation_alone", "new"): always(20.0),
    ("bank.insulation_alone", "volts"): always(500.0),
    ("bank.insulation_alone_in_liquid", "new"): always(20.0),
    ("bank.insulation_alone_in_liquid", "volts"): always(500.0),
    ("bank.power_in_liquid", "rated"): lambda told: told.element.rated_w,
    ("bank.power_above_in_liquid", "rated"): lambda told: told.element.rated_w,
    ("bank.sheath_voltage", "peak"): always(math.sqrt(2.0)),
    ("device.breaks_amperes", "factor"): always(1.25),
    ("device.breaks_amperes", "volts"): Told.cold_v,
    ("device.carries", "factor"): always(1.25),
    ("device.fuse_amperes", "factor"): always(1.5625),
    ("heat.legs_too_long", "height"): lambda told: 1000.0 * told.store["height_m"],
    ("heat.legs_too_long", "width"): lambda told: 1000.0 * told.store["diameter_m"],
    ("heat.legs_too_long", "length"): lambda told: [
        told.element.heated_length_mm,
        told.element.heated_length_mm / 2.0,
    ],
    # Fourteen days are simulated in test_stagnation.py and cpp/test_limit_margins.cpp.
    ("limit.acts", "day"): lambda _: [float(day) for day in range(1, 15)],
    ("limit.water_set", "most"): always(93.0),
    ("material.fails", "fails"): lambda told: _fails_c()[
        told.store[told.margin.name.split()[0]].replace(" ", "_").replace("-", "_")
    ],
    ("material.not_told", "then"): lambda told: told.candidate.heat.stagnation_inner_c,
    ("material.something_lags", "u"): lambda told: told.store["side_u_w_m2k"],
    ("opens.amperes", "amperes"): Told.lasting_a,
    ("opens.amperes", "rated"): lambda told: told.ratings("a_dc"),
    ("opens.amperes", "volts"): Told.cold_v,
    ("opens.out_of_range", "set"): lambda told: [
        device["set_c"] for device in told.devices() if "set_c" in device
    ],
    ("opens.out_of_range", "low"): lambda told: told.of_controls("sense_low_c"),
    ("opens.out_of_range", "high"): lambda told: told.of_controls("sense_high_c"),
    ("opens.volts", "rated"): lambda told: [0.0, 30.0, *told.ratings("v_dc")],
    ("opens.volts", "volts"): Told.cold_v,
    ("run.also_roof", "rise"): always(33.0),
    ("run.also_together", "count"): lambda told: told.run()["surroundings"]["loaded_conductors"],
    ("floor.touch", "bottom"): lambda told: told.candidate.heat.stagnation_bottom_c,
    ("floor.touch", "burns"): always(65.0),
    ("floor.vessel", "bottom"): lambda told: told.candidate.heat.stagnation_bottom_c,
    # Limits of materials are checked in cpp/test_store_material.cpp.
    ("floor.vessel", "stands"): lambda _: None,
    ("floor.vessel_unknown", "bottom"): lambda told: told.candidate.heat.stagnation_bottom_c,
    # Of polyethylene, the least of all: ppfa-pipe-limits.
    ("floor.vessel_unknown", "least"): always(60.0),
    ("run.corrected_current", "factor"): always(1.25),
    ("run.insulation_dries", "wet"): lambda told: told.insulation()["limit_wet_c"],
    ("run.insulation_wet", "dry"): lambda told: told.insulation()["limit_c"],
    ("run.joint_current", "factor"): always(1.25),
    ("run.metal_unknown", "amperes"): always(8.0),
    ("run.metal_unknown", "volts"): always(30.0),
    ("run.not_in_metal", "amperes"): always(8.0),
    ("run.not_in_metal", "volts"): always(30.0),
    ("run.state_air_to_choose", "ohms"): always(0.0),
    ("run.table_current", "factor"): always(1.5625),
    ("sheath.gap", "adds"): lambda told: told.candidate.heat.gap_k,
    # Which gap a fill leaves, cpp/test_rod_contact.cpp looks at.
    ("sheath.gap", "gap"): lambda _: None,
    ("sheath.load", "hours"): lambda told: told.store.get("charge_hours", 6.0),
    ("sheath.load", "load"): Told.w_per_cm,
    ("sheath.stagnation_wall", "low"): lambda told: told.candidate.heat.stagnation_wall_c,
    ("sheath.stagnation_wall", "lid"): lambda told: told.candidate.heat.stagnation_lid_c,
    ("sheath.stagnation", "least"): lambda told: told.candidate.heat.stagnation_least_c,
    ("sheath.stagnation_damp", "dry"): lambda told: told.candidate.heat.stagnation_sheath_c,
    ("sheath.survivors_not_for_years", "years"): lambda told: (
        told.candidate.circuit.sheath.verdict_limit_c
    ),
    ("sheath.survivors_not_for_years", "reached"): lambda told: told.margin.value,
    ("store.wood_stagnant", "then"): lambda told: max(
        told.candidate.heat.stagnation_wall_c, told.candidate.heat.stagnation_lid_c
    ),
    ("store.touch_stagnant", "then"): lambda told: max(
        told.candidate.heat.stagnation_wall_c, told.candidate.heat.stagnation_lid_c
    ),
    ("store.dries_out", "enough"): always(100.0),
    ("store.dries_out", "load"): lambda told: 100.0 * told.w_per_cm(),
    ("store.may_stay_damp", "enough"): always(100.0),
    ("store.may_stay_damp", "load"): lambda told: 100.0 * told.w_per_cm(),
    ("store.touch", "minute"): always(51.0),
    ("store.touch", "ten"): always(48.0),
    ("store.wood", "clearance"): always(0.9),
    ("store.wood_is_away", "clearance"): always(0.9),
    ("store.wood_near", "clearance"): always(0.9),
    ("store.wood_near", "near"): always(65.0),
    # Which of its wire's temperatures it is, cpp/test_survivors.cpp looks at.
    ("tail.does_from", "distance"): lambda _: None,
    ("tail.air_not_stated", "air"): lambda told: told.candidate.tail.air_c,
}

# A limit that is a number of the trade or of a part: by the margin's name.
LIMITS: dict[str, Fact] = {
    "series arc": always(80.0),
    "touch temperature": always(65.0),
    "voltage drop": always(3.0),
    "shade stress": always(98.0),
    "end seal": always(200.0),
    "string mismatch": always(5.0),
    "earth fault": always(1.0),
    "touch voltage": lambda told: 60.0 if told.yard["site"].get("wet") is False else 30.0,
    "bonding": lambda told: 60.0 if told.yard["site"].get("wet") is False else 30.0,
    "element voltage": lambda told: told.element.rated_v,
    "survivor power": lambda told: told.element.rated_w,
    "sheath temperature": lambda told: told.candidate.circuit.sheath.verdict_limit_c,
    "stagnation": lambda told: told.candidate.circuit.sheath.verdict_limit_c,
    "settled sand": lambda told: told.candidate.circuit.sheath.hard_limit_c,
    "survivor sheath": lambda told: told.candidate.circuit.sheath.hard_limit_c,
    "coil temperature": lambda told: told.candidate.circuit.alloy.limit_c,
    "terminal temperature": lambda told: told.element.terminal_limit_c,
}

# A value that is in the candidate too: by the margin's name.
VALUES: dict[str, Fact] = {
    "element power": lambda told: told.candidate.bright.element_power_w,
    "element voltage": lambda told: told.candidate.bright.element_voltage_v,
    "survivor power": lambda told: told.candidate.bright.survivor_power_w,
    "coil temperature": lambda told: told.candidate.heat.coil_c,
    "settled sand": lambda told: told.candidate.heat.void_c,
    "touch temperature": lambda told: max(told.candidate.heat.wall_c, told.candidate.heat.lid_c),
    "wall and lid": lambda told: max(told.candidate.heat.wall_c, told.candidate.heat.lid_c),
    "floor": lambda told: told.candidate.heat.floor_c,
    "vessel material": lambda told: told.candidate.heat.stagnation_inner_c,
    "liner material": lambda told: told.candidate.heat.stagnation_inner_c,
    "lagging material": lambda told: told.candidate.heat.stagnation_inner_c,
    "touch voltage": Told.cold_v,
    "bonding": Told.cold_v,
    "sheath voltage": Told.cold_v,
}

# The ends of a band, by the margin's name; a damp sheath has its dry state for the higher one.
LOWS: dict[str, Fact] = {
    "sheath temperature": lambda told: told.candidate.heat.sheath_band.low_c,
    "stagnation": lambda told: told.candidate.heat.stagnation_wall_c,
    "vessel material": lambda told: told.candidate.heat.inner_c,
    "liner material": lambda told: told.candidate.heat.inner_c,
    "lagging material": lambda told: told.candidate.heat.inner_c,
    "dry-out": lambda told: told.candidate.heat.moist_sheath_c,
}
HIGHS: dict[str, Fact] = {
    "floor": lambda told: told.candidate.heat.stagnation_floor_c,
    "sheath temperature": lambda told: [
        told.candidate.heat.sheath_band.high_c,
        told.candidate.heat.sheath_c,
    ],
    "dry-out": lambda told: told.candidate.heat.sheath_band.typical_c,
}
