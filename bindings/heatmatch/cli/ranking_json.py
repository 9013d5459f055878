"""A ranking as plain data, and its table as a file."""

from __future__ import annotations

import argparse
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.candidate_json import candidate_json
from heatmatch.cli.output import write_csv
from heatmatch.io import frames
from heatmatch.text.units import told


def ranking_json(
    arguments: argparse.Namespace, rows: int, ranking: _core.Ranking
) -> dict[str, Any]:
    """A ranking with its first rows as plain data."""
    return {
        "evaluated": ranking.evaluated,
        "reasons": ranking.reasons,
        "recommended": None
        if ranking.recommended is None
        else candidate_json(ranking.recommended, arguments.units),
        "alternatives": {
            kind: frames.candidate_row(each) for kind, each in ranking.alternatives.items()
        },
        "lacking": told(ranking.lacking, arguments.units),
        "remarks": [told(remark, arguments.units) for remark in ranking.remarks],
        "candidates": [candidate_json(candidate, arguments.units) for candidate in ranking[:rows]],
        "pareto": [frames.candidate_row(candidate) for candidate in ranking.pareto],
    }


def write_table(path: str, shown: list[_core.Candidate], *, force: bool) -> None:
    """Write candidates as CSV, one row each."""
    rows = [frames.candidate_row(candidate) for candidate in shown]
    names = list(dict.fromkeys(name for row in rows for name in row))
    write_csv(path, names, ([row.get(name) for name in names] for row in rows), force=force)
