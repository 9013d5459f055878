"""Several circuits in one store, through Python and the command line."""

from __future__ import annotations

import json
import pickle
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest

_ROD = {"element": "storage-rod-1000-240", "bank": "1S1P"}
_CIRCUITS = (
    {"name": "barn", "group": "barn pair", "panels": "2S1P", **_ROD},
    {"name": "porch", "group": "porch four", "panels": "2S1P", **_ROD},
)


@pytest.fixture(scope="module")
def house(demo: hm.Installation) -> hm.Installation:
    """The demo with two circuits."""
    return demo.replace({"circuit": None, "circuits": list(_CIRCUITS)})


@pytest.fixture(scope="module")
def circuits(house: hm.Installation) -> list[hm.Candidate]:
    """Both, assessed together."""
    return hm.assess_circuits(hm.Catalog.starter(), house)


@pytest.fixture
def house_file(house: hm.Installation, tmp_path: Path) -> Path:
    """The installation as a file."""
    path = tmp_path / "house.json"
    path.write_text(house.to_json_text(), encoding="utf-8")
    return path


def test_circuits_are_candidates_with_their_names(circuits: list[hm.Candidate]) -> None:
    assert [each.circuit.name for each in circuits] == ["barn", "porch"]
    assert all("all 2 circuits" in " ".join(each.remarks) for each in circuits)


def test_circuits_of_an_installation_are_records(house: hm.Installation) -> None:
    assert [each.name for each in house.circuits] == ["barn", "porch"]
    assert house.circuit is None
    again = hm.Installation.from_dict(house.to_dict())
    assert again.circuits == house.circuits
    changed = house.replace({"circuits.1.bank": "2S1P"})
    assert changed.circuits[1].bank == "2S1P"
    assert hm.ExistingCircuit(**_CIRCUITS[0]) == house.circuits[0]


def test_a_shared_store_survives_a_pickle(circuits: list[hm.Candidate]) -> None:
    heat = circuits[0].circuit.heat
    again = pickle.loads(pickle.dumps(circuits[0])).circuit.heat
    assert heat is not None
    assert again is not None
    assert again.at(100.0).sheath_c == pytest.approx(heat.at(100.0).sheath_c, rel=1e-12)


def test_days_of_both_share_the_bed(circuits: list[hm.Candidate], house: hm.Installation) -> None:
    year = hm.Weather.from_installation(house)
    barn, porch = hm.simulate_circuits(circuits, year, month=1, days=1)
    assert list(barn.bed_mean_c) == list(porch.bed_mean_c)
    assert barn.energy.delivered_kwh > porch.energy.delivered_kwh > 0
    assert "2 circuits heat this store" in " ".join(barn.remarks)
    with pytest.raises(hm.InvalidInput, match="shared by 2 circuits"):
        hm.simulate_day(circuits[0], year, month=1, days=1)


def test_one_circuit_is_asked_for_where_one_is_meant(house: hm.Installation) -> None:
    with pytest.raises(hm.InvalidInput, match="assess_circuits"):
        hm.assess(hm.Catalog.starter(), house)


def test_assess_prints_a_table_and_every_circuit(
    command: Callable[..., Any], house_file: Path
) -> None:
    text = command("assess", house_file).out
    assert '\ncircuit "barn":\n' in text
    assert '\ncircuit "porch":\n' in text
    assert "\nall " in text
    one = command("assess", house_file, "--circuit", "porch").out
    assert "barn pair" not in one
    data = json.loads(command("assess", house_file, "--json").out)
    assert [each["circuit"] for each in data["circuits"]] == ["barn", "porch"]


def test_day_prints_every_circuit_or_one(command: Callable[..., Any], house_file: Path) -> None:
    days = ("--month", "Jan", "--days", "1", "--quiet")
    text = command("day", house_file, *days, "--full").out
    assert "Balance of all 2 circuits" in text
    assert "increase of stored heat (all)" in text
    assert '\ncircuit "porch":\n' in text
    data = json.loads(command("day", house_file, *days, "--json").out)
    assert len(data["circuits"]) == 2
    one = json.loads(command("day", house_file, *days, "--circuit", "barn", "--json").out)
    assert "energy" in one


@pytest.mark.parametrize("name", ["wires", "meter"])
def test_other_commands_show_every_circuit_or_one(
    command: Callable[..., Any], house_file: Path, name: str
) -> None:
    text = command(name, house_file).out
    assert '\ncircuit "barn":\n' in text
    assert '\ncircuit "porch":\n' in text
    one = command(name, house_file, "--circuit", "porch").out
    assert "circuit " + '"barn"' not in one
    data = json.loads(command(name, house_file, "--json").out)
    assert [each["circuit"] for each in data["circuits"]] == ["barn", "porch"]
    assert "circuits" not in json.loads(
        command(name, house_file, "--circuit", "porch", "--json").out
    )


def test_a_file_of_sheets_names_the_circuit(
    command: Callable[..., Any], house_file: Path, tmp_path: Path
) -> None:
    sheet = tmp_path / "sheet.csv"
    assert command("meter", house_file, "--csv", sheet).code == 0
    lines = sheet.read_text(encoding="utf-8").splitlines()
    assert lines[0].startswith("circuit,")
    assert {line.split(",")[0] for line in lines[1:]} == {"barn", "porch"}


def test_a_report_has_all_circuits_or_the_one_that_is_named(
    command: Callable[..., Any], house_file: Path, tmp_path: Path
) -> None:
    pytest.importorskip("jinja2")
    page = tmp_path / "report.html"
    assert command("report", house_file, "-o", page).code in (0, 3)
    text = page.read_text(encoding="utf-8")
    for name in ("barn", "porch"):
        assert f'<h3 dir="auto">{name}</h3>' in text
    assert command("report", house_file, "-o", page, "--force", "--circuit", "barn").code in (0, 3)
    assert '<h3 dir="auto">porch</h3>' not in page.read_text(encoding="utf-8")
    asked = command("report", house_file, "-o", page, "--force", "--circuit", "none")
    assert asked.code == 1
    assert '"barn", "porch"' in asked.err
