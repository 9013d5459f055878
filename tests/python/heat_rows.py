"""Rows of the reference files of heat: what is given, what is expected, how close."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from pathlib import Path

REFERENCE = Path(__file__).resolve().parents[1] / "reference"
COLUMNS = ["case", "quantity", "inputs", "expected", "unit", "tolerance", "source"]


@dataclass(frozen=True)
class Row:
    """One reference row; `kind` of its tolerance is rel, abs or rise (over `Ta_C`)."""

    case: str
    quantity: str
    inputs: dict[str, float]
    expected: float
    unit: str
    kind: str
    tolerance: float
    source: str

    @property
    def allowed(self) -> float:
        """How far a value may lie from the expected one, in its unit."""
        if self.kind == "abs":
            return self.tolerance
        if self.kind == "rise":
            return self.tolerance * abs(self.expected - self.inputs["Ta_C"])
        assert self.kind == "rel", self.kind
        return self.tolerance * abs(self.expected)


def reference_rows(name: str) -> list[Row]:
    """All rows of a file of tests/reference, in its order."""
    text = (REFERENCE / name).read_text(encoding="utf-8")
    lines = csv.reader(line for line in text.splitlines() if not line.startswith("#"))
    assert next(lines) == COLUMNS
    rows = []
    for case, quantity, inputs, expected, unit, tolerance, source in lines:
        pairs = (pair.split("=") for pair in inputs.split(";"))
        given = {key: float(value) for key, value in pairs}
        kind, size = tolerance.split()
        rows.append(Row(case, quantity, given, float(expected), unit, kind, float(size), source))
    return rows
