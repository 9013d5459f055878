"""Write the files generated from the field tables: stubs and the two glossaries.

Run it after a field or a binding has changed: .venv/bin/python bindings/generate.py
"""

from __future__ import annotations

import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
# The installed package has the compiled part; its sources beside this file do not.
sys.path[:] = [path for path in sys.path if Path(path).resolve() != HERE]

from heatmatch import _core, choices  # noqa: E402

TYPES = {
    0: "str", 1: "str", 2: "str", 3: "str", 4: "float", 5: "int", 6: "bool",
    7: "list[float]", 8: "list[str]", 9: "list[dict[str, float]]", 10: "dict[str, float]",
    11: "dict[str, str]",
}  # fmt: skip
# Argument types of a constructor: numbers also as text with a unit.
GIVEN = TYPES | {
    4: "float | str", 5: "int | str", 9: "list[dict[str, Any]]", 10: "dict[str, Any]",
}  # fmt: skip
CHOICES = {tuple(words): f"_choices.{name}" for name, (_, words) in _core.choices().items()}
EXTRA = {
    "panel": "    def listed_diode(self) -> SingleDiode: ...\n",
    "element": "    @property\n    def watt_density_w_cm2(self) -> float | None: ...\n",
    "wire": (
        "    def resistance_ohm_per_m(self, *, temperature_c: float = ...) -> float: ...\n"
        "    @property\n    def conductor_limit_c(self) -> float: ...\n"
    ),
    "control": (
        "    def breaking_current_a(self, *, voltage_v: float, poles: int = ...)"
        " -> float | None: ...\n"
    ),
}


def part_class(kind: str, fields: list[dict]) -> str:
    """The stub of one kind of part."""
    name = kind.capitalize()
    lines = [f"class {name}(metaclass=_Meta):\n"]
    lines.append("    kind: ClassVar[str]\n")
    arguments = "".join(
        f"        {f['name']}: {GIVEN[f['kind']]}"
        + (",\n" if f["required"] else " | None = ...,\n")
        for f in sorted(fields, key=lambda field: not field["required"])
    )
    lines.append(f"    def __init__(\n        self,\n        *,\n{arguments}    ) -> None: ...\n")
    for field in fields:
        held = CHOICES.get(tuple(field["words"]), TYPES[field["kind"]])
        kind_text = held + ("" if field["required"] else " | None")
        lines.append(f"    @property\n    def {field['name']}(self) -> {kind_text}: ...\n")
    lines.append(EXTRA.get(kind, ""))
    changes = "".join(f"        {f['name']}: {GIVEN[f['kind']]} | None = ...,\n" for f in fields)
    lines.append(f"    def replace(\n        self,\n        *,\n{changes}    ) -> {name}: ...\n")
    lines.append(
        "    def to_dict(self) -> dict[str, Any]: ...\n"
        "    def to_json(self) -> str: ...\n"
        "    @staticmethod\n"
        f"    def from_json(text: str, /) -> {name}: ...\n"
        "    def _repr_html_(self) -> str: ...\n"
        "    def __eq__(self, other: object) -> bool: ...\n"
        "    __hash__: ClassVar[None]  # type: ignore[assignment]\n\n"
    )
    return "".join(lines)


def stubs() -> str:
    """The whole stub file."""
    parts = "".join(part_class(kind, fields) for kind, fields in _core.glossary().items())
    fixed = (HERE / "core_stubs.txt").read_text(encoding="utf-8")
    return fixed.replace("# PARTS\n", parts)


def choice_stubs() -> str:
    """The stub of heatmatch/choices.py."""
    lines = [
        "# Written by bindings/generate.py from the words of the library.\n"
        "import enum\n\n"
        "from typing_extensions import Self\n\n"
        "class Choice(str, enum.Enum):  # type: ignore[misc]\n"
        "    def __new__(cls, value: object) -> Self: ...\n\n"
        "def member_name(word: str) -> str: ...\n"
    ]
    for name, (_, words) in _core.choices().items():
        lines.append(f"\nclass {name}(Choice):\n")
        lines += [f'    {choices.member_name(word)} = "{word}"\n' for word in words]
    return "".join(lines)


KIND_NAMES = {
    0: "text", 1: "word", 2: "id", 3: "id of another part", 4: "number", 5: "whole number",
    6: "true or false", 7: "list of numbers", 8: "list of texts", 9: "list of records",
    10: "record", 11: "texts by field",
}  # fmt: skip


def cell(text: str) -> str:
    """A text as the content of a table cell."""
    return text.replace("|", "\\|").replace("\n", " ")


def field_row(field: dict) -> str:
    """One line of the glossary."""
    name = f"**{field['name']}**" if field["required"] else field["name"]
    allowed = field["range"]
    if field["words"]:
        allowed = ", ".join(f"`{word}`" for word in field["words"])
    elif field["columns"]:
        allowed = ", ".join(f"`{n}`" + (f" [{u}]" if u else "") for n, u, _ in field["columns"])
    elif field["refers_to"]:
        kind = field["refers_to"]
        allowed = f"{'an' if kind[0] in 'aeiou' else 'a'} {kind}"
    cells = (
        name,
        field["unit"],
        KIND_NAMES[field["kind"]],
        allowed,
        field["meaning"],
        field["careful"],
    )
    return "| " + " | ".join(cell(text) for text in cells) + " |\n"


def table_head(title: str) -> str:
    """Heading of a table of fields."""
    heads = ("field", "unit", "holds", "allowed", "meaning", "unstated, at worst")
    return f"\n## {title}\n\n| " + " | ".join(heads) + " |\n" + "|---" * len(heads) + "|\n"


def glossary() -> str:
    """The whole of catalog/README.md."""
    parts = [(HERE / "catalog_readme.txt").read_text(encoding="utf-8")]
    for kind, fields in _core.glossary().items():
        parts.append(table_head(kind))
        parts += [field_row(field) for field in fields]
    return "".join(parts)


def installation_page() -> str:
    """The whole of notebooks/data/README.md."""
    parts = [(HERE / "installation_readme.txt").read_text(encoding="utf-8")]
    for place, fields in _core.installation_glossary().items():
        parts.append(table_head(place))
        parts += [field_row(field) for field in fields]
    return "".join(parts)


if __name__ == "__main__":
    (HERE / "heatmatch" / "_core.pyi").write_text(stubs(), encoding="utf-8")
    (HERE / "heatmatch" / "choices.pyi").write_text(choice_stubs(), encoding="utf-8")
    (HERE.parent / "catalog" / "README.md").write_text(glossary(), encoding="utf-8")
    data = HERE.parent / "notebooks" / "data"
    (data / "README.md").write_text(installation_page(), encoding="utf-8")
