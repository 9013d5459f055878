"""Sentences and tables in the unit set of the reader."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
from heatmatch import _library as _core
from heatmatch.text.meter import diagnosis_text, sheet_text
from heatmatch.text.table import cells, heads
from heatmatch.text.units import told


def test_a_sentence_is_in_either_unit_set_and_its_names_in_none(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    # Names as people give them, with what looks like a length or a gauge.
    names = ("feed of 10 m", "4 mm roof")

    def rename(plain: dict[str, Any]) -> None:
        plain["name"] = names[1]
        for run in plain["runs"]:
            for device in plain.get("devices", []):
                if device.get("run") == run["name"]:
                    device["run"] = f"{names[0]}, {run['name']}"
            run["name"] = f"{names[0]}, {run['name']}"

    candidate = hm.assess(starter, changed_demo(rename))
    for margin in candidate.margins:
        reason = _core.margin_reason(margin)
        assert told(reason, "si") == reason
        assert told(reason, "us") == reason.text("us")
        if names[0] in reason:
            assert names[0] in told(reason, "us")
    assert any(names[0] in _core.margin_reason(margin) for margin in candidate.margins)


def test_what_is_no_sentence_stands_as_it_is() -> None:
    for text in ("feed of 10 m", "4 mm", "126 °C at most", ""):
        assert told(text, "us") == told(text, "si") == text


def test_tables_have_their_units_in_the_head(standing: hm.Candidate) -> None:
    # Definition: F = 1.8 C + 32.
    made = _core.sheet_table(hm.meter_sheet(standing))
    si, us = cells(made), cells(made, "us")
    for one, other in zip(si, us, strict=True):
        assert abs(1.8 * float(one[2]) + 32.0 - float(other[2])) <= 1.5
        assert (one[:2], one[3:]) == (other[:2], other[3:])
    assert "°F" in told(made.legend[0], "us")
    assert heads(made) == heads(made, "us")
    assert heads(made)[5:] == ["array V", "bank V", "bank A", "bank W"]


def test_no_metric_degree_is_left_on_a_page_of_us_units(
    command: Callable[..., Any], demo_file: Path, standing: hm.Candidate
) -> None:
    for arguments in (["assess"], ["wires"], ["day", "--month", "1", "--stagnation"], ["meter"]):
        out = command(*arguments[:1], demo_file, *arguments[1:], "--units", "us").out
        assert "°F" in out
        assert re.findall(r"\d °C", out.split("how it was computed")[0]) == []
    assert "°F" in sheet_text(hm.meter_sheet(standing), units="us")
    readings = hm.Readings.from_rows([{"bank_v": 60.0, "bank_a": 4.0}])
    told = diagnosis_text(hm.diagnose(standing, readings), units="us")
    assert re.findall(r"\d °C", told) == []
