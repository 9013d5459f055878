"""The command line's part for the catalog: list, show, add, edit, remove, import, export, ..."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli import output
from heatmatch.cli.catalog_help import ACTIONS, EXAMPLES, HELP
from heatmatch.cli.catalog_list import KINDS, fields_of, run_list, shown, view_of
from heatmatch.cli.output import check_new_file, print_json, print_json_text, read_text, say
from heatmatch.cli.shared import add_command, add_options, open_catalog
from heatmatch.errors import CatalogError, InvalidInput
from heatmatch.io.files import write_text
from heatmatch.text import results

_CLASSES = {kind: getattr(_core, kind.capitalize()) for kind in KINDS}
_FLAGS = {"yes": True, "true": True, "no": False, "false": False}
# The field kinds of the C++ core whose values are written as JSON on the command line.
_FLAG_KIND = 6
_JSON_KINDS = range(7, 12)


def own_catalog(arguments: argparse.Namespace) -> _core.Catalog:
    """The user's catalog, for a change."""
    catalog: _core.Catalog = open_catalog(arguments.catalog, create=True)
    if not catalog.path:
        raise CatalogError(
            "the starter catalog is read-only; name your own file with --catalog mine.heatmatch "
            "(it is created), or set HEATMATCH_CATALOG"
        )
    return catalog


def run_show(arguments: argparse.Namespace) -> int:
    """Shows one part with all its known fields."""
    catalog = open_catalog(arguments.catalog)
    part = view_of(catalog, arguments.kind)[arguments.id]
    if arguments.json:
        print_json(part.to_dict())
        return 0
    fields = fields_of(arguments.kind)
    for name, value in part.to_dict().items():
        say(results.wrap(f"{name}: {shown(fields[name], value, arguments.units)}", "    "))
    return 0


def run_add(arguments: argparse.Namespace) -> int:
    """Adds a part from a JSON object."""
    catalog = own_catalog(arguments)
    part = _CLASSES[arguments.kind].from_json(read_text(arguments.file))
    catalog.add(part)
    say(f'added {arguments.kind} "{part.id}" to {catalog.path}')
    return 0


def change_of(kind: str, text: str) -> tuple[str, Any]:
    """One `field=value` as a name and a value; no text after the sign means unknown."""
    name, sign, value = text.partition("=")
    if not sign:
        raise InvalidInput(
            f'"{text}" must be written as field=value; for example v_oc=37.5 or "limit_c=392 °F"'
        )
    entry = fields_of(kind).get(name)
    if value == "" or entry is None:
        return name, None if value == "" else value
    if entry["kind"] == _FLAG_KIND:
        return name, _FLAGS.get(value.lower(), value)
    if entry["kind"] in _JSON_KINDS:
        try:
            return name, json.loads(value)
        except json.JSONDecodeError as error:
            raise InvalidInput(f"{name} must be JSON: {error}") from error
    return name, value


def run_edit(arguments: argparse.Namespace) -> int:
    """Changes fields of a part."""
    catalog = own_catalog(arguments)
    changes = dict(change_of(arguments.kind, text) for text in arguments.changes)
    catalog.edit(arguments.kind, arguments.id, **changes)
    say(f'changed {arguments.kind} "{arguments.id}" in {catalog.path}')
    return 0


def run_remove(arguments: argparse.Namespace) -> int:
    """Removes a part."""
    catalog = own_catalog(arguments)
    catalog.remove(arguments.kind, arguments.id)
    say(f'removed {arguments.kind} "{arguments.id}" from {catalog.path}')
    return 0


def _imported(arguments: argparse.Namespace) -> _core.ImportReport:
    """The report of an import, after checking the arguments."""
    catalog = own_catalog(arguments)
    keep_good = arguments.keep_good
    if arguments.modules:
        return catalog.import_module_csv(arguments.file, keep_good=keep_good)
    text = read_text(arguments.file)
    if arguments.kind is None:
        return catalog.import_json_text(text, keep_good=keep_good)
    return catalog.import_csv_text(arguments.kind, text, origin=arguments.file, keep_good=keep_good)


