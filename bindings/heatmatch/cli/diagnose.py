"""The command line's diagnose: what odd meter readings mean."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.circuits import (
    chosen_candidate,
)
from heatmatch.cli.margin_json import texts_in
from heatmatch.cli.meter_data import calibration_json, diagnosis_json
from heatmatch.cli.output import (
    bar,
    print_json,
    read_text,
    say,
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
)
from heatmatch.text.day import calibration_text
from heatmatch.text.meter import diagnosis_text, short_diagnosis_text
from heatmatch.text.results import wrap
from heatmatch.text.table import wrapped

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
Input: an installation, and volts and amperes at the elements (--volts 41
--amps 2.9), or readings in a file, one row per moment. Prints the faults that
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
    "diagnose demo.json --volts 41 --amps 2.9 --sun 700",
    "diagnose --columns > readings.csv",
    "diagnose demo.json readings.csv",
    "diagnose demo.json --log store.csv",
    "diagnose demo.json --first-fire",
)


def _candidate(
    arguments: argparse.Namespace, installation: _core.Installation, catalog: _core.Catalog
) -> _core.Candidate:
    return chosen_candidate(arguments, catalog, installation, read_weather(arguments, installation))


def _source(path: str) -> str | Path:
    """Argument of from_csv(): a path, or the text of standard input."""
    return read_text("-") + "\n" if path == "-" else Path(path)


def _print_columns(kind: str) -> int:
    names = LOG if kind == "log" else tuple(READINGS)
    say(",".join(f'"{name}"' if "," in name else name for name in names))
    return 0


# Options for one reading: name -> column, metavar and help.
_ONE_READING = {
    "--volts": ("bank_v", "V", "voltage at the bank"),
    "--amps": ("bank_a", "A", "current of the bank at the same moment"),
    "--sun": ("irradiance_w_m2", "W_M2", "irradiance in the plane of the panels"),
    "--isc": ("short_a", "A", "current of the shorted array, instead of a sun meter"),
    "--voc": ("open_v", "V", "voltage of the disconnected array"),
    "--back": ("panel_temperature_c", "TEMP", "temperature at the back of a panel"),
}


def _one_reading(arguments: argparse.Namespace) -> _core.Readings | None:
    """The reading that the options give, if any."""
    row = {column: getattr(arguments, column) for column, _, _ in _ONE_READING.values()}
    given = {column: value for column, value in row.items() if value is not None}
    return _core.Readings.from_rows([given]) if given else None


def _say_reading(arguments: argparse.Namespace, reading: _core.Readings) -> int:
    """Print what one reading says where no circuit is described."""
    told = _core.bank_reading(reading)
    if not told:
        arguments.parser.error("name INSTALLATION.json, or give --volts and --amps")
    if arguments.json:
        print_json({"reading": reading.rows[0], "sentence": told.text(arguments.units)})
    else:
        say(wrap(told.text(arguments.units)))
    return 0


def _say_diagnosis(arguments: argparse.Namespace, diagnosis: _core.Diagnosis, *, one: bool) -> None:
    text = short_diagnosis_text if one and not arguments.full else diagnosis_text
    say(text(diagnosis, units=arguments.units))


def run_diagnose(arguments: argparse.Namespace) -> int:
    """Print the faults that explain readings, and the fit to a log of the store."""
    if arguments.columns is not None:
        return _print_columns(arguments.columns)
    one = _one_reading(arguments)
    if one is not None and arguments.readings is not None:
        arguments.parser.error("give one reading by options, or READINGS.csv, not both")
    if one is not None and arguments.installation is None:
        return _say_reading(arguments, one)
    wants = one or arguments.readings or arguments.log or arguments.first_fire
    if arguments.installation is None or not wants:
        arguments.parser.error(
            "name INSTALLATION.json, and --volts with --amps, READINGS.csv or --log FILE"
        )
    installation = read_installation(arguments)
    readings = None if arguments.readings is None else _source(arguments.readings)
    log = None if arguments.log is None else _source(arguments.log)
    taken = one if readings is None else _core.Readings.from_csv(readings)
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
        _say_diagnosis(arguments, diagnosis, one=one is not None)
    if calibration is not None:
        text = calibration_text(calibration, units=arguments.units)
        say(("\n" if diagnosis is not None else "") + text)
    if fire:
        before = "" if diagnosis is None and calibration is None else "\n"
        say(before + "\n".join(wrapped(fire, arguments.units)))
    if one is None or arguments.full:
        say_cautions(candidate)
    else:
        say(
            "\n" + "\n".join(wrapped(_core.first_screen(candidate)["closing"], arguments.units, ""))
        )
    return 0


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    shared = ("--rank", "--circuit", "--max-bank", "--volts-max", "--catalog", "--weather")
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
    for option, (column, unit, meaning) in _ONE_READING.items():
        diagnose.add_argument(option, dest=column, metavar=unit, help=meaning)
    diagnose.add_argument(
        "--full", action="store_true", help="of one reading too: all explanations, the evidence"
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
