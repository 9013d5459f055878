"""The command line's report: a page of a ranking, a plan or circuits to print or to show."""

from __future__ import annotations

import argparse
from importlib import import_module
from pathlib import Path
from typing import Any

from heatmatch import _library as _core
from heatmatch import weather
from heatmatch.cli.circuits import (
    chosen_candidate,
    existing_circuits,
    of_circuits,
    ranked,
    stands,
)
from heatmatch.cli.output import check_new_file, notice, print_json, say
from heatmatch.cli.plan import make_plan
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
from heatmatch.errors import InvalidInput
from heatmatch.text.duties import checks_row
from heatmatch.text.results import wrap

HELP = """\
Input: an installation. Writes one self-contained HTML file that prints well.
With --plan it shows the plan of everything you own; with --rank N, the N-th
circuit of the ranking, with --rank build the recommended one. Otherwise it
shows the existing circuits or, without one, the whole ranking with the
recommended circuit. A circuit with a danger is also named here, and the exit
code is 3.
"""
EXAMPLES = (
    "report demo.json -o report.html",
    "report demo.json --plan -o plan.html",
    "report demo.json --rank build --units us -o first.html --force",
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


_What = _core.Ranking | _core.Plan | list[_core.Candidate]


def _told_in_full(what: _What) -> list[_core.Candidate]:
    """The circuits of the page: a rejected one if every circuit has a danger."""
    if isinstance(what, _core.Plan):
        return list(what.circuits)
    if isinstance(what, _core.Ranking):
        shown = [what.recommended] if what.recommended is not None else what[:1]
        return [*shown, *what.rejected[:1]][:1]
    return what


def _wanted(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
) -> tuple[_What, _core.Ranking | None]:
    """What the page is about, and the ranking of which it is a row."""
    if arguments.plan:
        return make_plan(arguments, catalog, installation, year), None
    if arguments.rank is None and not stands(installation):
        return make_ranking(arguments, catalog, installation, year, top=_TOP), None
    if arguments.rank is None and arguments.circuit is None:
        return existing_circuits(catalog, installation, year), None
    if arguments.rank is None:
        return [chosen_candidate(arguments, catalog, installation, year)], None
    ranking, chosen = ranked(arguments, catalog, installation, year)
    return [chosen], ranking


def _named(what: _What) -> str:
    """What the page is about, in a word or a title."""
    if isinstance(what, _core.Plan):
        return "plan"
    if isinstance(what, _core.Ranking):
        return "ranking"
    return what[0].circuit.title if len(what) == 1 else "circuits"


def _check_choice(arguments: argparse.Namespace) -> None:
    """Reject --plan together with a choice of one circuit."""
    for option in ("rank", "circuit"):
        if arguments.plan and getattr(arguments, option) is not None:
            raise InvalidInput(f"--plan and --{option} cannot be combined; use one of them")


def run_report(arguments: argparse.Namespace) -> int:
    """Writes a page."""
    _check_choice(arguments)
    check_new_file(arguments.output, arguments)
    installation = read_installation(arguments)
    catalog = open_catalog(arguments.catalog)
    year, shown = _year(arguments, installation)
    what, ranking = _wanted(arguments, catalog, installation, year)
    options = {"installation": installation, "weather": shown, "units": arguments.units}
    with notice("writing the report ...", wanted=shows_progress(arguments)):
        page = import_module("heatmatch.report.page")
        page.report(
            what[0] if isinstance(what, list) and len(what) == 1 else what,
            Path(arguments.output),
            **options,
            ranking=ranking,
            force=arguments.force,
        )
    told = _told_in_full(what)
    dangers = [one for one in told if one.severity == "danger"]
    if arguments.json:
        rows = [{"severity": one.severity, **checks_row(one, arguments.units)} for one in told]
        print_json({"wrote": arguments.output, "of": _named(what), **of_circuits(told, rows)})
    else:
        for one in dangers:
            say(wrap(f"{one.circuit.title}: {_core.margin_sentence(one)}"))
        say(f"wrote {arguments.output}")
    return DANGER if dangers else 0


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    parser = add_command(
        commands,
        "report",
        "write a page of a ranking, a plan or circuits, to print or to show",
        run_report,
        text=HELP,
        examples=EXAMPLES,
        danger=True,
    )
    add_installation(parser)
    parser.add_argument(
        "-o", "--output", metavar="FILE.html", required=True, help="the page to write"
    )
    parser.add_argument("--plan", action="store_true", help="report the plan of everything you own")
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
