"""The command line's day."""

from __future__ import annotations

import argparse
import csv
import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import cli
from heatmatch.cli import shared as cli_shared

DAYS = ("--month", "Jan", "--days", "2")


@pytest.fixture(scope="module")
def lived(standing: hm.Candidate, demo: hm.Installation) -> hm.DayRun:
    """The same days through Python."""
    weather = hm.Weather.from_installation(demo)
    return hm.simulate_day(standing, weather, month=1, days=2)


METRIC = re.compile(r"\d (?:°C|K|mm2?|m|W/mK)(?![\w/])")


def test_sentences_of_plain_data_are_in_the_units_asked_for(
    command: Callable[..., Any], demo_file: Path
) -> None:
    for options in (
        ("assess",),
        ("rank", "--top", 2),
        ("wires",),
        ("meter",),
        ("day", *DAYS, "--stagnation"),
    ):
        name, *others = options
        si, us = (
            command(name, demo_file, *others, "--json", "--units", units).out
            for units in ("si", "us")
        )
        assert METRIC.search(si)
        data = json.loads(us)
        told = json.dumps(_texts(data), ensure_ascii=False)
        # A name is unchanged.
        assert METRIC.findall(told.replace("PV latching plug, 4 mm", "")) == []
        assert "°F" in told
        assert _numbers(data) == _numbers(json.loads(si))


def test_remarks_of_a_ranking_are_in_the_units_asked_for(
    command: Callable[..., Any], demo_file: Path
) -> None:
    plain = json.loads(demo_file.read_text())
    del plain["weather"]  # then the conditions that decide the order are printed
    demo_file.write_text(json.dumps(plain))
    data = json.loads(command("rank", demo_file, "--json", "--units", "us").out)
    # By definition of the scales: 45 °C are 113 °F.
    assert any("1000 W/m2 at 113 °F cells" in remark for remark in data["remarks"])
    assert not any("°C" in remark for remark in data["remarks"])


def _texts(data: Any) -> Any:
    """The sentences of plain data, without the units, letters and names of its fields."""
    if isinstance(data, dict):
        told = {"sentence", "sentences", "assumed", "remarks", "advice", "if_low", "if_high", "how"}
        return [_texts(v) if not isinstance(v, str) or k in told else "" for k, v in data.items()]
    return [_texts(item) for item in data] if isinstance(data, list) else data


def _numbers(data: Any) -> Any:
    if isinstance(data, (dict, list)):
        values = data.values() if isinstance(data, dict) else data
        return [_numbers(value) for value in values]
    return data if isinstance(data, (int, float)) else None


@pytest.mark.parametrize("units", ["si", "us"])
def test_days_are_told_in_80_columns(
    units: str, command: Callable[..., Any], demo_file: Path, lived: hm.DayRun
) -> None:
    done = command("day", demo_file, *DAYS, "--full", "--units", units)
    assert (done.code, done.err) == (0, "")
    assert max(len(line) for line in done.out.splitlines()) <= 80
    for sentence in lived.sentences(units=units):
        assert "".join(sentence.split()) in "".join(done.out.split())
    assert ("most, °F" in done.out) == (units == "us")
    assert "cautions:" in done.out


# A whole season takes long: it is run in one unit set.
@pytest.mark.parametrize(
    ("days", "units"), [(("--month", 1, "--days", 7), "si"), (DAYS, "us"), ((), "si")]
)
def test_a_run_is_told_in_250_words_with_what_is_nearest_to_its_limit(
    days: tuple[object, ...], units: str, command: Callable[..., Any], demo_file: Path
) -> None:
    done = command("day", demo_file, *days, "--units", units, "--quiet")
    assert len(done.out.split()) <= 250
    assert max(len(line) for line in done.out.splitlines()) <= 80
    data = json.loads(command("day", demo_file, *days, "--units", units, "--json").out)
    told = "".join(done.out.split())
    for sentence in data["sentences"]:
        assert "".join(sentence.split()) in told
    known = [peak["headroom"] for peak in data["peaks"] if peak["headroom"] is not None]
    assert f"{min(known):.2f}" in done.out
    assert "--full lists" in " ".join(done.out.split())
    assert "can kill" in done.out


def test_plain_data_is_that_of_the_run(
    command: Callable[..., Any], demo_file: Path, lived: hm.DayRun
) -> None:
    done = command("day", demo_file, *DAYS, "--json", "--stagnation")
    assert (done.code, done.err) == (0, "")
    data = json.loads(done.out, parse_constant=pytest.fail)
    assert data["energy"]["delivered_kwh"] == lived.energy.delivered_kwh
    assert data["sentences"] == lived.sentences()
    assert [peak["value"] for peak in data["peaks"]] == [p.margin.value for p in lived.answer.peaks]
    assert data["all"]["dark_hours"] == lived.answer.all.dark_hours
    assert data["stagnation"]["sentences"][0].startswith("In stagnation the sheath reaches")


def test_stagnation_follows_in_the_units_asked_for(
    command: Callable[..., Any], demo_file: Path, standing: hm.Candidate
) -> None:
    done = command("day", demo_file, *DAYS, "--stagnation", "--units", "us")
    text = done.out.partition("welded closed:")[2]
    hottest = hm.simulate_stagnation(standing).run.sheath_c.max()
    row = next(line for line in text.splitlines() if line.startswith("sheath "))
    assert row.split()[1] == f"{hottest * 1.8 + 32.0:.0f}"


