"""The command line's meter and diagnose."""

from __future__ import annotations

import csv
import io
import json
import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from day_runs import log_rows
from heatmatch.cli import diagnose as cli_diagnose

OPEN = "irradiance_w_m2,panel_temperature_c,bank_v,bank_a\n800,35,67.7,1.15\n600,30,65.5,1.11\n"


def widest(text: str) -> int:
    return max(len(line) for line in text.splitlines())


@pytest.fixture
def readings(tmp_path: Path) -> Path:
    """Readings with one of two elements open."""
    path = tmp_path / "readings.csv"
    path.write_text(OPEN, encoding="utf-8")
    return path


@pytest.fixture
def log(tmp_path: Path, standing: hm.Candidate, demo: hm.Installation) -> Path:
    """The log of two clear days."""
    clear = hm.Weather.clear_days(demo.site)
    run = hm.simulate_day(
        standing, clear, month=4, days=2, warm_up_days=0, air_around_c=10.0, start_c=12.0
    )
    columns = log_rows(run, 12.0)
    path = tmp_path / "log.csv"
    with path.open("w", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(columns)
        writer.writerows(zip(*columns.values(), strict=True))
    return path


@pytest.mark.parametrize(("units", "cells"), [("si", "42"), ("us", "108")])
def test_the_sheet_is_in_the_units_asked_for(
    units: str, cells: str, command: Callable[..., Any], demo_file: Path
) -> None:
    done = command("meter", demo_file, "--units", units)
    assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
    row = next(line for line in done.out.splitlines() if line.startswith("1000 "))
    # Cells at 42.4 °C are at 108.3 °F.
    assert row.split()[1:3] == ["warm", cells]
    assert f"cells in {'°F' if units == 'us' else '°C'}" in done.out
    assert "insulation resistance of the sheath" in done.out


def test_the_sheet_is_plain_data_and_csv(
    command: Callable[..., Any], demo_file: Path, standing: hm.Candidate, tmp_path: Path
) -> None:
    out = tmp_path / "sheet.csv"
    options = ("--sun", 800, 300, "--air", "41 °F", "--csv", out)
    done = command("meter", demo_file, "--json", *options)
    assert (done.code, done.err) == (0, "")
    data = json.loads(done.out, parse_constant=pytest.fail)
    sheet = hm.meter_sheet(standing, irradiance_w_m2=[800.0, 300.0], air_c=5.0)
    assert [row["bank_v"] for row in data["rows"]] == [row.bank_v.typical for row in sheet.rows]
    assert [check["letter"] for check in data["checks"]] == [c.letter for c in sheet.checks]
    rows = list(csv.DictReader(io.StringIO(out.read_text())))
    assert set(rows[0]) == set(sheet.to_frame().columns)
    assert float(rows[1]["bank_a_high"]) == pytest.approx(sheet.rows[1].bank_a.high, rel=1e-8)
    other = command("meter", demo_file, "--rank", 2, "--json")
    assert json.loads(other.out)["title"] != data["title"]


def test_readings_are_diagnosed(
    command: Callable[..., Any], demo_file: Path, readings: Path, standing: hm.Candidate
) -> None:
    diagnosis = hm.diagnose(standing, hm.Readings.from_csv(readings))
    done = command("diagnose", demo_file, readings)
    assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
    assert "element open" in done.out
    assert "".join(diagnosis.verdict.split()) in "".join(done.out.split())
    data = json.loads(command("diagnose", demo_file, readings, "--json").out)["diagnosis"]
    assert data["verdict"] == diagnosis.verdict
    assert [item["kind"] for item in data["ranked"]] == [h.kind for h in diagnosis.ranked]
    assert data["ranked"][0]["kind"] == "element open"


def test_a_log_of_the_store_is_fitted(
    command: Callable[..., Any], demo_file: Path, log: Path, readings: Path, standing: hm.Candidate
) -> None:
    fitted = hm.calibrate(standing, hm.StoreLog.from_csv(log))
    done = command("diagnose", demo_file, "--log", log)
    assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
    for sentence in fitted.sentences:
        assert "".join(sentence.split()) in "".join(done.out.split())
    data = json.loads(command("diagnose", demo_file, readings, "--log", log, "--json").out)
    assert data["calibration"]["k20_w_mk"]["value"] == fitted.k20_w_mk.value
    assert "diagnosis" in data


def test_a_first_fire_is_printed(
    command: Callable[..., Any], demo_file: Path, standing: hm.Candidate
) -> None:
    done = command("diagnose", demo_file, "--first-fire")
    assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
    for sentence in hm.StoreLog.first_fire(standing):
        assert "".join(sentence.split()) in "".join(done.out.split())
    data = json.loads(command("diagnose", demo_file, "--first-fire", "--json").out)
    assert data["first_fire"] == [str(each) for each in hm.StoreLog.first_fire(standing)]


def test_a_fitted_log_is_told_in_the_units_asked_for(
    command: Callable[..., Any], demo_file: Path, log: Path, standing: hm.Candidate
) -> None:
    fitted = hm.calibrate(standing, hm.StoreLog.from_csv(log))
    metric = re.compile(r"\d (?:°C|K|W/mK)(?![\w/])")
    assert metric.search(" ".join(fitted.sentences))
    done = command("diagnose", demo_file, "--log", log, "--units", "us")
    assert (done.code, widest(done.out) <= 80) == (0, True)
    told = done.out.partition("cautions:")[0]
    assert metric.findall(" ".join(told.split())) == []
    assert "°F" in told or "BTU" in told
    data = json.loads(command("diagnose", demo_file, "--log", log, "--units", "us", "--json").out)
    assert metric.findall(" ".join(data["calibration"]["sentences"])) == []
    assert data["calibration"]["k20_w_mk"]["value"] == fitted.k20_w_mk.value
    assert "in SI units.\n" in command("diagnose", "--help").out
    assert "The texts are in SI units" not in command("diagnose", "--help").out


def test_an_empty_table_to_fill_in_is_printed(command: Callable[..., Any]) -> None:
    done = command("diagnose", "--columns")
    assert (done.code, done.err, done.out.count("\n")) == (0, "", 1)
    assert done.out.strip().split(",") == list(cli_diagnose.READINGS)
    # Every column is taken, and the package's own help lists no other.
    numbers = ",".join("1" for _ in cli_diagnose.READINGS)
    assert len(hm.Readings.from_csv(done.out + numbers + "\n")) == 1
    told = " ".join((hm.Readings.from_csv.__doc__ or "").split())
    listed = re.findall(r"``(\w+)`` \[", told.partition("Columns: ")[2].partition(". ")[0])
    assert listed == list(cli_diagnose.READINGS)
    log = command("diagnose", "--columns", "log").out
    assert len(hm.StoreLog.from_csv(log + "0,0,10,10,10,10,10\n1,9,10,10,10,10,10\n")) == 2


def test_the_example_of_the_help_is_understood(command: Callable[..., Any]) -> None:
    text = command("diagnose", "--help").out
    start = text.index("  irradiance_w_m2,")
    rows = "\n".join(line.strip() for line in text[start:].splitlines()[:3])
    assert hm.Readings.from_csv(rows + "\n").rows[1]["panel_temperature_c"] == pytest.approx(30.0)


def test_files_may_come_from_standard_input(
    command: Callable[..., Any], demo_file: Path, readings: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stdin(path: Path) -> None:
        raw = io.BytesIO(b"\xef\xbb\xbf" + path.read_bytes())
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(raw, encoding="ascii"))

    stdin(readings)
    from_stdin = command("diagnose", demo_file, "-", "--json")
    assert from_stdin.out == command("diagnose", demo_file, readings, "--json").out
    stdin(demo_file)
    assert command("meter", "-").out == command("meter", demo_file).out


@pytest.mark.parametrize(
    ("words", "code", "message"),
    [
        ("diagnose {demo}", 2, "READINGS.csv"),
        ("diagnose", 2, "INSTALLATION.json"),
        ("diagnose {demo} none.csv", 1, "none.csv"),
        ("diagnose {demo} .", 1, "folder"),
        ("diagnose {demo} {demo}", 1, "column"),
        ("diagnose {demo} --log none.csv", 1, "none.csv"),
        ("diagnose {demo} --log {readings}", 1, "hours"),
        ("diagnose {demo} {empty}", 1, "measure voltage and current"),
        ("diagnose {demo} {binary}", 1, "binary"),
        ("meter {demo} --sun -3", 1, "irradiance_w_m2"),
        ("meter {demo} --sun bright", 2, "--sun"),
        ("meter {demo} --air 999", 1, "air_c"),
        ("meter {binary}", 1, "binary"),
        ("meter {empty}", 1, "empty"),
    ],
)
def test_what_cannot_be_read_is_one_line(
    words: str,
    code: int,
    message: str,
    command: Callable[..., Any],
    demo_file: Path,
    readings: Path,
    tmp_path: Path,
) -> None:
    empty, binary = tmp_path / "empty.csv", tmp_path / "binary.csv"
    empty.write_text("bank_v,bank_a\n")
    binary.write_bytes(bytes(range(128, 256)))
    paths = {"demo": demo_file, "readings": readings, "empty": empty, "binary": binary}
    done = command(*(word.format(**paths) for word in words.split()))
    assert (done.code, done.out, done.err.count("\n")) == (code, "", 1)
    assert message in done.err
    assert "Traceback" not in done.err


def test_the_sheet_tells_how_to_read_without_a_sun_meter(
    command: Callable[..., Any], demo_file: Path
) -> None:
    done = command("meter", demo_file, "--json")
    sheet = json.loads(done.out)
    told = sheet["without_sun_meter"]
    ratio = next(c for c in sheet["checks"] if c["reading"] == "voltage over current at the bank")
    assert f"{ratio['low']:.3g} ohm to {ratio['high']:.3g} ohm in any sun" in told[1]
    full = next(
        row
        for row in sheet["rows"]
        if (row["irradiance_w_m2"], row["cell_temperature_c"]) == (1000, 25)
    )
    # The array's own current at 1000 W/m2 is its sun meter; two panels in series have that of one.
    assert f"typically {full['short_a']:.3g} A in 1000 W/m2" in told[3]
    assert f"{1000 / full['short_a']:.3g} W/m2" in told[3]
    assert f"{full['short_a']:.3g} A in 1000 W/m2" in told[4]
    assert told[0] in command("meter", demo_file).out


def test_one_reading_by_options_is_diagnosed_in_short(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    done = command("diagnose", demo_file, "--volts", "41 V", "--amps", 2.9)
    assert (done.code, done.err, widest(done.out) <= 80) == (0, "", True)
    assert "V/I at the bank: read 14.1 ohm, described 28.6 ohm" in done.out
    assert "These readings do not distinguish" in done.out.splitlines()[4]
    assert len(done.out.split()) < 300
    table = tmp_path / "one.csv"
    table.write_text("bank_v,bank_a\n41,2.9\n", encoding="utf-8")
    whole = command("diagnose", demo_file, "--volts", 41, "--amps", "2900 mA", "--full").out
    assert whole == command("diagnose", demo_file, table).out


def test_the_short_circuit_current_serves_as_sun_meter(
    command: Callable[..., Any], demo_file: Path
) -> None:
    options = ("--volts", 67.7, "--amps", 2.37, "--isc", 6.7, "--back", "93 °F")
    done = command("diagnose", demo_file, *options)
    assert done.code == 0
    assert "short-circuit current is used instead" in " ".join(done.out.split())


# Source: arithmetic, 41 V / 2.9 A and 41 V x 2.9 A.
def test_without_a_circuit_one_reading_is_resistance_and_power(command: Callable[..., Any]) -> None:
    done = command("diagnose", "--volts", 41, "--amps", 2.9)
    assert done.code == 0
    assert done.out.startswith("41 V at 2.9 A: 14.1 ohm, 119 W.")
    assert command("diagnose", "--volts", 41).code == 2
