"""The command line's day: a circuit simulated over consecutive days."""

from __future__ import annotations

import argparse
from typing import Any

from heatmatch import _library as _core
from heatmatch import weather
from heatmatch.cli.circuits import circuits_and_shown
from heatmatch.cli.margin_json import margin_json, texts_in
from heatmatch.cli.output import (
    bar,
    check_new_file,
    picked,
    print_json,
    say,
    write_csv,
)
from heatmatch.cli.shared import (
    DANGER,
    add_command,
    add_installation,
    add_options,
    difference_k,
    month,
    open_catalog,
    positive,
    read_installation,
    read_weather,
    say_cautions,
    say_name,
    shows_progress,
    temperature_c,
)
from heatmatch.errors import InvalidInput
from heatmatch.io import frames_day
from heatmatch.text.day import day_text, short_day_text, stagnation_text
from heatmatch.text.table import wrapped

HELP = """\
Input: an installation with its store, and weather data: its own twelve months
or a file. Prints the temperatures at night, the heat, and the parts that come
nearest to their limits. --full adds every part, the energy balance and the
months. A whole year needs several seconds;
--month and --days shorten it.
"""
EXAMPLES = (
    "day demo.json --month Jan --days 7",
    'day demo.json --month 1 --days 3 --air-shift "-14 °F" --units us',
    "day demo.json --rank build --weather year.epw --csv steps.csv",
    "day demo.json --month 6 --stagnation",
)
_ENERGY = (
    "available_kwh", "delivered_kwh", "wire_kwh", "stored_kwh", "to_space_kwh", "outside_kwh",
    "steam_kwh",
)  # fmt: skip
_ANSWER = (
    "dusk_lift_k", "dawn_lift_k", "carry_over_h", "warmer_from_hour", "warmer_until_hour",
    "lid_until_hour", "most_lift_k", "most_lift_hour",
)  # fmt: skip
_RUN = ("title", "days", "first_hour", "heats_space", "bed_model", "remarks", "assumed")


def _peaks_json(peaks: list[_core.PartPeak], units: str) -> list[dict[str, Any]]:
    return [margin_json(peak.margin, units) | {"hours": peak.hours} for peak in peaks]


def run_json(run: _core.DayRun, units: str) -> dict[str, Any]:
    """A run as plain data; its steps are for --csv."""
    return texts_in(picked(run, *_RUN), units, "remarks", "assumed") | {
        "sentences": run.sentences(units=units),
        "answer": picked(run.answer, *_ANSWER),
        "energy": picked(run.energy, *_ENERGY),
        "peaks": _peaks_json(run.answer.peaks, units),
        "months": [picked(dark, *frames_day.MONTH_FIELDS) for dark in run.answer.months],
        "all": picked(run.answer.all, *frames_day.MONTH_FIELDS),
        "events": [picked(event, "hours", "device", "what") for event in run.events],
    }


def stagnation_json(stagnation: _core.Stagnation, units: str) -> dict[str, Any]:
    """A stagnation as plain data."""
    data = picked(stagnation, "month", "delivered_kwh", "sentences") | {
        "peaks": _peaks_json(stagnation.peaks, units),
        "assumed": stagnation.run.assumed,
    }
    return texts_in(data, units, "sentences", "assumed")


def _options(arguments: argparse.Namespace) -> dict[str, Any]:
    """Options of simulate_day() that were given."""
    names = (
        "month", "days", "air_shift_k", "start_c", "conductivity", "switches", "extraction_w_k",
        "extraction_from_hour", "extraction_until_hour", "air_around_c",
    )  # fmt: skip
    given = {name: getattr(arguments, name) for name in names}
    return {name: value for name, value in given.items() if value is not None}


def _write_steps(path: str, run: _core.DayRun, *, force: bool) -> None:
    """Write the thermal steps of a run; an unknown terminal temperature is empty."""
    unknown = [None] * len(run)
    lists = [getattr(run, name) for name in frames_day.SERIES]
    columns = [unknown if values is None else values for values in lists]
    write_csv(path, frames_day.SERIES, zip(*columns, strict=True), force=force)


def _of_circuit(arguments: argparse.Namespace, run: _core.DayRun,
                stagnation: _core.Stagnation | None) -> dict[str, Any]:  # fmt: skip
    data = run_json(run, arguments.units)
    if stagnation is None:
        return data
    return data | {"stagnation": stagnation_json(stagnation, arguments.units)}


def _say_circuit(arguments: argparse.Namespace, run: _core.DayRun,
                 stagnation: _core.Stagnation | None) -> None:  # fmt: skip
    say((day_text if arguments.full else short_day_text)(run, units=arguments.units))
    if stagnation is not None:
        say(f"\n{_core.welded_shut_title()}\n")
        say(stagnation_text(stagnation, units=arguments.units))


