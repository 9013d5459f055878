"""The command line's wires: the temperature of each run, its limit, a suitable wire."""

from __future__ import annotations

import argparse
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.circuits import (
    circuits_and_shown,
    from_ranking,
    of_circuits,
    ranked,
    say_circuit,
)
from heatmatch.cli.margin_json import texts_in
from heatmatch.cli.output import picked, print_json, say
from heatmatch.cli.shared import (
    DANGER,
    add_command,
    add_installation,
    add_options,
    open_catalog,
    read_installation,
    read_weather,
    say_cautions,
    say_name,
)
from heatmatch.text.results import wrap
from heatmatch.text.table import wrapped
from heatmatch.text.wires import wires_text

HELP = """\
Input: an installation with its "runs" of wire. Prints for each the
conductor's highest temperature, the limit of its weakest part, and a suitable
wire of the catalog. At the element, heat is also conducted into the wire
through the terminal: that end decides. To check whether a wire melts, describe
the circuit under "circuit"; a ranking leaves out circuits with melting wires.
"""
EXAMPLES = ("wires demo.json --units us", "wires demo.json --rank 2 --json")
_FIELDS = (
    "run", "wire", "gauge", "current_a", "conductor_c", "far_c", "runaway", "limiting_part",
    "severity", "code_ampacity_a", "corrected_ampacity_a", "balance_ampacity_a", "drop_v", "heat_w",
    "at_element", "sentence", "assumed",
)  # fmt: skip


def check_json(check: _core.WireCheck, units: str) -> dict[str, Any]:
    """A check of a run as plain data."""
    limits = [picked(limit, "what", "limit_c", "consequence", "source") for limit in check.limits]
    reach = [picked(item, "insulation", "family", "limit_c", "from_m") for item in check.reach]
    wire = None if check.sufficient_wire is None else check.sufficient_wire.to_dict()
    data = texts_in(picked(check, *_FIELDS), units, "gauge", "sentence", "assumed")
    return data | {"limits": limits, "reach": reach, "sufficient_wire": wire}


_NO_RUNS = """\
The installation describes no wire. Write its runs into the file, from the
panels to the elements, and rank again. The surroundings of a run decide.

  "runs": [{"name": "home run", "carries": "array", "length_m": 9,
            "wire": "choose", "surroundings": {"kind": "sunlit", "air_c": 35}},
           {"name": "element lead", "carries": "bank", "length_m": 0.3,
            "wire": "choose",
            "surroundings": {"kind": "open air", "air_c": 80}}]
"""


def run_wires(arguments: argparse.Namespace) -> int:
    """Checks every run of wire of a circuit."""
    installation = read_installation(arguments)
    catalog = open_catalog(arguments.catalog)
    year = read_weather(arguments, installation)
    spared: list[_core.Sentence] = []
    if from_ranking(arguments, installation):
        ranking, chosen = ranked(arguments, catalog, installation, year)
        shown = [chosen]
        spared = _core.spared_wires(ranking)
    else:
        circuits, places = circuits_and_shown(arguments, catalog, installation, year)
        shown = [circuits[place] for place in places]
    checked = [candidate.check_wires(catalog) for candidate in shown]
    if arguments.json:
        data: list[dict[str, Any]] = [
            {
                "title": candidate.circuit.title,
                "runs": [check_json(check, arguments.units) for check in checks],
            }
            for candidate, checks in zip(shown, checked, strict=True)
        ]
        print_json(of_circuits(shown, data))
    else:
        say_name(arguments, installation)
        for candidate, checks in zip(shown, checked, strict=True):
            say_circuit(candidate, len(shown))
            say(wrap(_core.wires_table(candidate.circuit, checks).title) + "\n")
            if checks:
                say(wires_text(candidate, checks, units=arguments.units))
            else:
                say(_NO_RUNS)
        if spared and all(checked):
            say("\n" + "\n".join(wrapped(spared, arguments.units)))
        say_cautions(shown[0])
    dangers = [check.severity == "danger" for checks in checked for check in checks]
    return DANGER if any(dangers) else 0


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    parser = add_command(
        commands,
        "wires",
        "check each run of wire: what melts or ages, and which wire is suitable",
        run_wires,
        text=HELP,
        examples=EXAMPLES,
        danger=True,
    )
    add_installation(parser)
    add_options(
        parser,
        "--rank",
        "--circuit",
        "--max-bank",
        "--volts-max",
        "--catalog",
        "--weather",
        "--units",
        "--json",
        "--quiet",
    )
