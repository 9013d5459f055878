"""What the explorer shows as HTML: ranking, margins, kept choices. Every text is escaped."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass

from heatmatch import _library as _core
from heatmatch.explorer.choice import Choice, row_of
from heatmatch.text import look
from heatmatch.text.columns import clip
from heatmatch.text.duties import counts_html, duties_html
from heatmatch.text.first_screen import first_screen_html
from heatmatch.text.forms import bill_html, html_of, html_table, margins_of, paragraphs
from heatmatch.text.plain import escape
from heatmatch.text.results import legend
from heatmatch.text.table import heads, shown, texts, with_short_names
from heatmatch.text.units import told

STYLE = f"""<style>
.hm-explorer {{{look.variables(look.LIGHT)} max-width: 1240px;}}
.hm-columns {{align-items: stretch; height: calc(100vh - 130px); min-height: 560px;}}
.hm-controls {{flex: 0 0 auto; overflow: hidden auto;}}
.hm-results {{flex: 1 1 20em; min-width: 0; overflow: hidden; padding-left: 10px;}}
.hm-results > .jupyter-widgets {{min-height: 0; overflow: hidden auto;}}
.hm-results > .hm-first {{flex: 0 1 auto; max-height: 46%;}}
.hm-results > .hm-list {{flex: 0 0 26%; overflow: auto; border: solid var(--rule);
  border-width: 1px 0;}}
.hm-results > .hm-below {{flex: 1 1 0;}}
.hm-results .widget-html-content {{min-width: 0; max-width: 100%; overflow-x: auto;}}
.hm-below > .jupyter-widgets {{flex: 0 0 auto; max-width: 100%;}}
.hm-rows thead th {{position: sticky; top: 0; background: var(--jp-layout-color0, Canvas);}}
.hm-panel table, .hm-answer table {{border-collapse: collapse; margin: 0 0 .4em 0;
  font-size: 12px;}}
.hm-panel caption, .hm-answer caption {{text-align: left; padding: .2em 0; font-weight: 600;
  line-height: 1.3;}}
.hm-panel td, .hm-panel th, .hm-answer td, .hm-answer th {{padding: .1em .6em .1em 0;
  border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top;
  overflow-wrap: break-word; line-height: 1.3;}}
.hm-answer th {{white-space: nowrap; font-size: 11px;}}
.hm-answer p {{margin: 0; line-height: 1.3;}}
.hm-panel p {{margin: .2em 0; max-width: 60em; line-height: 1.35;}}
.hm-panel ul {{margin: .2em 0 .4em 0; padding-left: 1.4em; max-width: 60em; font-size: 12px;
  line-height: 1.3;}}
.hm-panel .hm-small, .hm-panel summary {{font-size: 12px;}}
.hm-rows tbody tr {{cursor: pointer;}}
.hm-rows tbody tr:hover, .hm-rows tbody tr.hm-chosen {{background: var(--faint);
  color: var(--ink);}}
.hm-rows tbody tr.hm-chosen td {{font-weight: 600;}}
.hm-explorer :focus-visible {{outline: 2px solid {look.HEAT}; outline-offset: 1px;}}
@media (max-width: 900px) {{
  .hm-columns {{flex-flow: row wrap; height: auto;}}
  .hm-explorer, .hm-controls, .hm-results {{min-width: 0; width: 100%; max-width: 100%;
    box-sizing: border-box; margin: 0;}}
  .hm-controls, .hm-results {{flex: 1 1 100%;}} 
  .hm-controls {{overflow: auto hidden; order: 1;}}
  .hm-results > .jupyter-widgets {{width: auto; max-width: 100%; margin: 0;}}
  .hm-results {{padding-left: 0;}}
  .hm-results > .hm-first, .hm-results > .hm-list {{flex: 0 0 auto; max-height: none;}}
}}
@media print {{.hm-columns {{height: auto;}}}}
</style>"""
# Where the widgets live, the static form is not needed.
LIVE = "<style>.hm-static {display: none;}</style>"


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


def answer_html(ranking: _core.Ranking, chosen: _core.Candidate | None, units: str) -> str:
    """The first screen of a ranking, or of the candidate that was chosen."""
    if chosen is None and not ranking.candidates and not ranking.rejected:
        return ""
    made = first_screen_html(ranking if chosen is None else chosen, units=units)
    return f'<div class="hm-answer" style="font-size:12px">{made}</div>'


def unchecked_html(candidate: _core.Candidate, units: str) -> str:
    """Counts of checks; those that were not made are listed under them."""
    said = escape(told(_core.counts_sentence(candidate), units))
    return (
        f"<details><summary>{said}</summary>{counts_html(candidate, units, counts=False)}</details>"
    )


def ranking_html(ranking: _core.Ranking, units: str, chosen: _core.Candidate | None = None) -> str:
    """The best of a ranking; the best rejected ones if all have a danger. One row is marked."""
    shown = ranking.candidates or ranking.rejected
    if not shown:
        said = [_core.reasons_sentence(ranking), _core.nothing_to_rank()]
        return panel(paragraphs(texts(said, units)))
    title = _core.shown_title(ranking)
    made_of = _core.marked_table(ranking, len(shown), share=False)
    if len(made_of.rows) != len(shown):  # the recommended circuit is not among them
        made_of = _core.ranking_table(shown, share=False)
    made = html_of(made_of, units, "", widths={1: 40, 3: 44})
    keys = [row_of(one) for one in shown]
    if chosen is not None and row_of(chosen) in keys:
        before, body = made.split("<tbody>", 1)
        rows = body.split("<tr>")
        place = 1 + keys.index(row_of(chosen))
        rows[place] = f'class="hm-chosen">{rows[place]}'
        body = "<tr>".join(rows[:place]) + "<tr " + "<tr>".join(rows[place:])
        made = f"{before}<tbody>{body}"
    mark = escape(told(made_of.columns[0].head, units))
    what = escape(legend(ranking, units=units, share=False))
    more = f"<p>{escape(told(title, units))}</p><p>{what}</p>"
    meaning = f"<details><summary>{mark} …</summary>{more}</details>"
    return panel(f'<div class="hm-rows">{made}</div>{meaning}')


def candidate_title(place: str, candidate: _core.Candidate) -> str:
    """A candidate in one line."""
    return f"{place} {with_short_names(_core.pairing_sentence(candidate.circuit), _SHORT)}"


def margins_html(candidate: _core.Candidate, units: str) -> str:
    """A candidate's margins, most severe first, its largest power, bill and code requirements."""
    made = margins_of(candidate, units, source=False, widths={2: 60})
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
