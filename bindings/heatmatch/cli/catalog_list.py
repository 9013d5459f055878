"""The command line's list of parts: their main values, ohms, price and label."""

from __future__ import annotations

import argparse
import json
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.output import print_json, say
from heatmatch.cli.shared import open_catalog
from heatmatch.text import results

KINDS = tuple(_core.glossary())
_PLURALS = {"medium": "media", "alloy": "alloys"}
_COLUMNS: dict[str, tuple[str, ...]] = {
    "panel": ("v_oc", "i_sc"),
    "element": (),
    "wire": ("area_mm2",),
    "insulation": ("limit_c",),
    "control": ("polarised",),
    "connector": ("limit_c",),
    "medium": ("k20_w_mk",),
    "alloy": ("limit_c",),
    "sheath": ("verdict_limit_c",),
    "cover": ("u_w_m2k",),
}
_WIDE, _ID, _PRICE = 80, 36, 14


def view_of(catalog: _core.Catalog, kind: str) -> _core.PartsView:
    """The parts of that kind."""
    view: _core.PartsView = getattr(catalog, _PLURALS.get(kind, kind + "s"))
    return view


def fields_of(kind: str) -> dict[str, dict[str, Any]]:
    """Field name -> its entry of the glossary."""
    return {field["name"]: field for field in _core.glossary()[kind]}


def shown(entry: dict[str, Any], value: Any, units: str) -> str:
    """A field's value as text in the chosen unit set."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return _core.format_quantity(value, entry["unit"], units=units, digits=6)
    if isinstance(value, (list, dict)):
        return json.dumps(value, ensure_ascii=False)
    return str(value)


def _price(part: Any) -> str:
    """The prices of a part with their currency, as 20-35 USD."""
    ends = [f"{end:g}" for end in (part.price_low, part.price_high) if end is not None]
    return " ".join([*(["-".join(dict.fromkeys(ends))] if ends else []), part.price_currency or ""])


def _numbers(catalog: _core.Catalog, kind: str, part: Any, units: str) -> list[str]:
    """The cells between id and price."""
    fields = fields_of(kind)
    cells = [
        _core.format_quantity(value, fields[name]["unit"], units=units, digits=3)
        if isinstance(value := getattr(part, name), float)
        else shown(fields[name], value, units)
        for name in _COLUMNS[kind]
    ]
    if kind == "element":
        ohms = _core.element_resistance(part).typical_ohm
        cells.append(_core.format_quantity(ohms, "ohm", units=units, digits=3))
    if kind == "wire":
        limit_c = catalog.insulations[part.insulation].limit_c if part.insulation else None
        limit = "" if limit_c is None else _core.format_quantity(limit_c, "°C", units=units)
        cells.append(limit)
    return cells


def _heads(kind: str) -> list[str]:
    more = {"element": ["ohms"], "wire": ["limit"]}.get(kind, [])
    return [*_COLUMNS[kind], *more]


def run_list(arguments: argparse.Namespace) -> int:
    """Lists the parts of a kind, or counts all kinds."""
    catalog = open_catalog(arguments.catalog)
    if arguments.kind is None:
        counts = {kind: len(view_of(catalog, kind)) for kind in KINDS}
        if arguments.json:
            print_json(counts)
        else:
            for kind, count in counts.items():
                say(f"{count:6d}  {kind}")
        return 0
    parts = view_of(catalog, arguments.kind).values()
    if arguments.json:
        print_json([part.to_dict() for part in parts])
        return 0
    numbers = _heads(arguments.kind)
    rows = []
    for part in parts:
        own = "*" if catalog.is_own(arguments.kind, part.id) else ""
        cells = _numbers(catalog, arguments.kind, part, arguments.units)
        rows.append((part.id + own, *cells, _price(part), part.label))
    first = min(_ID, max((len(row[0]) for row in rows), default=len("id")))
    between = [
        max(len(head), *(len(row[1 + i]) for row in rows)) if rows else len(head)
        for i, head in enumerate(numbers)
    ]
    price = min(_PRICE, max([len("price"), *(len(row[-2]) for row in rows)]))
    left = _WIDE - first - price - sum(between) - len(between) - 2
    widths = (first, *(-width for width in between), -price, max(left, 1))
    say(results.table(("id", *numbers, "price", "label"), rows, widths))
    if any(row[0].endswith("*") for row in rows):
        say("* your own")
    return 0
