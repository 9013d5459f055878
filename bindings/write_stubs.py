"""Writes heatmatch/_core.pyi: the part classes from the field tables, the rest from below.

Run it after a field or a binding has changed: python bindings/write_stubs.py
"""

from __future__ import annotations

from pathlib import Path

from heatmatch import _core

HERE = Path(__file__).parent
TYPES = {
    0: "str", 1: "str", 2: "str", 3: "str", 4: "float", 5: "int", 6: "bool",
    7: "list[float]", 8: "list[str]", 9: "list[dict[str, float]]", 10: "dict[str, float]",
    11: "dict[str, str]",
}  # fmt: skip
# What a constructor takes: numbers also as text with a unit.
GIVEN = TYPES | {
    4: "float | str", 5: "int | str", 9: "list[dict[str, Any]]", 10: "dict[str, Any]",
}  # fmt: skip
EXTRA = {
    "panel": "    def listed_diode(self) -> SingleDiode: ...\n",
    "element": "    @property\n    def watt_density_w_cm2(self) -> float | None: ...\n",
    "wire": (
        "    def resistance_ohm_per_m(self, temperature_c: float = ...) -> float: ...\n"
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
        kind_text = TYPES[field["kind"]] + ("" if field["required"] else " | None")
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


if __name__ == "__main__":
    (HERE / "heatmatch" / "_core.pyi").write_text(stubs(), encoding="utf-8")
