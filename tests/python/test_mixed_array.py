"""Arrays of unlike panels in Python; the physics are checked in C++ (test_mixed_array.cpp)."""

from __future__ import annotations

import json
import math
import pickle
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

REFERENCE = Path(__file__).parents[1] / "reference" / "mixed_open.jsonl"


def reference() -> tuple[dict[str, Any], list[dict[str, Any]]]:
    head, *cases = map(json.loads, REFERENCE.read_text(encoding="utf-8").splitlines())
    return head["panels_at_stc"], cases


def panel_of(kind: dict[str, Any], bypass_v: float | None) -> hm.StringPanel:
    names = (
        "light_current_a", "saturation_current_a", "series_resistance_ohm",
        "shunt_resistance_ohm", "modified_ideality_v", "alpha_isc_a_per_k",
    )  # fmt: skip
    diode = hm.SingleDiode(**{name: kind[name] for name in names})
    return hm.StringPanel(
        diode,
        substrings=kind["substrings"],
        bypass=bypass_v is not None,
        bypass_v=0.5 if bypass_v is None else bypass_v,
    )


@pytest.fixture(scope="module")
def barn(starter: hm.Catalog) -> hm.Panel:
    return starter.panels["silicon-60-cell-245"]


# Source: tests/reference/mixed_open.jsonl, curves and sums by pvlib and SciPy.
@pytest.mark.parametrize("case", reference()[1], ids=lambda case: str(case["case"]))
def test_an_unlike_array_agrees_with_pvlib(case: dict[str, Any]) -> None:
    kinds, _ = reference()
    strings = [
        [panel_of(kinds[panel["kind"]], panel["bypass_v"]) for panel in string["panels"]]
        for string in case["strings"]
    ]
    panels = [panel for string in case["strings"] for panel in string["panels"]]
    array = hm.Array(strings, blocking_v=[string["blocking_v"] for string in case["strings"]])
    curve = array.at(
        irradiance_w_m2=[panel["irradiance_w_m2"] for panel in panels],
        cell_temperature_c=[panel["cell_temperature_c"] for panel in panels],
        shade=[panel["shade_of_substrings"] for panel in panels],
    )
    point = curve.into_resistance(case["resistance_ohm"])
    assert point.voltage_v == pytest.approx(case["voltage_v"], rel=1e-9)
    assert point.power_w == pytest.approx(case["power_w"], rel=1e-9)
    found = curve.at_voltage(point.voltage_v)
    bypassed = [panel.substrings_bypassed for string in found.strings for panel in string.panels]
    flags = [sum(panel.bypassed) for string in found.strings for panel in string.panels]
    assert bypassed == flags
    assert bypassed == [panel["substrings_bypassed"] for panel in panels]


def test_one_number_is_for_all_panels_and_arrays_give_arrays(barn: hm.Panel) -> None:
    array = hm.Array([[barn, barn], [barn, barn]])
    curve = array.at(irradiance_w_m2=700, cell_temperature_c=[30, 30, 30, 30])
    uniform = hm.Array.uniform(barn, series=2, parallel=2).at(
        irradiance_w_m2=700, cell_temperature_c=30
    )
    ohms = np.array([1.0, 8.0, 40.0])
    np.testing.assert_allclose(
        curve.into_resistance(ohms).power_w, uniform.into_resistance(ohms).power_w, rtol=1e-12
    )
    assert array.parallel == 2
    assert len(array.strings) == 2
    with pytest.raises(AttributeError, match="this array has strings"):
        _ = array.panel
    assert repr(array) == "Array(2 strings, 4 panels)"


def test_bypass_diodes_are_those_of_the_panel_or_assumed_and_said(starter: hm.Catalog) -> None:
    barn = starter.panels["silicon-60-cell-245"]
    stated = hm.StringPanel(barn.replace(bypass_diodes=2))
    assert (stated.substrings, stated.bypass) == (2, True)
    assert not any("bypass_diodes" in text for text in stated.assumed)
    none = hm.StringPanel(barn.replace(bypass_diodes=0))
    assert (none.substrings, none.bypass) == (1, False)
    unstated = hm.StringPanel(barn.replace(bypass_diodes=None))
    assert (unstated.substrings, unstated.bypass) == (3, True)
    assert any("bypass_diodes = 3" in text for text in unstated.assumed)
    thin = hm.StringPanel(starter.panels["cdte-100"].replace(bypass_diodes=None))
    assert (thin.substrings, thin.bypass) == (1, False)


def test_arrays_curves_and_points_pickle(barn: hm.Panel) -> None:
    array = hm.Array([[barn, hm.StringPanel(barn, bypass=False)], [barn]], blocking_v=[None, 0.4])
    curve = array.at(irradiance_w_m2=500, cell_temperature_c=20, shade=[None, [0.2, 0, 0], None])
    for one in (array, pickle.loads(pickle.dumps(array))):
        again = one.at(irradiance_w_m2=500, cell_temperature_c=20, shade=[None, [0.2, 0, 0], None])
        assert again.maximum_power().power_w == curve.maximum_power().power_w
    for one in (curve, pickle.loads(pickle.dumps(curve))):
        point = one.at_voltage(20.0)
        assert pickle.loads(pickle.dumps(point)).total.current_a == point.total.current_a
    uniform = hm.Array.uniform(barn, series=2)
    assert pickle.loads(pickle.dumps(uniform)).series == 2


def test_odd_arrays_and_conditions_are_one_sentence_each(barn: hm.Panel) -> None:
    two = hm.Array([[barn, barn]])

    def refused(make: Any) -> str:
        with pytest.raises(hm.InvalidInput) as caught:
            make()
        return str(caught.value)

    def at(**more: Any) -> Any:
        return lambda: two.at(**{"irradiance_w_m2": 500, "cell_temperature_c": 25} | more)

    assert "strings = none" in refused(lambda: hm.Array([]))
    assert "a list of lists" in refused(lambda: hm.Array([barn, barn]))  # type: ignore[list-item]
    assert "or None, a panel" in refused(at(shade=[0, 0.5]))
    assert "a flat list of 2" in refused(at(irradiance_w_m2=[[500, 500]]))
    assert "string 2: panels = none" in refused(lambda: hm.Array([[barn], []]))
    assert "blocking_v" in refused(lambda: hm.Array([[barn]], blocking_v=[0.5, 0.5]))
    assert "substrings" in refused(lambda: hm.StringPanel(barn, substrings=0))
    assert "irradiance_w_m2 = 3 numbers" in refused(at(irradiance_w_m2=[1, 2, 3]))
    assert "irradiance_w_m2" in refused(at(irradiance_w_m2=[500, -1]))
    assert "cell_temperature_c" in refused(at(cell_temperature_c=[25, math.nan]))
    assert "shade = 1 panels" in refused(at(shade=[[0, 0, 0]]))
    assert "shade = 2 substrings" in refused(at(shade=[[0, 0], None]))
    assert "0 to 1" in refused(at(shade=[[0, 0, 1.5], None]))
    uniform = hm.Array.uniform(barn)
    message = refused(lambda: uniform.at(irradiance_w_m2=[1, 2], cell_temperature_c=25))
    assert "Array([[...]])" in message
    curve = at()()
    assert "voltage_v" in refused(lambda: curve.at_voltage(-1.0))
    assert "resistance_ohm" in refused(lambda: curve.into_resistance(-1.0))
