"""Docstrings of public functions, methods and properties, counted: none may lack its section."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import choices
from test_docstrings import (
    CALLABLES,
    CLASSES,
    FACES,
    UNITS,
    entries_of,
    parameters_of,
    returns_of,
    sections_of,
    text_of,
)  # fmt: skip

STUBS = (Path(hm.__file__).parent / "_core.pyi").read_text(encoding="utf-8")
# Functions that take only objects of heatmatch, and so have nothing to refuse but other kinds.
NOTHING_TO_REFUSE = {
    "hm.Candidate.check_wires", "hm.PartsView.get", "hm.cautions", "hm.compare_rankings",
}  # fmt: skip
PHYSICS = {
    "hm": (
        "assess calibrate clear_sky coil_above_sheath_k cold_voltage conductor_temperature diagnose"
        " element_resistance erbs_split faiman_cell_temperature_c fit_single_diode"
        " glass_transmission hours_to_limit incidence_angle_deg largest_power_w meter_sheet"
        " noct_cell_temperature_c operating_points packed_bed_conductivity plane_irradiance rank"
        " sheath_in_air_c sheath_temperature simulate_day simulate_stagnation sun_position"
    ),
    "hm.Array": "at uniform",
    "hm.ArrayCurve": "current_a into_resistance maximum_power voltage_v",
    "hm.BankHeat": "at largest_element_w",
    "hm.BedCharge": "bed_temperature_c hours_to_limit largest_power_w sheath_c temperatures",
    "hm.Control": "breaking_current_a",
    "hm.DiodeCurve": "current_a into_resistance maximum_power voltage_v",
    "hm.EnergyCurve": "delivered_kwh hours_above largest near_short_circuit_share slope_kwh",
    "hm.HotTail": "distance_for_limit_m wire_c",
    "hm.MonthlySky": "sun_hours weather",
    "hm.Panel": "listed_diode",
    "hm.SingleDiode": "at scaled",
    "hm.Site": "rear_irradiance",
    "hm.SpaceBalance": "lift_k",
    "hm.Weather": "cell_temperature_c clear_days from_arrays from_months with_rear_irradiance",
    "hm.Wire": "resistance_ohm_per_m",
    "hm.weather": "from_frame from_installation",
}
COMPUTED = [f"{place}.{name}" for place, names in PHYSICS.items() for name in names.split()]
# Exact geometry, and what is from memory as the docstring says, have no source to name.
NO_SOURCE = {"hm.coil_above_sheath_k", "hm.incidence_angle_deg"}
# Endings of properties that no parameter has; the longest ends first.
MORE_UNITS = {
    "_kg_m3": "kg/m3", "_kwh_per_day": "kWh/day", "_kwh_day": "kWh/day", "_kwh_m2": "kWh/m2",
    "_w_cm2": "W/cm2", "_pct_per_k": "%/K", "_ohm_per_km": "ohm/km", "_mohm": "Mohm",
    "_wh_k": "Wh/K", "price_per_kwh": "currency/kWh", "_kwh": "kWh", "_pct": "%", "_mm2": "mm2",
    "_years": "years", "_hours": "h",
}  # fmt: skip
ALL_UNITS = {**MORE_UNITS, **UNITS, "_m2": "m2"}
HALF = re.compile(
    r"^(?:Of|That|Into|At|In|On|From|By|With|Without|The|What|How|Where|Which|More)\b"
)


def properties() -> dict[str, str]:
    """Class and property -> docstring in one line, of every public class."""
    found = {}
    for name in hm.__all__:
        cls = getattr(hm, name)
        if not inspect.isclass(cls) or issubclass(cls, Exception):
            continue
        for member in dir(cls):
            thing = inspect.getattr_static(cls, member)
            # A static property of pybind11, `kind` of parts, has no docstring that Python can read.
            if member.startswith("_") or type(thing).__name__ == "pybind11_static_property":
                continue
            if hasattr(type(thing), "__get__") and not inspect.isroutine(getattr(cls, member)):
                found[f"{name}.{member}"] = " ".join((inspect.getdoc(thing) or "").split())
    return found


def held_kinds() -> dict[str, str]:
    """Class and property -> what it is, as the stubs or the classes of Python write it."""
    kinds = {}
    for cls, body in re.findall(r"^class (\w+).*?:\n((?:    .*\n|\n)*)", STUBS, re.MULTILINE):
        for name, kind in re.findall(r"@property\n    def (\w+)\(self\) -> (.*): \.\.\.", body):
            kinds[f"{cls}.{name}"] = kind
    for cls, face in FACES.items():
        for base in face.__mro__:
            for name, kind in getattr(base, "__annotations__", {}).items():
                kinds.setdefault(f"{cls}.{name}", str(kind).removeprefix("Held[")[:-1])
    return kinds


PROPERTIES = properties()
KINDS = {name: kind for name, kind in held_kinds().items() if name in PROPERTIES}


def unit_of(name: str) -> str:
    """The unit that the name of a property says; nothing where it says none."""
    return next((unit for end, unit in ALL_UNITS.items() if f"_{name}".endswith(end)), "")


def test_every_class_function_and_method_has_an_example(
    record_property: Callable[[str, object], None],
) -> None:
    written: dict[str, Any] = CALLABLES | CLASSES
    without = [name for name, thing in written.items() if ">>>" not in text_of(thing)]
    unnamed = [name for name, thing in written.items() if "Examples" not in sections_of(thing)]
    record_property("told", f"docstrings: {len(written)} classes and functions have an example")
    assert len(CALLABLES) > 200
    assert len(CLASSES) > 90
    assert without == unnamed == []


def test_every_result_is_described() -> None:
    returning = [name for name, thing in CALLABLES.items() if returns_of(thing) != "None"]
    assert len(returning) > 190
    assert [name for name in returning if "Returns" not in sections_of(CALLABLES[name])] == []


def test_what_is_refused_is_described(record_property: Callable[[str, object], None]) -> None:
    checked = [name for name, thing in CALLABLES.items() if parameters_of(thing)]
    without = {name for name in checked if "Raises" not in sections_of(CALLABLES[name])}
    record_property("told", f"docstrings: {len(checked) - len(without)} say what they refuse")
    assert without == NOTHING_TO_REFUSE


def test_every_computation_has_its_equation_and_source(
    record_property: Callable[[str, object], None],
) -> None:
    without: dict[str, list[str]] = {"Notes": [], "References": []}
    for name in COMPUTED:
        sections = sections_of(CALLABLES[name])
        others = " ".join(sections.get("See Also", []))
        for title, lacking in without.items():
            if title not in sections and not others:
                lacking.append(name)
        sources = set(entries_of(sections.get("References", [])))
        assert sources <= set(hm.sources()), name
    record_property("told", f"docstrings: {len(COMPUTED)} computations name equation and source")
    assert set(without["References"]) <= NO_SOURCE
    assert without["Notes"] == []


def test_no_property_has_half_a_phrase(record_property: Callable[[str, object], None]) -> None:
    record_property("told", f"docstrings: {len(PROPERTIES)} properties are whole noun phrases")
    assert len(PROPERTIES) > 800
    for name, doc in PROPERTIES.items():
        assert len(doc) > 5, f"{name} has no docstring"
        assert doc[0].isupper(), f"{name}: {doc}"
        assert doc.endswith("."), f"{name}: {doc}"
        assert not HALF.match(doc), f"{name}: {doc}"
        assert not doc.endswith("or None."), f"{name}: say what None means: {doc}"


@pytest.mark.parametrize("name", [name for name in PROPERTIES if unit_of(name.split(".")[1])])
def test_a_property_has_the_unit_that_its_name_says(name: str) -> None:
    assert f"[{unit_of(name.split('.')[1])}" in PROPERTIES[name], PROPERTIES[name]


def test_a_property_that_may_be_none_says_what_that_means() -> None:
    may_be = [name for name, kind in KINDS.items() if "None" in kind]
    assert len(may_be) > 100
    assert [f"{n}: {PROPERTIES[n]}" for n in may_be if "None" not in PROPERTIES[n]] == []


def test_a_property_that_is_a_choice_has_its_words() -> None:
    found = 0
    for name, kind in KINDS.items():
        match = re.match(r"(?:_choices\.)?(\w+)(?: \| None)?$", kind)
        choice: Any = getattr(choices, match[1], None) if match else None
        if inspect.isclass(choice) and issubclass(choice, choices.Choice):
            said = [word.value for word in choice if f'"{word.value}"' in PROPERTIES[name]]
            found += 1
            assert len(said) >= 2 or "words" in PROPERTIES[name], f"{name}: {PROPERTIES[name]}"
    assert found > 40
