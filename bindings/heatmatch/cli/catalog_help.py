"""Help of `heatmatch catalog`: action -> purpose, input and output, examples."""

from __future__ import annotations

HELP = """\
The starter catalog holds panels, elements, wires and their materials, each
number with its source. It is read-only. Your own parts and changes are kept in
a file named by --catalog FILE or by HEATMATCH_CATALOG. The first add, edit or
import creates it.
"""
EXAMPLES = (
    "catalog list",
    "catalog show element storage-rod-1000-240",
    "catalog add element rod.json --catalog mine.heatmatch",
    "rank demo.json --catalog mine.heatmatch",
)
OWN = "--catalog mine.heatmatch"
ACTIONS: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "list": (
        "list the parts of a kind, or count all",
        "Prints the ids used by installations, ohms or main values, price and\n"
        "label; * marks your own.",
        ("list", "list wire --units us", f"list panel {OWN} --json"),
    ),
    "show": (
        "show one part",
        "Prints all known fields, and the source of each number.",
        ("show panel cdte-100", "show wire silicone-14-awg --units us"),
    ),
    "add": (
        "add a part from a JSON object",
        "Input: one part, as printed by show --json; numbers may have a unit.",
        (f"add element rod.json {OWN}",),
    ),
    "edit": (
        "change fields of a part",
        "Input: fields with new values; numbers may have a unit. Changing a part of\n"
        "the starter makes it your own. Changes that others make to other fields at\n"
        "the same time are kept. undo reverses the change.",
        (
            f'edit element my-rod "rated_w=1 kW" {OWN}',
            f"edit wire my-wire area_mm2=3.31 {OWN}",
        ),
    ),
    "remove": (
        "remove a part",
        "A part that other parts need is not removed. undo restores it.",
        (f"remove element my-rod {OWN}",),
    ),
    "import": (
        "import the rows of a file",
        "Input: a file written by export, CSV whose header names the fields of a kind,\n"
        "or the public module-rating list. Prints counts, and why rows are refused.",
        (f"import parts.json {OWN}", f"import panels.csv --kind panel {OWN}"),
    ),
    "export": (
        "write your own rows as JSON",
        "Writes a file that import can read. An existing file is replaced only with\n"
        "--force; a catalog is never replaced.",
        (f"export parts.json {OWN}", "export - --all"),
    ),
    "history": (
        "list the changes of your file",
        "Prints every change with its number and time (UTC).",
        (f"history {OWN}",),
    ),
    "undo": (
        "undo the newest change, or a given one",
        "Run again, it undoes the change before that. With a number it undoes that\n"
        "change once only: a retry when it is unknown whether an undo was saved.",
        (f"undo {OWN}", f"undo 12 {OWN}"),
    ),
}
