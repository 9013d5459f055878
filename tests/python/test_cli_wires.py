"""The command line's wires."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest


def widest(text: str) -> int:
    return max(len(line) for line in text.splitlines())


def unwrapped(text: str) -> str:
    return "".join(text.split())


@pytest.fixture
def melting(demo_file: Path) -> Path:
    """The demo with a hot tail that the terminal's heat melts."""
    plain = json.loads(demo_file.read_text())
    plain["runs"][2]["wire"] = "thhn-12-awg"
    demo_file.write_text(json.dumps(plain))
    return demo_file


@pytest.mark.parametrize("units", ["si", "us"])
def test_each_run_has_its_temperature_limit_and_reason(
    units: str, command: Callable[..., Any], demo_file: Path, standing: hm.Candidate
) -> None:
    done = command("wires", demo_file, "--units", units)
    assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
    rows = {line[:14].strip(): line for line in done.out.splitlines()}
    for check in standing.check_wires(hm.Catalog.starter()):
        hot = hm.format_quantity(check.conductor_c, "°C", units=units, digits=8).split()[0]
        assert f" {float(hot):.0f} " in rows[check.run]
        assert check.wire in rows[check.run]
        assert rows[check.run].endswith(" " + check.limiting_part)
    assert ("12 AWG" in rows["along the wall"]) == (units == "us")
    assert ("3.31 mm2" in rows["along the wall"]) == (units == "si")
    assert unwrapped(hm.cautions()[-1]) in unwrapped(done.out)


def test_a_wire_that_melts_ends_with_3_and_names_one_that_would_do(
    command: Callable[..., Any], melting: Path
) -> None:
    done = command("wires", melting)
    assert (done.code, done.err, widest(done.out) <= 80) == (3, "", True)
    checks = hm.assess(hm.Catalog.starter(), hm.Installation.from_json(melting)).check_wires(
        hm.Catalog.starter()
    )
    (bad,) = [check for check in checks if check.severity == "danger"]
    assert bad.run == "hot tail"
    assert unwrapped(f"DANGER: hot tail: {bad.sentence}") in unwrapped(done.out)
    assert bad.sufficient_wire is not None
    assert f"suitable: {bad.sufficient_wire.id}, " in done.out
    data = command("wires", melting, "--json")
    assert (data.code, data.err) == (3, "")
    runs = json.loads(data.out, parse_constant=pytest.fail)["runs"]
    assert [run["run"] for run in runs] == [check.run for check in checks]
    assert runs[2]["sufficient_wire"]["id"] == bad.sufficient_wire.id
    assert runs[2]["conductor_c"] == bad.conductor_c
    assert runs[2]["limits"][0]["limit_c"] == bad.limits[0].limit_c


def test_a_row_of_the_ranking_is_checked_instead(
    command: Callable[..., Any], demo_file: Path, demo_ranking: hm.Ranking
) -> None:
    data = json.loads(command("wires", demo_file, "--rank", 2, "--json").out)
    assert data["title"] == demo_ranking[1].circuit.title
    current = demo_ranking[1].check_wires()[0].current_a
    assert data["runs"][0]["current_a"] == current
    narrow = command("wires", demo_file, "--rank", 1, "--max-bank", 1)
    assert " 1S1P" in narrow.out


def test_without_a_circuit_or_such_a_row_the_remedy_is_told(
    command: Callable[..., Any], demo_file: Path
) -> None:
    done = command("wires", demo_file, "--rank", 999_999)
    assert (done.code, done.out) == (1, "")
    kept = len(hm.rank(hm.Catalog.starter(), hm.Installation.from_json(demo_file), top=999_999))
    assert f"--rank 999999: the ranking has {kept} circuits; give 1 to {kept}" in done.err
    plain = json.loads(demo_file.read_text())
    del plain["circuit"]
    demo_file.write_text(json.dumps(plain))
    for name in ("wires", "meter", "day"):
        assert command(name, demo_file).code == 0
    assert command("wires", demo_file, "--rank", 1).code == 0
    del plain["runs"], plain["devices"]
    demo_file.write_text(json.dumps(plain))
    assert "describes no wire. Write its runs" in command("wires", demo_file, "--rank", 1).out
    asked = " ".join(command("wires", "--help").out.split())
    assert 'describe the circuit under "circuit"' in asked


def test_the_list_of_wires_tells_what_their_insulation_stands(
    command: Callable[..., Any], starter: hm.Catalog
) -> None:
    for units in ("si", "us"):
        lines = command("catalog", "list", "wire", "--units", units).out.splitlines()
        assert lines[0].split()[-3:] == ["limit", "price", "label"]
        assert widest("\n".join(lines)) <= 80
        for line, wire in zip(lines[1:], starter.wires.values(), strict=True):
            limit_c = starter.insulations[wire.insulation].limit_c
            assert f" {hm.format_quantity(limit_c, '°C', units=units)} " in line


def test_where_no_wire_is_described_the_runs_to_write_are_shown_and_work(
    command: Callable[..., Any], demo_file: Path
) -> None:
    plain = json.loads(demo_file.read_text())
    plain["runs"], plain["devices"] = [], []
    demo_file.write_text(json.dumps(plain))
    done = command("wires", demo_file)
    assert (done.code, widest(done.out) <= 80) == (0, True)
    shown = done.out[done.out.index('"runs"') : done.out.rindex("]") + 1]
    demo_file.write_text(json.dumps(plain | json.loads("{" + shown + "}")))
    done = command("wires", demo_file, "--rank", "1")
    assert done.code == 0
    assert [line[:8] for line in done.out.splitlines() if line.startswith(("home run ", "hot t"))]
