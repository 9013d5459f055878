"""The command line's rank, assess and demo."""

from __future__ import annotations

import argparse
import os
from importlib import import_module
from pathlib import Path
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.candidate_json import candidate_json
from heatmatch.cli.circuits import chosen_candidate, existing_circuits
from heatmatch.cli.output import (
    check_new_file,
    print_json,
    print_json_text,
    say,
)
from heatmatch.cli.plan import make_plan, plan_json
from heatmatch.cli.ranking_json import ranking_json, write_table
from heatmatch.cli.shared import (
    DANGER,
    add_command,
    add_installation,
    add_options,
    make_ranking,
    open_catalog,
    positive,
    read_installation,
    read_weather,
    say_cautions,
    say_name,
)
from heatmatch.errors import FileError
from heatmatch.text import results
from heatmatch.text.first_screen import first_screen_text, plan_lines
from heatmatch.text.table import texts, wrapped
from heatmatch.text.units import told

RANK_HELP = """\
Input: an installation with your panels, the elements you own or may buy, the
store and the runs of wire. Prints the recommended circuit: what to wire,
its heat, the bill, the nearest limit, and what must be there before it may
run. Then other ways, and a table, best first. --full adds every check of the
first row, its bill line by line, code requirements, trade-offs and cautions.
The row marked > is BUILD. Other commands select it with --rank build, another
row with --rank N. --save keeps the best two hundred,
and those rejected for a danger. --compare ranks as many and lists what
changed.
"""
RANK_EXAMPLES = (
    "demo > demo.json",
    "rank demo.json --top 5",
    "rank demo.json --save before.json",
    "rank demo.json --compare before.json",
)
ASSESS_HELP = """\
Assesses the existing circuit (`installation.circuit`), or all of
`installation.circuits` in the store that they share. Prints the delivered
power, the temperatures and every margin. A margin is a named check with value,
limit and severity: danger, warning, caution, not assessed or no finding.
"""
ASSESS_EXAMPLES = ("assess demo.json", "assess demo.json --units us --explain")
DEMO_HELP = """\
No input. Prints an installation file (JSON) that every command can read;
change it to describe your own situation.
"""
DEMO_EXAMPLES = ("demo > mine.json", "demo | heatmatch rank -")


_ROWS = 5  # of the table below the first screen
_UNUSED = 4  # lines of parts that no circuit has, there
_NOTES = 4  # lines of the installation's notes, there
_COMPARED = 200  # candidates that are kept to be compared
_REJECTED = 2000  # with a danger, so that new dangers are reported


def _rankings() -> Any:
    """The module that saves rankings, needed by some calls only."""
    return import_module("heatmatch.io.rankings")


def _say_first(
    arguments: argparse.Namespace,
    ranking: _core.Ranking,
    plan: _core.Plan | None,
    installation: _core.Installation,
) -> None:
    """The answer, and the table in short."""
    units, rows = arguments.units, arguments.top or _ROWS
    if len(ranking) + len(ranking.rejected) == 0:
        say(results.ranking_text(ranking, rows, units=units))
        return
    say(first_screen_text(ranking, units=units))
    if len(ranking) > 0:
        say("")
        say(results.marked_table(ranking, rows, units=units))
        say(results.wrap(" ".join(texts(_core.short_legend(ranking), units))))
    said = texts([_core.short_ranking(ranking), *plan_lines(ranking, plan)], units)
    say(results.wrap(" ".join(said)))
    unused = _core.unused_lines(ranking, installation)
    for line in wrapped(unused[:_UNUSED], units, ""):
        say(line)
    for line in results.notes_of(installation)[-_NOTES:]:
        say(results.wrap(line))


def _say_ranking(
    arguments: argparse.Namespace, ranking: _core.Ranking, installation: _core.Installation
) -> None:
    units, rows = arguments.units, _rows(arguments)
    # The first one in full has its counts.
    counts = len(ranking) == 0
    say(results.ranking_text(ranking, rows, units=units, counts=counts))
    if len(ranking) > 0:
        say("\nThe first one in full:\n")
        say(results.candidate_text(ranking[0], units=units))
        front = ranking.pareto
        shown = min(len(front), rows)
        say(f"\n{results.wrap(_core.front_letters_title(ranking, shown))}\n")
        say(results.ranking_table(front[:shown], units=units, letters=True))
    for text in wrapped(
        [_core.strongest_rejected(ranking), *_core.unused_lines(ranking, installation)], units
    ):
        say("\n" + text)
    for line in results.notes_of(installation):
        say("\n" + results.wrap(line))


def _rows(arguments: argparse.Namespace) -> int:
    """Rows of the whole table."""
    rows: int = arguments.top or results.TABLE_ROWS
    return rows


def _depth(arguments: argparse.Namespace) -> dict[str, int]:
    """Number of candidates to keep: more than are shown, to number the recommended one."""
    top = max(_rows(arguments), _COMPARED)
    if arguments.save is None and arguments.compare is None:
        return {"top": top}
    return {"top": top, "keep_rejected": _REJECTED}


def _check_new_files(arguments: argparse.Namespace) -> None:
    """Reject, before the computation, files that cannot both be written."""
    for path in (arguments.save, arguments.csv):
        check_new_file(path, arguments)
    if arguments.save is None or arguments.csv is None:
        return
    if os.path.realpath(arguments.save) == os.path.realpath(arguments.csv):
        raise FileError(
            f'--save and --csv both name "{arguments.csv}": one would replace the other; '
            "name two files"
        )


