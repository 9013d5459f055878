"""The command line's meter and diagnose: what meters should read, and what odd readings mean."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.circuits import (
    chosen_candidate,
    circuits_and_shown,
    of_circuits,
    say_circuit,
)
from heatmatch.cli.meter_data import calibration_json, diagnosis_json, row_values, sheet_json
from heatmatch.cli.output import (
    bar,
    check_new_file,
    print_json,
    read_text,
    say,
    write_csv,
)
from heatmatch.cli.shared import (
    add_command,
    add_installation,
    add_options,
    open_catalog,
    read_installation,
    read_weather,
    say_cautions,
    say_name,
    shows_progress,
    temperature_c,
    texts_in,
)
from heatmatch.text.day import calibration_text
from heatmatch.text.meter import diagnosis_text, sheet_text
from heatmatch.text.results import wrap
from heatmatch.text.table import wrapped

METER_HELP = """\
Input: an installation. Prints a sheet to take along. It gives the voltage,
current and power expected by irradiance, with warm panels and with panels just
uncovered. It lists what to measure, how, and what a lower or higher reading
means.
"""
METER_EXAMPLES = (
    "meter demo.json --units us",
    "meter demo.json --sun 800 300 --air 5",
    "meter demo.json --rank 1 --csv sheet.csv",
)
READINGS = {
    "unix_time_s": "seconds since 1970, UTC",
    "irradiance_w_m2": "irradiance in the plane of the panels",
    "panel_temperature_c": "back of a panel",
    "array_v": "voltage at the array while it heats",
    "bank_v": "voltage at the bank",
    "bank_a": "current of the bank",
    "open_v": "voltage of the array, disconnected",
    "short_a": "current of the array, shorted",
    "element_ohm": "one element, cold, disconnected",
    "bank_ohm": "the bank, cold, disconnected",
    "sheath_c": "hottest sheath",
    "store_c": "bulk of the store",
    "air_c": "air outdoors",
}
LOG = ("hours", "power_w", "air_c", "wall_c", "lid_c", "sheath_c", "bed_c@0.12,0.40")
DIAGNOSE_HELP = f"""\
Input: an installation and readings, one row per moment. Prints the faults that
would explain them, ranked; those that cannot be distinguished; and what to
measure next. Any of these columns can be used, in any order; bank_v and bank_a
of one moment are the most useful:

{chr(10).join(f"  {name:20s} {text}" for name, text in READINGS.items())}

A cell may have a unit ("95 °F"). An empty cell was not measured, nan is a
failed meter, OL is an open circuit. For example:

  irradiance_w_m2,panel_temperature_c,bank_v,bank_a
  800,35,67.5,2.31
  600,86 °F,68.0,2.35

A log of the store (--log) has hours, power_w, air_c and one column per probe.
power_w is the mean into the bank since the row before; air_c is around the
store. Probes are wall_c, lid_c, sheath_c, or "bed_c@0.12,0.40" (meters from
the middle and above the floor). A first heating with a thermocouple on the
sheath gives such a log. --first-fire prints what to log and when to stop.