def test_steps_are_written_as_csv(
    command: Callable[..., Any], demo_file: Path, lived: hm.DayRun, tmp_path: Path
) -> None:
    out = tmp_path / "steps.csv"
    done = command("day", demo_file, *DAYS, "--csv", out)
    assert done.out.endswith(f"\nwrote {out}\n")
    with out.open(newline="") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == len(lived)
    for name in ("hours", "sheath_c", "power_w"):
        column = np.array([float(row[name]) for row in rows])
        np.testing.assert_allclose(column, getattr(lived, name), rtol=1e-8, atol=1e-12)
    assert list(rows[0]) == list(lived.to_frame().columns)
    assert command("day", demo_file, *DAYS, "--csv", out).code == 1
    assert command("day", demo_file, *DAYS, "--csv", out, "--force").code == 0


def test_options_reach_the_run(
    command: Callable[..., Any], demo_file: Path, standing: hm.Candidate, demo: hm.Installation
) -> None:
    words = "--switches|thermostat welded|--conductivity|low|--start|104 °F|--extraction|8"
    words += "|--extraction-from|18|--extraction-until|23|--air-shift|-9 °F"
    done = command("day", demo_file, *DAYS, "--json", *words.split("|"))
    run = hm.simulate_day(
        standing,
        hm.Weather.from_installation(demo),
        month=1,
        days=2,
        switches="thermostat welded",
        conductivity="low",
        start_c=40.0,
        extraction_w_k=8.0,
        extraction_from_hour=18.0,
        extraction_until_hour=23.0,
        air_shift_k=-5.0,
    )
    data = json.loads(done.out)
    assert data["energy"]["to_space_kwh"] == pytest.approx(run.energy.to_space_kwh, rel=1e-9)
    assert "7.78 K colder" in command("day", demo_file, *DAYS, "--full", "--air-shift=-14 °F").out


def test_temperatures_may_carry_a_unit() -> None:
    # By definition of the scales: water boils at 212 °F = 100 °C, and 9 °F are 5 K.
    assert cli_shared.temperature_c("212 °F") == pytest.approx(100.0)
    assert cli_shared.temperature_c("100 C") == cli_shared.temperature_c("100") == 100.0
    assert cli_shared.difference_k("-9F") == pytest.approx(-5.0)
    assert cli_shared.difference_k("-8 K") == cli_shared.difference_k("-8 °C") == -8.0
    assert (cli_shared.month("12"), cli_shared.month("january"), cli_shared.month("MAY")) == (
        12,
        1,
        5,
    )
    assert [cli_shared.month(name) for name in ("Jun", "JUNE", "sep", "May")] == [6, 6, 9, 5]
    for parse, text in (
        (cli_shared.month, "Junk"),
        (cli_shared.month, "Ju"),
        (cli_shared.month, "Marchs"),
        (cli_shared.month, "Sept"),
        (cli_shared.temperature_c, "300 K"),
        (cli_shared.temperature_c, "warm"),
        (cli_shared.difference_k, "8 K lower"),
        (cli_shared.month, "13"),
        (cli_shared.month, "Foo"),
        (cli_shared.positive, "1.5"),
        (cli_shared.positive, "1" + 40 * "0"),
    ):
        with pytest.raises(argparse.ArgumentTypeError, match="must be"):
            parse(text)


def test_a_temperature_below_zero_is_no_option(command: Callable[..., Any]) -> None:
    parser = cli.make_parser()
    for text, value in (
        ("-5°C", -5.0),
        ("-5 °C", -5.0),
        ("-5", -5.0),
        ("-.5C", -0.5),
        ("-40F", -40.0),
        ("-4.0°f", -20.0),
    ):
        parsed = parser.parse_args(["day", "mine.json", "--start", text])
        assert parsed.start_c == pytest.approx(value)
    for text, value in (("-8K", -8.0), ("-8 K", -8.0), ("-9°F", -5.0)):
        parsed = parser.parse_args(["day", "mine.json", "--air-shift", text])
        assert parsed.air_shift_k == pytest.approx(value)
    assert parser.parse_args(["meter", "mine.json", "--air", "-5°C"]).air == -5.0
    done = command("day", "mine.json", "--start", "-Q")
    assert (done.code, "expected one argument" in done.err) == (2, True)


@pytest.mark.parametrize(
    ("options", "code", "words"),
    [
        ("--month 13", 2, "1 to 12"),
        ("--days 0", 2, "must be 1 or more"),
        ("--days 99999", 1, "days = 99999"),
        ("--start 5000", 1, "start_c"),
        ("--extraction nan", 1, "extraction"),
        ("--switches broken", 2, "breaker welded"),
        ("--weather none.epw", 1, "none.epw"),
        ("--weather .", 1, "EPW, TMY3 or PVGIS"),
    ],
)
def test_what_cannot_be_lived_is_one_line(
    options: str, code: int, words: str, command: Callable[..., Any], demo_file: Path
) -> None:
    done = command("day", demo_file, *options.split())
    assert (done.code, done.out, done.err.count("\n")) == (code, "", 1)
    assert words in done.err


def test_a_part_that_gets_too_hot_ends_with_3(command: Callable[..., Any], demo_file: Path) -> None:
    plain = json.loads(demo_file.read_text())
    plain["runs"][2]["wire"] = "thhn-12-awg"
    demo_file.write_text(json.dumps(plain))
    done = command("day", demo_file, *DAYS)
    assert (done.code, done.err) == (3, "")
    assert " danger " in done.out


def test_without_weather_or_store_the_remedy_is_told(
    command: Callable[..., Any], demo_file: Path
) -> None:
    plain = json.loads(demo_file.read_text())
    for name, words in (("weather", "twelve monthly means"), ("store", "store")):
        demo_file.write_text(json.dumps({k: v for k, v in plain.items() if k != name}))
        done = command("day", demo_file, *DAYS)
        assert (done.code, done.out, done.err.count("\n")) == (1, "", 1)
        assert words in done.err
