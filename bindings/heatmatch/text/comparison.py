"""Two rankings side by side, as text of 80 columns and as HTML."""

from __future__ import annotations

from heatmatch import _library as _core
from heatmatch.io.rankings import RankingComparison
from heatmatch.text.forms import html_table, paragraphs
from heatmatch.text.sentence import Sentence
from heatmatch.text.table import heads, shown, table_text, with_short_names, wrapped

# Where a place is a danger, its word uses part of the width of the elements.
_WIDTHS = (3, 4, 15, 25, 5, 5, 6, 4, 5)
_WIDTHS_OF_DANGER = (6, 6, 15, 20, 5, 5, 6, 4, 5)
# Characters of names in sentences and of margins in cells.
_SHORT = {"group": 40, "margin": 60, "after": 60, "before": 60, "currency": 10}
_SHORT_IN_THE_MIDDLE = {"element": 40}


def _short(sentence: Sentence) -> Sentence:
    return with_short_names(sentence, _SHORT, _SHORT_IN_THE_MIDDLE)


def comparison_text(comparison: RankingComparison) -> str:
    """A comparison as text."""
    made = _core.comparison_table(comparison, margins=False)
    dangers = [_short(one) for one in _core.comparison_dangers(comparison)]
    return "\n".join(
        [
            *wrapped([_short(made.title)]),
            "",
            table_text(made, _WIDTHS_OF_DANGER if dangers else _WIDTHS),
            "",
            *wrapped([*dangers, *(_short(one) for one in made.legend)]),
        ]
    )


def comparison_html(comparison: RankingComparison) -> str:
    """A comparison as an HTML table; every text is escaped."""
    made = _core.comparison_table(comparison)
    rows = [[shown(_short_cell(cell), width=120) for cell in row] for row in made.rows]
    legend = paragraphs(_short(one) for one in made.legend)
    return html_table(heads(made), rows, _short(made.title)) + legend


def _short_cell(cell: Sentence) -> Sentence:
    return with_short_names(cell, {"margin": 60})
