"""Meter sheets, readings and diagnoses from Python."""

from __future__ import annotations

import math
import pickle
import re
from typing import Any

import heatmatch as hm
import heatmatch.plot
import matplotlib.pyplot as plt
import pandas as pd
import pytest
from heatmatch import _library as _core
from heatmatch.text.sentence import Sentence


@pytest.fixture(scope="module")
def standing() -> hm.Candidate:
    """The demo's circuit: two rods of 1000 W at 240 V in parallel."""
    return hm.assess(hm.Catalog.starter(), hm.demo())


@pytest.fixture(scope="module")
def sheet(standing: hm.Candidate) -> hm.MeterSheet:
    """Its sheet."""
    return hm.meter_sheet(standing)


def check_of(sheet: hm.MeterSheet, reading: str) -> hm.MeterCheck:
    """The check of that name."""
    return next(check for check in sheet.checks if check.reading == reading)


def test_ohms_are_volts_squared_over_watts_with_their_tolerance(sheet: hm.MeterSheet) -> None:
    # 240 V, 1000 W: 57.6 ohm hot; +5/-10 % of watts (tubular-catalogue-tolerance).
    one = check_of(sheet, "resistance of one element, cold")
    assert one.unit == "ohm"
    assert one.low is not None
    assert one.typical is not None
    assert one.high is not None
    assert one.low < 240.0**2 / 1000.0 < one.high
    bank = check_of(sheet, "resistance of the bank, cold")
    assert bank.typical == pytest.approx(one.typical / 2.0)


def test_open_volts_are_those_of_the_measured_panels(sheet: hm.MeterSheet) -> None:
    full = next(row for row in sheet.rows if row.cell_temperature_c == 25.0)
    assert full.irradiance_w_m2 == 1000.0
    check = check_of(sheet, "open-circuit voltage of the array")
    assert check.typical == pytest.approx(full.open_v.typical, rel=1e-3)
    assert full.bank_w.typical == pytest.approx(full.bank_v.typical * full.bank_a.typical)
    assert full.bank_a.low < full.bank_a.typical < full.bank_a.high


def test_the_sheet_is_a_frame_a_text_and_a_page(sheet: hm.MeterSheet) -> None:
    frame = sheet.to_frame()
    assert len(frame) == 12
    assert {"open_v", "open_v_low", "bank_w_high", "cell_temperature_c"} <= set(frame.columns)
    assert frame["bank_a"].iloc[0] == sheet.rows[0].bank_a.typical
    text = str(sheet)
    assert max(map(len, text.splitlines())) <= 80
    assert "insulation resistance of the sheath" in text
    page = sheet._repr_html_()
    assert "<script" not in page
    assert "Mohm" in page


def test_suns_and_units_may_be_chosen(standing: hm.Candidate) -> None:
    dim = hm.meter_sheet(standing, irradiance_w_m2=[300.0], air_c=-5.0, units="us")
    assert [row.irradiance_w_m2 for row in dim.rows] == [300.0, 300.0]
    assert any("°F" in check.expect.text("us") for check in dim.checks)
    assert not any("°F" in check.expect for check in dim.checks)
    assert standing.meter_sheet(irradiance_w_m2=[300.0]).title == dim.title
    with pytest.raises(hm.InvalidInput, match="irradiance_w_m2"):
        hm.meter_sheet(standing, irradiance_w_m2=[-1.0])
    with pytest.raises(hm.InvalidInput, match="units"):
        hm.meter_sheet(standing, units="imperial")


def healthy_rows(sheet: hm.MeterSheet) -> list[dict[str, Any]]:
    """Readings as the sheet expects them, of warm panels at three suns."""
    return [
        {
            "irradiance_w_m2": row.irradiance_w_m2,
            "panel_temperature_c": row.cell_temperature_c - 2.0,
            "bank_v": row.bank_v.typical,
            "bank_a": row.bank_a.typical,
        }
        for row in sheet.rows[:6:2]
    ]


def test_what_the_sheet_expects_is_as_expected(
    standing: hm.Candidate, sheet: hm.MeterSheet
) -> None:
    found = hm.diagnose(standing, hm.Readings.from_rows(healthy_rows(sheet)))
    assert found.ranked[0].kind == "as expected"
    assert not found.unexplained


def test_one_open_element_is_named_first(standing: hm.Candidate, sheet: hm.MeterSheet) -> None:
    # Half the current at nearly the open volts: Ohm's law with one rod of two.
    rows = []
    for row in sheet.rows[:3]:
        ohm = 2.0 * row.bank_v.typical / row.bank_a.typical
        volts = 0.5 * (row.bank_v.typical + row.open_v.typical)
        rows.append(
            {
                "irradiance_w_m2": row.irradiance_w_m2,
                "panel_temperature_c": row.cell_temperature_c - 2.0,
                "bank_v": volts,
                "bank_a": volts / ohm,
            }
        )
    found = hm.diagnose(standing, hm.Readings.from_rows(rows))
    assert found.ranked[0].kind == "element open"
    assert "open" in found.verdict
    assert found.ranked[0].evidence
    assert max(map(len, str(found).splitlines())) <= 80
    assert "element open" in found._repr_html_()


def test_what_cannot_be_told_apart_is_said(standing: hm.Candidate) -> None:
    rows = [{"bank_v": 40.0, "bank_a": 1.4}]
    found = hm.diagnose(standing, hm.Readings.from_rows(rows))
    assert found.indistinguishable
    assert found.group > 1
    assert found.next
    assert "would read alike" in found.verdict


