"""The command line: heatmatch rank|assess|catalog."""

from __future__ import annotations

import argparse
import io
import json
import os
import sys
from collections.abc import Sequence
from typing import Any

from heatmatch import _core, cli_catalog, display, frames, weather
from heatmatch.errors import Error, FileError

DESCRIPTION = """\
Which heating element suits the panels you own, in which hook-up, and what
its limits are. Describe your situation in an installation file (JSON);
`heatmatch demo` prints one to start from.
"""
EPILOG = """\
exit codes: 0 done, 1 the input cannot be used, 2 wrong command,
3 the assessed circuit has a danger, 130 interrupted
"""
DANGER = 3


def open_catalog(path: str | None, *, create: bool = False) -> _core.Catalog:
    """The catalog file of that name, or of HEATMATCH_CATALOG; the starter if there is none."""
    name = path or os.environ.get("HEATMATCH_CATALOG")
    if not name:
        return _core.Catalog.starter()
    if not create and not os.path.exists(name):
        raise FileError(
            f'no catalog file "{name}"; check the name, or make one with '
            "heatmatch catalog add|edit|import --catalog FILE"
        )
    return _core.Catalog.open(name)


def candidate_json(candidate: _core.Candidate, units: str) -> dict[str, Any]:
    """A candidate as plain data."""
    row = frames.candidate_row(candidate)
    row["margins"] = [
        {
            "severity": margin.severity,
            "name": margin.name,
            "subject": margin.subject,
            "value": margin.value,
            "limit": margin.limit,
            "unit": margin.unit,
            "headroom": margin.headroom,
            "sentence": margin.sentence(units=units),
            "source": margin.source,
            "assumed": margin.assumed,
            "missing": margin.missing,
        }
        for margin in candidate.margins
    ]
    row["advice"] = candidate.advice().sentences
    row["assumed"] = candidate.assumed
    row["remarks"] = candidate.remarks
    return row


def print_json(data: Any) -> None:
    """Prints plain data as JSON."""
    print(json.dumps(data, ensure_ascii=False, indent=2, allow_nan=False))


def print_cautions() -> None:
    """Prints the cautions that belong to every result."""
    print("\ncautions:")
    for sentence in _core.cautions():
        print(display.wrap(f"- {sentence}"))


def read_weather(
    arguments: argparse.Namespace, installation: _core.Installation
) -> _core.Weather | None:
    """The weather of the file that was named, on the installation's panels."""
    if arguments.weather is None:
        return None
    return weather.read_file(arguments.weather, installation.site)


def run_rank(arguments: argparse.Namespace) -> int:
    """Ranks every pairing of an installation."""
    installation = _core.Installation.from_json(arguments.installation)
    ranking = _core.rank(
        open_catalog(arguments.catalog),
        installation,
        read_weather(arguments, installation),
        top=arguments.top,
        max_bank=arguments.max_bank,
    )
    if arguments.json:
        print_json(
            {
                "evaluated": ranking.evaluated,
                "reasons": ranking.reasons,
                "remarks": ranking.remarks,
                "candidates": [
                    candidate_json(candidate, arguments.units) for candidate in ranking.candidates
                ],
                "pareto": [frames.candidate_row(candidate) for candidate in ranking.pareto()],
            }
        )
        return 0
    print(f"{installation.name or arguments.installation}\n")
    print(display.ranking_text(ranking, arguments.top, units=arguments.units))
    if len(ranking) > 0:
        print("\nThe first one in full:\n")
        print(display.candidate_text(ranking[0], units=arguments.units))
        front = ranking.pareto()
        print(f"\nWhat trades for what ({len(front)} that no other beats in everything):\n")
        print(display.ranking_table(front[: arguments.top], units=arguments.units))
    if ranking.rejected:
        best = ranking.rejected[0]
        margin = best.worst
        if margin is not None:
            why = margin.sentence(units=arguments.units)
            heat = f"{best.merit:.0f} {'kWh' if best.season is not None else 'W'}"
            text = f"{best.circuit.title} ({heat}): {why}"
            print("\n" + display.wrap("The strongest rejected one: " + text))
    print_cautions()
    return 0


def run_assess(arguments: argparse.Namespace) -> int:
    """Judges the circuit that stands."""
    installation = _core.Installation.from_json(arguments.installation)
    candidate = _core.assess(
        open_catalog(arguments.catalog), installation, read_weather(arguments, installation)
    )
    if arguments.json:
        print_json(candidate_json(candidate, arguments.units))
    else:
        print(f"{installation.name or arguments.installation}\n")
        print(display.candidate_text(candidate, units=arguments.units))
        if arguments.explain:
            print("\nhow it was computed:")
            for step in candidate.explain():
                print(display.wrap(f"  {step!r}", "      "))
        print_cautions()
    return DANGER if candidate.severity == "danger" else 0


def run_demo(arguments: argparse.Namespace) -> int:
    """Prints the demo installation."""
    del arguments
    print(_core.demo().to_json_text(), end="")
    return 0


def positive(text: str) -> int:
    """A whole number above zero."""
    number = int(text)
    if number < 1:
        raise argparse.ArgumentTypeError(f"{text} must be 1 or more")
    return number


def add_common(parser: argparse.ArgumentParser) -> None:
    """The options that every result has."""
    parser.add_argument(
        "--catalog", metavar="FILE", help="your catalog file (or HEATMATCH_CATALOG)"
    )
    parser.add_argument(
        "--weather",
        metavar="FILE",
        help="a typical year (EPW, TMY3 or PVGIS) instead of the installation's twelve months",
    )
    parser.add_argument(
        "--units", choices=("si", "us"), default="si", help="units of sentences and tables"
    )
    parser.add_argument("--json", action="store_true", help="plain data instead of text")


def make_parser() -> argparse.ArgumentParser:
    """The parser of the whole command line."""
    parser = argparse.ArgumentParser(
        prog="heatmatch",
        description=DESCRIPTION,
        epilog=EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=_core.library_version())
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")

    rank = commands.add_parser("rank", help="rank elements and hook-ups for the panels you own")
    rank.add_argument("installation", metavar="INSTALLATION.json", help="your situation")
    rank.add_argument("--top", type=positive, default=10, help="rows to show (default 10)")
    rank.add_argument(
        "--max-bank", type=positive, default=4, help="elements in one bank (default 4)"
    )
    add_common(rank)
    rank.set_defaults(run=run_rank)

    assess = commands.add_parser("assess", help="judge the circuit that stands")
    assess.add_argument("installation", metavar="INSTALLATION.json", help="your situation")
    assess.add_argument(
        "--explain", action="store_true", help="print every formula with its numbers"
    )
    add_common(assess)
    assess.set_defaults(run=run_assess)

    demo = commands.add_parser("demo", help="print an invented installation to start from")
    demo.set_defaults(run=run_demo)

    cli_catalog.add_parser(commands, open_catalog, print_json)
    return parser


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command line and gives its exit code."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that cannot print ° still works
    parsed = make_parser().parse_args(arguments)
    try:
        code: int = parsed.run(parsed)
        sys.stdout.flush()
    except (Error, ImportError) as error:
        message = str(error).replace("(keep_good)", "(--keep-good)")
        print(f"heatmatch: {message}", file=sys.stderr)
        return 1
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except KeyboardInterrupt:
        print("heatmatch: interrupted", file=sys.stderr)
        return 130
    return code
