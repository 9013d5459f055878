"""The command line's meter: what meters should read."""

from __future__ import annotations

import argparse
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.circuits import (
    circuits_and_shown,
    of_circuits,
    say_circuit,
)
from heatmatch.cli.meter_data import row_values, sheet_json
from heatmatch.cli.output import (
    check_new_file,
    print_json,
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
    temperature_c,
)
from heatmatch.text.meter import sheet_text

METER_HELP = """\
Input: an installation. Prints a sheet to take along. It gives the voltage,
current and power expected by irradiance, with warm panels and with panels just
uncovered. It lists what to measure, how, and what a lower or higher reading
means.
"""
METER_EXAMPLES = (
    "meter demo.json --units us",
    "meter demo.json --sun 800 300 --air 5",
    "meter demo.json --rank build --csv sheet.csv",
)


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


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    shared = ("--rank", "--circuit", "--max-bank", "--volts-max", "--catalog", "--weather")
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