def run_import(arguments: argparse.Namespace) -> int:
    """Import the rows of a file."""
    if arguments.modules and arguments.kind is not None:
        raise InvalidInput("--modules and --kind exclude each other; the module list holds panels")
    try:
        report = _imported(arguments)
    except KeyboardInterrupt as stop:
        # The library reports if the rows are imported; otherwise it was stopped before or after.
        output.complain(str(stop) or "heatmatch catalog history lists the rows that were kept")
        raise
    say(
        f"added {report.added}, replaced {report.replaced}, removed {report.removed}, "
        f"unchanged {report.unchanged}, refused {len(report.refused)}"
    )
    for row in report.refused:
        say(results.wrap(f"  {row.reason}", "    "))
    return 0


def run_export(arguments: argparse.Namespace) -> int:
    """Writes the user's own rows, or the whole catalog, as JSON."""
    if arguments.file != "-":
        check_new_file(arguments.file, arguments)
    catalog = open_catalog(arguments.catalog)
    text = catalog.export_all_json_text() if arguments.all else catalog.export_json_text()
    if arguments.file == "-":
        print_json_text(text)
        return 0
    write_text(arguments.file, text, errors="replace", force=arguments.force)
    say(f"wrote {arguments.file}")
    return 0


def run_history(arguments: argparse.Namespace) -> int:
    """Lists the changes of the file."""
    entries = open_catalog(arguments.catalog).history()
    if not entries:
        say("no changes")
    for entry in entries:
        undone = " (undone)" if entry.undone else ""
        rows = f", {entry.rows} rows" if entry.rows > 1 else ""
        say(
            results.wrap(
                f"{entry.number:4d}  {entry.at_utc}  {entry.action}{rows}{undone}", "      "
            )
        )
    return 0


def run_undo(arguments: argparse.Namespace) -> int:
    """Undo the newest change, or the one with a number."""
    say(own_catalog(arguments).undo(arguments.number).action)
    return 0


def _add_actions(actions: Any) -> None:
    """Adds the actions of `heatmatch catalog`."""

    def action(name: str, run: Callable[[argparse.Namespace], int]) -> argparse.ArgumentParser:
        purpose, text, lines = ACTIONS[name]
        examples = [f"catalog {line}" for line in lines]
        parser = add_command(actions, name, purpose, run, text=text, examples=examples)
        add_options(parser, "--catalog")
        return parser

    def kind(parser: argparse.ArgumentParser, flag: str = "kind", **options: Any) -> None:
        options.setdefault("help", ", ".join(KINDS))
        parser.add_argument(flag, choices=KINDS, metavar="KIND", **options)

    listing = action("list", run_list)
    kind(listing, nargs="?")
    add_options(listing, "--units", "--json")
    show = action("show", run_show)
    kind(show)
    show.add_argument("id", metavar="ID", help="as printed by list")
    add_options(show, "--units", "--json")
    add = action("add", run_add)
    kind(add)
    add.add_argument("file", metavar="FILE.json", help="- for standard input")
    edit = action("edit", run_edit)
    kind(edit)
    edit.add_argument("id", metavar="ID", help="as printed by list")
    edit.add_argument("changes", nargs="+", metavar="FIELD=VALUE", help="empty after =: unknown")
    remove = action("remove", run_remove)
    kind(remove)
    remove.add_argument("id", metavar="ID", help="as printed by list")
    importing = action("import", run_import)
    importing.add_argument(
        "file", metavar="FILE", help="catalog JSON, or CSV with --kind or --modules"
    )
    kind(importing, "--kind", help="the file is CSV with this kind's fields")
    importing.add_argument(
        "--modules", action="store_true", help="the file is the public module-rating list"
    )
    importing.add_argument(
        "--keep-good", action="store_true", help="omit refused rows instead of refusing all"
    )
    export = action("export", run_export)
    export.add_argument("file", metavar="FILE.json", help="- for standard output")
    export.add_argument("--all", action="store_true", help="also the rows of the starter catalog")
    add_options(export, "--force")
    action("history", run_history)
    undo = action("undo", run_undo)
    undo.add_argument(
        "number", nargs="?", type=int, metavar="NUMBER", help="entry number from catalog history"
    )


def add_parsers(commands: Any) -> None:
    """Adds `heatmatch catalog ...` to the command line."""
    catalog = add_command(
        commands, "catalog", "list and edit the parts", run_list, text=HELP, examples=EXAMPLES
    )
    _add_actions(catalog.add_subparsers(dest="action", required=True, metavar="ACTION"))
