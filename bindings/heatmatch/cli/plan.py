"""The command line's plan."""

from __future__ import annotations

import argparse
import json
import math
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.output import bar, print_json, say
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
from heatmatch.text import results
from heatmatch.text.table import texts

PLAN_HELP = """\
Finds the circuits that together deliver the most heat of the season without
danger, from all owned panels, owned elements and elements that may be bought,
within the budget of the whole bill. Prints their heat, what limits it, the
circuits and the bill. `goals` of the installation may state circuits_max,
volts_max, headroom_min and parts_max.
"""
PLAN_EXAMPLES = ("demo > demo.json", "plan demo.json", "plan demo.json --unlocks")


def plan_json(plan: _core.Plan, units: str) -> dict[str, Any]:
    """A plan as plain data."""
    return {
        "kwh": plan.kwh,
        "mean_kwh_per_day": plan.mean_kwh_per_day,
        "headroom": plan.headroom,
        "gap": plan.gap,
        "bounds": plan.bounds,
        "circuits": json.loads(plan.installation.to_json_text()).get("circuits", []),
        "bill": plan.bill.typical,
        "currency": plan.bill.currency,
        "idle": [{"group": each.group, "count": each.count} for each in plan.idle],
        "summary": texts(plan.summary(), units),
    }


def make_plan(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
) -> _core.Plan:
    """The plan of an installation, with a progress bar."""
    return _core.plan(
        catalog, installation, year, max_bank=arguments.max_bank,
        progress=bar(wanted=shows_progress(arguments)),
    )  # fmt: skip


def unlock_json(unlock: _core.Unlock, units: str) -> dict[str, Any]:
    """A change that adds heat as plain data."""
    return {
        "kwh": unlock.kwh,
        "price": unlock.price,
        "price_per_kwh": unlock.price_per_kwh if math.isfinite(unlock.price_per_kwh) else None,
        "crosses_v": unlock.crosses_v,
        "said": texts([unlock.said], units)[0],
    }


def run_plan(arguments: argparse.Namespace) -> int:
    """Plan the best use of everything owned."""
    installation = read_installation(arguments)
    year = read_weather(arguments, installation)
    catalog = open_catalog(arguments.catalog)
    plan = make_plan(arguments, catalog, installation, year)
    found = plan.unlocks(catalog, year, max_bank=arguments.max_bank) if arguments.unlocks else []
    if arguments.json:
        data = plan_json(plan, arguments.units)
        if arguments.unlocks:
            data["unlocks"] = [unlock_json(each, arguments.units) for each in found]
        print_json(data)
        return 0
    say_name(arguments, installation)
    say(results.plan_text(plan, units=arguments.units))
    if arguments.unlocks:
        say(results.unlocks_text(found, plan.bill.currency, units=arguments.units))
    if len(plan):
        say_cautions(plan.circuits[0])
    return 0


def add_parsers(commands: Any) -> None:
    """Adds the command to the command line."""
    plan = add_command(
        commands,
        "plan",
        "plan the best use of everything you own",
        run_plan,
        text=PLAN_HELP,
        examples=PLAN_EXAMPLES,
    )
    add_installation(plan)
    plan.add_argument(
        "--unlocks", action="store_true", help="also try single changes that add heat"
    )
    add_options(
        plan, "--max-bank", "--volts-max", "--catalog", "--weather", "--units", "--json", "--quiet"
    )