Sentences are in --units; numbers of --json stay in SI units.
"""
DIAGNOSE_EXAMPLES = (
    "diagnose --columns > readings.csv",
    "diagnose demo.json readings.csv",
    "diagnose demo.json --log store.csv",
    "diagnose demo.json --first-fire",
)


def _candidate(
    arguments: argparse.Namespace, installation: _core.Installation, catalog: _core.Catalog
) -> _core.Candidate:
    return chosen_candidate(arguments, catalog, installation, read_weather(arguments, installation))


def _write_sheets(
    arguments: argparse.Namespace, shown: list[_core.Candidate], sheets: list[_core.MeterSheet]
) -> None:
    """Rows of all sheets; those of several circuits begin with its name."""
    rows = []
    for candidate, sheet in zip(shown, sheets, strict=True):
        name: dict[str, Any] = {"circuit": candidate.circuit.name} if len(sheets) > 1 else {}
        rows += [name | row_values(row) for row in sheet.rows]
    header = list(rows[0]) if rows else []
    cells = (list(row.values()) for row in rows)
    write_csv(arguments.csv, header, cells, force=arguments.force)


def run_meter(arguments: argparse.Namespace) -> int:
    """Print expected meter readings of a circuit, or of all circuits."""
    check_new_file(arguments.csv, arguments)
    installation = read_installation(arguments)
    year = read_weather(arguments, installation)
    catalog = open_catalog(arguments.catalog)
    circuits, places = circuits_and_shown(arguments, catalog, installation, year)
    shown = [circuits[place] for place in places]
    options = {"irradiance_w_m2": arguments.sun, "air_c": arguments.air}
    given = {name: value for name, value in options.items() if value is not None}
    sheets = [_core.meter_sheet(candidate, **given) for candidate in shown]
    if arguments.csv is not None:
        _write_sheets(arguments, shown, sheets)
    if arguments.json:
        data = [sheet_json(sheet, arguments.units) for sheet in sheets]
        print_json(of_circuits(shown, data))
        return 0
    say_name(arguments, installation)
    for candidate, sheet in zip(shown, sheets, strict=True):
        say_circuit(candidate, len(shown))
        say(sheet_text(sheet, units=arguments.units))
    say_cautions(shown[0])
    if arguments.csv is not None:
        say(f"\nwrote {arguments.csv}")
    return 0


def _source(path: str) -> str | Path:
    """Argument of from_csv(): a path, or the text of standard input."""
    return read_text("-") + "\n" if path == "-" else Path(path)


def _print_columns(kind: str) -> int:
    names = LOG if kind == "log" else tuple(READINGS)
    say(",".join(f'"{name}"' if "," in name else name for name in names))
    return 0


def run_diagnose(arguments: argparse.Namespace) -> int:
    """Print the faults that explain readings, and the fit to a log of the store."""
    if arguments.columns is not None:
        return _print_columns(arguments.columns)
    wants = arguments.readings or arguments.log or arguments.first_fire
    if arguments.installation is None or not wants:
        arguments.parser.error("name INSTALLATION.json and READINGS.csv, or --log FILE")
    installation = read_installation(arguments)
    readings = None if arguments.readings is None else _source(arguments.readings)
    log = None if arguments.log is None else _source(arguments.log)
    taken = None if readings is None else _core.Readings.from_csv(readings)
    logged = None if log is None else _core.StoreLog.from_csv(log)
    catalog = open_catalog(arguments.catalog)
    candidate = _candidate(arguments, installation, catalog)
    diagnosis = calibration = None
    fire = _core.StoreLog.first_fire(candidate) if arguments.first_fire else []
    wanted = shows_progress(arguments)
    if taken is not None:
        diagnosis = _core.diagnose(candidate, taken, catalog=catalog, progress=bar(wanted=wanted))
    if logged is not None:
        calibration = _core.calibrate(candidate, logged, progress=bar(wanted=wanted))
    if arguments.json:
        data: dict[str, Any] = {"title": candidate.circuit.title}
        if diagnosis is not None:
            data["diagnosis"] = diagnosis_json(diagnosis, arguments.units)
        if calibration is not None:
            data["calibration"] = calibration_json(calibration, arguments.units)
        if fire:
            data |= texts_in({"first_fire": fire}, arguments.units, "first_fire")
        print_json(data)
        return 0
    say_name(arguments, installation)
    say(wrap(_core.readings_title(candidate.circuit)) + "\n")
    if diagnosis is not None:
        say(diagnosis_text(diagnosis, units=arguments.units))
    if calibration is not None:
        text = calibration_text(calibration, units=arguments.units)
        say(("\n" if diagnosis is not None else "") + text)
    if fire:
        before = "" if diagnosis is None and calibration is None else "\n"
        say(before + "\n".join(wrapped(fire, arguments.units)))
    say_cautions(candidate)
    return 0


def add_parsers(commands: Any) -> None:
    """Adds these commands to the command line."""
    shared = ("--rank", "--circuit", "--max-bank", "--catalog", "--weather")
    meter = add_command(
        commands,
        "meter",
        "print the meter readings to expect, and what deviations mean",
        run_meter,
        text=METER_HELP,
        examples=METER_EXAMPLES,
    )
    add_installation(meter)
    meter.add_argument(
        "--sun",
        type=float,
        nargs="+",
        metavar="W_M2",
        help="irradiances in W/m2, after INSTALLATION.json (default 1000 to 100)",
    )
    meter.add_argument(
        "--air",
        type=temperature_c,
        metavar="TEMP",
        help='air temperature, such as 5 or "41 °F" (default 10)',
    )
    add_options(meter, *shared, "--csv", "--force", "--units", "--json", "--quiet")
    diagnose = add_command(
        commands,
        "diagnose",
        "name the faults that would explain your readings",
        run_diagnose,
        text=DIAGNOSE_HELP,
        examples=DIAGNOSE_EXAMPLES,
    )
    add_installation(diagnose, nargs="?")
    diagnose.add_argument(
        "readings", nargs="?", metavar="READINGS.csv", help="- for standard input"
    )
    diagnose.add_argument(
        "--log", metavar="FILE", help="log of the store: fits conductivity and heat loss"
    )
    diagnose.add_argument(
        "--first-fire",
        action="store_true",
        help="print what to log at a first heating with a sheath thermocouple, and when to stop",
    )
    diagnose.add_argument(
        "--columns",
        nargs="?",
        choices=("readings", "log"),
        const="readings",
        help="print an empty CSV with the columns of the readings, or of a log, and exit",
    )
    add_options(diagnose, *shared, "--units", "--json", "--quiet")
