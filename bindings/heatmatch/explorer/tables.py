"""What the explorer shows as HTML: ranking, margins, kept choices. Every text is escaped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass

from heatmatch import _library as _core
from heatmatch.explorer.choice import Choice
from heatmatch.text.columns import clip
from heatmatch.text.duties import duties_html
from heatmatch.text.forms import bill_html, html_of, html_table, paragraphs
from heatmatch.text.plain import escape
from heatmatch.text.results import legend
from heatmatch.text.table import heads, shown, texts, with_short_names
from heatmatch.text.units import told

STYLE = """<style>
.hm-panel table {border-collapse: collapse; margin: 0 0 .6em 0; font-size: 13px;}
.hm-panel caption {text-align: left; padding: .3em 0; font-weight: 600; line-height: 1.35;}
.hm-panel td, .hm-panel th {padding: .15em .6em; border-bottom: 1px solid #d8cfc4;
  text-align: left; vertical-align: top; overflow-wrap: break-word; line-height: 1.3;}
.hm-panel p {margin: .2em 0; max-width: 60em; line-height: 1.35;}
.hm-panel ul {margin: .2em 0 .4em 0; padding-left: 1.4em; max-width: 60em; font-size: 12px;
  line-height: 1.3;}
.hm-panel .hm-small {font-size: 12px;}
.hm-panel :focus-visible {outline: 2px solid #1f5f5b; outline-offset: 1px;}
</style>"""


# Characters of names beside each other.
_SHORT = {"place": 40, "group": 30, "element": 40}


@dataclass(frozen=True)
class Kept:
    """A choice that was kept, with its results."""

    name: str
    place: str  #: name of the installation
    choice: Choice
    candidate: _core.Candidate


def panel(html: str) -> str:
    """HTML in the explorer's own look."""
    return f'<div class="hm-panel">{html}</div>'


def ranking_html(ranking: _core.Ranking, units: str) -> str:
    """The best of a ranking; the best rejected ones if all have a danger."""
    shown = ranking.candidates or ranking.rejected
    if not shown:
        said = [_core.reasons_sentence(ranking), _core.nothing_to_rank()]
        return panel(paragraphs(texts(said, units)))
    title = _core.shown_title(ranking)
    made = html_of(_core.ranking_table(shown), units, title, widths={1: 40, 3: 44})
    return panel(f'{made}<p class="hm-small">{escape(legend(ranking, units=units))}</p>')


def candidate_title(place: str, candidate: _core.Candidate) -> str:
    """A candidate in one line."""
    return f"{place} {with_short_names(_core.pairing_sentence(candidate.circuit), _SHORT)}"


def margins_html(candidate: _core.Candidate, units: str) -> str:
    """A candidate's margins, most severe first, its largest power, bill and code requirements."""
    made = html_of(_core.margins_table(candidate, source=False), units, widths={2: 60})
    advice = paragraphs(texts(candidate.advice().sentences, units))
    bill = bill_html(candidate.bill, units, texts(_core.bill_remarks(candidate), units))
    return panel(made + advice + bill + duties_html(candidate, units))


def kept_html(kept: Sequence[Kept], units: str) -> str:
    """The kept choices side by side: one column for each, one row for each number."""
    if not kept:
        return panel(paragraphs([_core.nothing_kept()]))
    made = _core.kept_table(
        [(one.name, one.place, one.candidate, asdict(one.choice)) for one in kept]
    )
    rows = [[shown(with_short_names(cell, _SHORT), units) for cell in row] for row in made.rows]
    header = [clip(text, 40) for text in heads(made, units)]
    return panel(html_table(header, rows, told(made.title, units)))
