"""What the help of `heatmatch catalog` says: action -> purpose, what goes in and out, examples."""

from __future__ import annotations

HELP = """\
The starter catalog holds panels, elements, wires and what they are made of,
each number with its source. It is read-only: your own parts and changes go to
a file of yours over it, named by --catalog FILE or by HEATMATCH_CATALOG; it is
made by the first add, edit or import.
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
        "Out comes a table with the ids that installations name; * marks your own.",
        ("list", "list wire --units us", f"list panel {OWN} --json"),
    ),
    "show": (
        "show one part",
        "Out come all fields that are known, and where each number is from.",
        ("show panel cdte-100", "show wire silicone-14-awg --units us"),
    ),
    "add": (
        "add a part from a JSON object",
        "In goes one part, as show --json prints one; numbers may carry a unit.",
        (f"add element rod.json {OWN}",),
    ),
    "edit": (
        "change fields of a part",
        "In go fields with new values; numbers may carry a unit. Changing a part of\n"
        "the starter makes it your own. What others change in other fields at the same\n"
        "time stays. undo takes the change back.",
        (
            f'edit element my-rod "rated_w=1 kW" {OWN}',
            f"edit wire my-wire area_mm2=3.31 {OWN}",
        ),
    ),
    "remove": (
        "remove a part",
        "What other parts need is not removed. undo brings it back.",
        (f"remove element my-rod {OWN}",),
    ),
    "import": (
        "put the rows of a file in",
        "In goes what export wrote, or CSV whose header names the fields of one kind,\n"
        "or the public module-rating list. Out come counts, and why rows are refused.",
        (f"import parts.json {OWN}", f"import panels.csv --kind panel {OWN}"),
    ),
    "export": (
        "write your own rows as JSON",
        "Out comes a file that import takes. A file that exists is replaced with\n"
        "--force only, a catalog never.",
        (f"export parts.json {OWN}", "export - --all"),
    ),
    "history": (
        "list the changes of your file",
        "Out comes every change with its number and time (UTC).",
        (f"history {OWN}",),
    ),
    "undo": (
        "take back the newest change, or one",
        "Done again, it takes back the one before; with a number, that change and\n"
        "none twice, which is how to try again where it was not known to be kept.",
        (f"undo {OWN}", f"undo 12 {OWN}"),
    ),
}