def run_day(arguments: argparse.Namespace) -> int:
    """Simulate the circuits of a store over consecutive days."""
    check_new_file(arguments.csv, arguments)
    installation = read_installation(arguments)
    catalog = open_catalog(arguments.catalog)
    year = read_weather(arguments, installation)
    lived = weather.from_installation(installation) if year is None else year
    circuits, shown = circuits_and_shown(arguments, catalog, installation, year)
    if arguments.csv is not None and len(shown) > 1:
        raise InvalidInput("--csv has room for one circuit; name it with --circuit")
    wanted = shows_progress(arguments)
    runs = _core.simulate_circuits(
        circuits, lived, **_options(arguments), progress=bar(wanted=wanted)
    )
    stagnations: list[_core.Stagnation | None] = [None] * len(circuits)
    if arguments.stagnation:
        stagnations = [*_core.simulate_stagnations(circuits, progress=bar(wanted=wanted))]
    told = [(circuits[i], runs[i], stagnations[i]) for i in shown]
    if arguments.csv is not None:
        _write_steps(arguments.csv, told[0][1], force=arguments.force)
    peaks = [
        peak
        for _, run, still in told
        for peak in [*run.answer.peaks, *([] if still is None else still.peaks)]
    ]
    code = DANGER if any(peak.margin.severity == "danger" for peak in peaks) else 0
    if arguments.json:
        data = [_of_circuit(arguments, run, still) for _, run, still in told]
        names = [{"circuit": each.circuit.name} for each, _, _ in told]
        several = [name | of for name, of in zip(names, data, strict=True)]
        print_json({"circuits": several} if len(told) > 1 else data[0])
        return code
    say_name(arguments, installation)
    for each, run, still in told:
        if len(told) > 1:
            say(f'\ncircuit "{each.circuit.name}":\n')
        _say_circuit(arguments, run, still)
    if arguments.full:
        say_cautions(told[0][0])
    else:
        closing = _core.first_screen(told[0][0])["closing"]
        say("\n" + "\n".join(wrapped(closing, arguments.units, "")))
    if arguments.csv is not None:
        say(f"\nwrote {arguments.csv}")
    return code


def _add_own_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--month", type=month, metavar="M", help="start at the first day of this month: 1 or Jan"
    )
    parser.add_argument(
        "--days",
        type=positive,
        metavar="D",
        help="number of days; default: to the end of month or data",
    )
    parser.add_argument(
        "--air-shift",
        dest="air_shift_k",
        type=difference_k,
        metavar="K",
        help='air warmer than in the weather data: -8 is 8 K colder; "-14 °F" works too',
    )
    parser.add_argument(
        "--full", action="store_true", help="print every part, energy, months and cautions"
    )
    parser.add_argument(
        "--stagnation",
        action="store_true",
        help="also fourteen cloudless days, welded closed, with no heat drawn",
    )
    parser.add_argument(
        "--switches",
        choices=("works", "thermostat welded", "breaker welded"),
        help="failed device (default: works)",
    )
    parser.add_argument(
        "--conductivity",
        choices=("low", "typical", "high"),
        help="of the fill; low makes the sheath hottest (default typical)",
    )
    parser.add_argument(
        "--start",
        dest="start_c",
        type=temperature_c,
        metavar="TEMP",
        help="store temperature at the beginning (default: that of the air)",
    )
    parser.add_argument(
        "--air-around",
        dest="air_around_c",
        type=temperature_c,
        metavar="TEMP",
        help="constant air temperature around the store; no space is heated then",
    )
    parser.add_argument(
        "--extraction",
        dest="extraction_w_k",
        type=float,
        metavar="W_K",
        help="heat extraction of a fan or loop, in W per K between bed and space",
    )
    parser.add_argument(
        "--extraction-from",
        dest="extraction_from_hour",
        type=float,
        metavar="H",
        help="hour of day",
    )
    parser.add_argument(
        "--extraction-until",
        dest="extraction_until_hour",
        type=float,
        metavar="H",
        help="hour of day",
    )


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    parser = add_command(
        commands,
        "day",
        "simulate a circuit over consecutive days: nights and highest temperatures",
        run_day,
        text=HELP,
        examples=EXAMPLES,
        danger=True,
    )
    add_installation(parser)
    _add_own_options(parser)
    add_options(parser, "--rank", "--circuit", "--max-bank", "--volts-max", "--csv", "--force")
    add_options(parser, "--catalog", "--weather", "--units", "--json", "--quiet")
