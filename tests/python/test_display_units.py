"""Sentences of SI units in US units: temperatures, differences, lengths, areas; nothing else."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch.display_meter import diagnosis_text, sheet_text
from heatmatch.display_units import in_units

# Definitions: 1 in = 25.4 mm, 1 ft = 304.8 mm, F = 1.8 C + 32; ASTM B258: 12 AWG is 3.31 mm2.
SENTENCES = [
    ("126 °C at most, 14.5 K above", "259 °F at most, 26.1 °F above"),
    ("Sheath -40 °C to 177 °C.", "Sheath -40 °F to 351 °F."),
    ("9 m of 3.31 mm2, 25.4 mm thick", "29.5 ft of 12 AWG, 1 in thick"),
    ("9 m/s, 3 m2, 5 mV, 20 Mohm, 2 W/m", "9 m/s, 3 m2, 5 mV, 20 Mohm, 2 W/m"),
    ("10 to 25 K over boiling, -60 to 80 °C", "18 to 45 °F over boiling, -76 to 176 °F"),
    ("20-30 °C, 0.3-0.5 m, \u22125 °C", "68-86 °F, 0.984-1.64 ft, 23 °F"),
    ("1,200 mm, 1e+03 m, 1.38e-07 K", "1,200 mm, 3281 ft, 2.48e-07 °F"),
    ("about 1549 mm (61 in) each", "about 61 in each"),
    ("1000 W/m2 and 2.3 A, v1.2 m3", "1000 W/m2 and 2.3 A, v1.2 m3"),
]


@pytest.mark.parametrize(("si", "us"), SENTENCES)
def test_quantities_are_converted_and_nothing_else(si: str, us: str) -> None:
    assert in_units(si, "us") == us
    assert in_units(us, "us") == us
    assert in_units(si, "si") == si


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