def test_other_ohms_are_named_by_the_catalog(
    standing: hm.Candidate, sheet: hm.MeterSheet, starter: hm.Catalog
) -> None:
    # Three times the described resistance, also at one element by the ohmmeter.
    rows = []
    for row in sheet.rows[:3]:
        ohm = 3.0 * row.bank_v.typical / row.bank_a.typical
        volts = 0.95 * row.open_v.typical
        rows.append({"bank_v": volts, "bank_a": volts / ohm})
    each = 3.0 * 2.0 * sheet.rows[0].bank_v.typical / sheet.rows[0].bank_a.typical
    rows[0]["element_ohm"] = each
    readings = hm.Readings.from_rows(rows)
    found = hm.diagnose(standing, readings, catalog=starter)
    assert found.ranked[0].kind == "another element"
    assert "catalog" in found.ranked[0].sentence
    assert re.search(r"ratio 3(\.00)?\.", found.bank_ohms)
    assert found.bank_ohms in [*_core.diagnosis_sentences(found)]
    assert "catalog" not in hm.diagnose(standing, readings).ranked[0].sentence
    assert not hm.diagnose(standing, hm.Readings.from_rows([{"open_v": 60.0}])).bank_ohms


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ([{"bank_v": 66000.0, "bank_a": 2.3, "irradiance_w_m2": 900.0}], "mV"),
        ([{"bank_v": 66.0, "bank_a": 2300.0, "irradiance_w_m2": 900.0}], "mA"),
        ([{"bank_volts": 66.0}], "bank_v"),
        ([], "at least one"),
        (
            [
                {"unix_time_s": 2e9, "bank_v": 60.0, "bank_a": 2.1},
                {"unix_time_s": 1e9, "bank_v": 60.0, "bank_a": 2.1},
            ],
            "unix_time_s",
        ),
    ],
)
def test_readings_that_cannot_be_meant_are_refused(
    standing: hm.Candidate, rows: list[dict[str, Any]], words: str
) -> None:
    with pytest.raises(hm.InvalidInput, match=words):
        hm.diagnose(standing, hm.Readings.from_rows(rows))


# Source: date -u -d "2026-01-05 10:00" +%s.
def test_frames_with_times_become_readings() -> None:
    index = pd.date_range("2026-01-05 10:00", periods=3, freq="h", tz="UTC")
    frame = pd.DataFrame({"bank_v": [60.0, math.nan, 50.0], "bank_a": [2.1, 2.0, 1.7]}, index)
    readings = hm.Readings.from_frame(frame)
    assert len(readings) == 3
    assert readings.rows[0]["unix_time_s"] == 1767607200.0
    assert "bank_v" not in readings.rows[1]
    with pytest.raises(hm.InvalidInput, match="time zone"):
        hm.Readings.from_frame(frame.tz_localize(None))
    with pytest.raises(hm.InvalidInput, match="DataFrame"):
        hm.Readings.from_frame([1, 2])  # type: ignore[arg-type]


def test_sheets_readings_and_diagnoses_pickle(standing: hm.Candidate, sheet: hm.MeterSheet) -> None:
    again = pickle.loads(pickle.dumps(sheet))
    assert str(again) == str(sheet)
    assert [check.expect for check in again.checks] == [check.expect for check in sheet.checks]
    assert again.remarks == sheet.remarks
    readings = hm.Readings.from_rows(healthy_rows(sheet))
    assert pickle.loads(pickle.dumps(readings)).rows == readings.rows
    found = hm.diagnose(standing, readings)
    assert str(pickle.loads(pickle.dumps(found))) == str(found)
    # The ohms of an open bank are infinite.
    opened = hm.diagnose(standing, hm.Readings.from_rows([{"bank_ohm": math.inf}]))
    back = pickle.loads(pickle.dumps(opened))
    assert [item.evidence for item in back.ranked] == [item.evidence for item in opened.ranked]


def test_a_sheet_and_a_diagnosis_speak_either_unit_set(
    standing: hm.Candidate, sheet: hm.MeterSheet
) -> None:
    found = hm.diagnose(standing, hm.Readings.from_rows(healthy_rows(sheet)))
    told = [found.verdict, *found.remarks, *sheet.remarks, *sheet.missing, sheet.title]
    for check in sheet.checks:
        told += [check.reading, check.how, check.expect, check.if_low, check.if_high]
    for item in found.ranked:
        told += [item.sentence, *item.evidence, *(number.name for number in item.fitted)]
    for measure in found.next:
        told += [measure.reading, measure.how, measure.predictions]
    assert all(isinstance(text, Sentence) for text in told)
    assert "base.verbatim" not in {text.id for text in told}
    assert any(re.search(r"\d °C", text) for text in told)
    metric = [text for text in told if re.search(r"\d (°C|K|W/mK)(?![\w/])", text.text("us"))]
    assert metric == []


def test_expected_and_read_points_are_drawn(sheet: hm.MeterSheet) -> None:
    ax = hm.plot.meter_points(sheet, hm.Readings.from_rows(healthy_rows(sheet)), label="today")
    names = [text.get_text() for text in ax.get_legend().get_texts()]
    assert "today" in names
    assert sum("ohm" in name for name in names) == 2
    assert ax.get_xlabel().endswith("[V]")
    plt.close(ax.figure)
