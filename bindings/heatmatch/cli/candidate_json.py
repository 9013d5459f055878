"""Candidates as plain data for --json."""

from __future__ import annotations

from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.margin_json import margin_json, texts_in
from heatmatch.io import frames
from heatmatch.text.duties import checks_row
from heatmatch.text.units import told


def _bill_json(candidate: _core.Candidate, units: str) -> dict[str, Any]:
    """The bill as plain data; a total that is not known is null."""
    bill = candidate.bill
    names = ("currency", "low", "typical", "high", "complete", "budget", "within_budget")
    row: dict[str, Any] = {name: getattr(bill, name) for name in names}
    row["sentence"] = told(_core.bill_sentence(bill), units)
    row["lines"] = [
        {name: getattr(line, name) for name in frames.BILL_COLUMNS} | {"why": told(line.why, units)}
        for line in bill.lines
    ]
    row["remarks"] = [told(remark, units) for remark in _core.bill_remarks(candidate)]
    return row


def candidate_json(candidate: _core.Candidate, units: str) -> dict[str, Any]:
    """A candidate as plain data."""
    row = frames.candidate_row(candidate)
    row |= checks_row(candidate, units)
    row["bill"] = _bill_json(candidate, units)
    row["margins"] = [margin_json(margin, units) for margin in candidate.margins]
    told = {
        "advice": candidate.advice().sentences,
        "assumed": candidate.assumed,
        "remarks": candidate.remarks,
    }
    return row | texts_in(told, units, *told)