def run_rank(arguments: argparse.Namespace) -> int:
    """Ranks every pairing of an installation."""
    _check_new_files(arguments)
    installation = read_installation(arguments)
    before = None if arguments.compare is None else _rankings().load_ranking(arguments.compare)
    year = read_weather(arguments, installation)
    catalog = open_catalog(arguments.catalog)
    ranking = make_ranking(arguments, catalog, installation, year, **_depth(arguments))
    plan = None
    if arguments.plan:
        plan = make_plan(arguments, catalog, installation, year)
    comparison = None if before is None else _rankings().compare_rankings(before, ranking)
    if arguments.csv is not None:
        write_table(arguments.csv, ranking[: _rows(arguments)], force=arguments.force)
    if arguments.save is not None:
        options = {"name": installation.name, "force": arguments.force}
        _rankings().save_ranking(ranking, Path(arguments.save), **options)
    if arguments.json:
        data = ranking_json(arguments, _rows(arguments), ranking)
        if plan is not None:
            data["plan"] = plan_json(plan, arguments.units)
        print_json(data if comparison is None else data | {"comparison": comparison.to_dict()})
        return 0
    say_name(arguments, installation)
    if arguments.full:
        _say_ranking(arguments, ranking, installation)
    else:
        _say_first(arguments, ranking, plan, installation)
    if comparison is not None:
        say(f"\nCompared with {arguments.compare}:\n")
        say(str(comparison))
    if arguments.full:
        say_cautions(next(iter([*ranking, *ranking.rejected]), None))
    for path in (arguments.save, arguments.csv):
        if path is not None:
            say(f"\nwrote {path}")
    return 0


def _assessed(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
) -> list[_core.Candidate]:
    """The circuit that was asked for, or all existing ones."""
    if arguments.rank is None and arguments.circuit is None:
        return existing_circuits(catalog, installation, year)
    return [chosen_candidate(arguments, catalog, installation, year)]


def _say_circuit(arguments: argparse.Namespace, candidate: _core.Candidate) -> None:
    say(results.candidate_text(candidate, units=arguments.units))
    if arguments.explain:
        say("\nhow it was computed:")
        for step in candidate.explain():
            say(results.wrap(f"  {told(step.description, arguments.units)}", "      "))


def run_assess(arguments: argparse.Namespace) -> int:
    """Assess the existing circuits, or one of the ranking."""
    installation = read_installation(arguments)
    year = read_weather(arguments, installation)
    catalog = open_catalog(arguments.catalog)
    circuits = _assessed(arguments, catalog, installation, year)
    several = len(circuits) > 1
    if arguments.json:
        data = [{"circuit": each.circuit.name} | candidate_json(each, arguments.units)
                for each in circuits]  # fmt: skip
        print_json({"circuits": data} if several else candidate_json(circuits[0], arguments.units))
    else:
        say_name(arguments, installation)
        if several:
            say(results.circuits_text(circuits, units=arguments.units))
        for each in circuits:
            if several:
                say(f'\ncircuit "{each.circuit.name}":\n')
            _say_circuit(arguments, each)
        say_cautions(circuits[0])
    danger = any(each.severity == "danger" for each in circuits)
    return DANGER if danger else 0


def run_demo(arguments: argparse.Namespace) -> int:
    """Prints the demo installation."""
    del arguments
    print_json_text(_core.demo().to_json_text())
    return 0


def add_parsers(commands: Any) -> None:
    """Adds these commands to the command line."""
    rank = add_command(
        commands,
        "rank",
        "rank elements and hook-ups for the panels you own",
        run_rank,
        text=RANK_HELP,
        examples=RANK_EXAMPLES,
    )
    add_installation(rank)
    rank.add_argument(
        "--top",
        type=positive,
        metavar="N",
        help=f"rows of the table (default {_ROWS}; with --full, --json or --csv "
        f"{results.TABLE_ROWS})",
    )
    rank.add_argument(
        "--full", action="store_true", help="print every check, code requirements and cautions"
    )
    rank.add_argument(
        "--plan", action="store_true", help="also plan everything you own, in one line"
    )
    add_options(rank, "--max-bank", "--volts-max")
    rank.add_argument("--save", metavar="FILE", help="save the ranking, to compare with later")
    rank.add_argument("--compare", metavar="FILE", help="list the changes since that ranking")
    shared = ("--catalog", "--weather", "--units", "--json")
    add_options(rank, "--csv", "--force", *shared, "--quiet")
    assess = add_command(
        commands,
        "assess",
        "assess the existing circuit",
        run_assess,
        text=ASSESS_HELP,
        examples=ASSESS_EXAMPLES,
        danger=True,
    )
    add_installation(assess)
    assess.add_argument(
        "--explain", action="store_true", help="print every formula with its numbers"
    )
    add_options(assess, "--rank", "--circuit", "--max-bank", "--volts-max", *shared, "--quiet")
    add_command(
        commands,
        "demo",
        "print an invented installation to start from",
        run_demo,
        text=DEMO_HELP,
        examples=DEMO_EXAMPLES,
    )
