"""The command line's report: a page of a ranking or a circuit to print or to show."""

from __future__ import annotations

import argparse
from importlib import import_module
from pathlib import Path
from typing import Any

from heatmatch import _library as _core
from heatmatch import weather
from heatmatch.cli.circuits import chosen_candidate, stands
from heatmatch.cli.output import check_new_file, notice, print_json, say
from heatmatch.cli.shared import (
    DANGER,
    add_command,
    add_installation,
    add_options,
    make_ranking,
    open_catalog,
    read_installation,
    read_weather,
    shows_progress,
)
from heatmatch.text.duties import checks_row
from heatmatch.text.results import wrap

HELP = """\
Input: an installation. Writes one self-contained HTML file that prints well.
With --rank N it shows the N-th circuit of the ranking. Otherwise it shows the
existing circuit or, without one, the whole ranking. A circuit with a danger is
also named here, and the exit code is 3.
"""
EXAMPLES = (
    "report demo.json -o report.html",
    "report demo.json --rank 1 --units us -o first.html --force",
)
_TOP = 200


def _year(
    arguments: argparse.Namespace, installation: _core.Installation
) -> tuple[_core.Weather | None, _core.Weather | None]:
    """The weather to rank by, and that of the page: the installation's own where none is named."""
    named = read_weather(arguments, installation)
    if named is None and installation.to_dict().get("weather") is not None:
        return None, weather.from_installation(installation)
    return named, named


def _told_in_full(what: _core.Ranking | _core.Candidate) -> _core.Candidate | None:
    """The circuit of the page: a rejected one if every circuit has a danger."""
    if isinstance(what, _core.Candidate):
        return what
    return next(iter([*what[:1], *what.rejected[:1]]), None)


def run_report(arguments: argparse.Namespace) -> int:
    """Writes a page."""
    check_new_file(arguments.output, arguments)
    installation = read_installation(arguments)
    catalog = open_catalog(arguments.catalog)
    year, shown = _year(arguments, installation)
    what: _core.Ranking | _core.Candidate
    if arguments.rank is None and not stands(installation):
        what = make_ranking(arguments, catalog, installation, year, top=_TOP)
    else:
        what = chosen_candidate(arguments, catalog, installation, year)
    options = {"installation": installation, "weather": shown, "units": arguments.units}
    with notice("writing the report ...", wanted=shows_progress(arguments)):
        page = import_module("heatmatch.report.page")
        page.report(what, Path(arguments.output), **options, force=arguments.force)
    told = _told_in_full(what)
    danger = told is not None and told.severity == "danger"
    if arguments.json:
        of = "ranking" if isinstance(what, _core.Ranking) else what.circuit.title
        data = {"wrote": arguments.output, "of": of}
        if told is not None:
            data |= {"severity": told.severity, **checks_row(told, arguments.units)}
        print_json(data)
    else:
        if told is not None and danger:
            say(wrap(f"{told.circuit.title}: {_core.margin_sentence(told)}"))
        say(f"wrote {arguments.output}")
    return DANGER if danger else 0


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    parser = add_command(
        commands,
        "report",
        "write a page of a ranking or a circuit, to print or to show",
        run_report,
        text=HELP,
        examples=EXAMPLES,
        danger=True,
    )
    add_installation(parser)
    parser.add_argument(
        "-o", "--output", metavar="FILE.html", required=True, help="the page to write"
    )
    add_options(
        parser,
        "--rank",
        "--circuit",
        "--max-bank",
        "--volts-max",
        "--force",
        "--catalog",
        "--weather",
        "--units",
    )
    add_options(parser, "--json", "--quiet")
