"""Circuits with arrays of several groups, through Python and the command line."""

from __future__ import annotations

import json
import pickle
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

_CIRCUITS = [
    {
        "name": "crystalline",
        "array": "barn pair x2 + porch four x4",
        "element": "storage-rod-1000-240",
        "bank": "1S2P",
    },
    {
        "name": "thin",
        "group": "thin pair",
        "panels": "1S2P",
        "element": "tubular-1000-120",
        "bank": "1S1P",
    },
]


@pytest.fixture(scope="module")
def house(demo: hm.Installation) -> hm.Installation:
    """The demo with six crystalline panels in one string and the thin pair beside it."""
    return demo.replace({"circuit": None, "circuits": _CIRCUITS})


@pytest.fixture(scope="module")
def circuits(house: hm.Installation) -> list[hm.Candidate]:
    return hm.assess_circuits(hm.Catalog.starter(), house)


def test_a_string_of_unlike_panels_is_assessed_whole(circuits: list[hm.Candidate]) -> None:
    circuit = circuits[0].circuit
    assert not circuit.equal_panels
    assert circuit.strings == [["barn pair"] * 2 + ["porch four"] * 4]
    assert [group.group for group in circuit.groups] == ["barn pair", "porch four"]
    assert circuit.series == 6
    assert circuit.array_layout == _CIRCUITS[0]["array"]
    names = {margin.name for margin in circuits[0].margins}
    assert {"unequal panels", "bypass diodes", "reversed panel", "cold voltage"} <= names
    assert circuits[0].season is not None
    assert circuits[0].season.kwh > 0.0


def test_facts_of_one_panel_are_refused_and_told(circuits: list[hm.Candidate]) -> None:
    for field in ("owned", "panel", "panel_filled", "diode_new", "diode_today", "panels"):
        with pytest.raises(hm.InvalidInput, match=r"read its groups and its strings") as refused:
            getattr(circuits[0].circuit, field)
        assert field in str(refused.value)


def test_the_curve_of_its_array_is_the_solved_one(circuits: list[hm.Candidate]) -> None:
    candidate = circuits[0]
    at = candidate.delivered[0]
    curve = candidate.circuit.array.at(
        irradiance_w_m2=at.irradiance_w_m2, cell_temperature_c=at.cell_temperature_c
    )
    load_ohm = candidate.circuit.bank_ohm + candidate.circuit.wire_ohm
    assert curve.into_resistance(load_ohm).current_a == pytest.approx(at.current_a, rel=1e-9)
    assert at.maximum_power_w <= curve.sum_of_maxima_w


def test_it_survives_a_pickle(circuits: list[hm.Candidate]) -> None:
    again = pickle.loads(pickle.dumps(circuits[0]))
    assert again.circuit.strings == circuits[0].circuit.strings
    assert [str(margin) for margin in again.margins] == [
        str(margin) for margin in circuits[0].margins
    ]


def test_the_json_holds_the_layout(house: hm.Installation) -> None:
    again = hm.Installation.from_dict(house.to_dict())
    assert again.circuits[0].array == _CIRCUITS[0]["array"]
    assert again.circuits[0].group is None
    assert again.to_dict() == house.to_dict()


def test_days_follow_each_plane(demo: hm.Installation) -> None:
    year = hm.Weather.from_installation(demo)
    shares = []
    for azimuth_deg in (None, 270.0):
        house = demo.replace(
            {
                "circuit": {
                    "array": "barn pair x2 | porch four x4",
                    "element": "storage-rod-1000-240",
                    "bank": "1S2P",
                },
                "panels.1.azimuth_deg": azimuth_deg,
            }
        )
        run = hm.simulate_day(hm.assess(hm.Catalog.starter(), house), year, days=3)
        power = np.asarray(run.power_w)
        assert power.max() > 0.0
        hours = np.arange(len(power)) * 24.0 * 3 / len(power) % 24.0
        shares.append(float(power[hours > 14.0].sum() / power.sum()))
    assert shares[1] > shares[0]  # panels that face west heat in the afternoon


def test_meter_sheet_and_wires_take_it(circuits: list[hm.Candidate]) -> None:
    sheet = str(circuits[0].meter_sheet())
    assert "in the order of the array" in sheet
    assert len(circuits[0].check_wires()) == len(circuits[0].circuit.runs)
    steps = [str(step) for step in circuits[0].explain()]
    assert any("open-circuit voltage at the record low, string 1" in step for step in steps)


def test_a_diagnosis_of_it_is_refused_in_one_sentence(circuits: list[hm.Candidate]) -> None:
    with pytest.raises(hm.InvalidInput, match="an array of one group"):
        hm.diagnose(circuits[0], hm.Readings.from_rows([{"bank_v": 40.0, "bank_a": 2.0}]))


@pytest.mark.parametrize(
    ("array", "told"),
    [
        ("barn pair x3 + porch four", "at most the 2 of group"),
        ("barn pair + porch fuor", "porch four"),
        ("[barn pair | barn pair] + porch four", "join strings with"),
        ("", "state array, or group and panels"),
    ],
)
def test_bad_arrays_are_one_sentence(demo: hm.Installation, array: str, told: str) -> None:
    with pytest.raises(hm.Error, match=told):
        hm.assess(
            hm.Catalog.starter(),
            demo.replace(
                {"circuit": {"array": array, "element": "storage-rod-1000-240", "bank": "1S2P"}}
            ),
        )


def test_more_panels_than_owned_over_all_circuits_are_refused(house: hm.Installation) -> None:
    with pytest.raises(hm.InvalidInput, match="crystalline"):
        hm.assess_circuits(
            hm.Catalog.starter(),
            house.replace({"circuits.1.group": "barn pair", "circuits.1.panels": "1S1P"}),
        )


def test_the_command_line_takes_it(
    house: hm.Installation, tmp_path: Path, command: Callable[..., Any]
) -> None:
    path = tmp_path / "house.json"
    path.write_text(house.to_json_text(), encoding="utf-8")
    assert "barn pair x2 + porch four x4" in command("assess", path).out
    data = json.loads(command("assess", path, "--json").out)
    assert "barn pair x2 + porch four x4" in json.dumps(data)
    sheet = command("meter", path, "--circuit", "crystalline").out
    assert "in the order of the array" in " ".join(sheet.split())
