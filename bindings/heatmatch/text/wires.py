"""The checks of a circuit's wires as text of 80 columns."""

from __future__ import annotations

from collections.abc import Sequence

from heatmatch import _library as _core
from heatmatch.text.columns import wrap
from heatmatch.text.look import signalled
from heatmatch.text.table import shown, table_text, wrapped
from heatmatch.text.units import listed

_WIDTHS = (14, 16, 8, 5, 7, 7, 6, -10)


def wires_text(
    candidate: _core.Candidate, checks: Sequence[_core.WireCheck], *, units: str = "si"
) -> str:
    """The runs of a circuit as a table, then each with its severity, reason and remedy."""
    made = _core.wires_table(candidate.circuit, checks)
    lines = [table_text(made, _WIDTHS, units), "", *wrapped(made.legend, units), ""]
    for reason, remedies in _core.wire_lines(checks, candidate.circuit):
        lines.append(wrap(signalled(shown(reason, units))))
        lines += [wrap(f"  {shown(remedy, units)}", "    ") for remedy in remedies]
    assumed = dict.fromkeys(text for check in checks for text in check.assumed)
    return "\n".join([*lines, *listed("assumed:", assumed, units)])
