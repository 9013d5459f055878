"""The HTML forms of rankings and candidates."""

from __future__ import annotations

import html.parser
from collections.abc import Callable
from typing import Any

import heatmatch as hm
from heatmatch import _library as _core
from heatmatch.text import forms
from heatmatch.text.plain import plain_line

TAGS = {
    "table",
    "caption",
    "thead",
    "tbody",
    "tr",
    "th",
    "td",
    "p",
    "ul",
    "li",
    "div",
    "span",
    "details",
    "summary",
}


class Page(html.parser.HTMLParser):
    """Collects tags and the text of cells and items, and fails on tags that do not match."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: set[str] = set()
        self.cells: list[str] = []
        self.items: list[str] = []
        self.feed(text)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: Any) -> None:
        self.open.append(tag)
        self.tags.add(tag)
        if tag == "td":
            self.cells.append("")
        if tag == "li":
            self.items.append("")

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if "td" in self.open:
            self.cells[-1] += data
        if "li" in self.open:
            self.items[-1] += data


def test_an_empty_ranking_is_a_table(starter: hm.Catalog, demo: hm.Installation) -> None:
    assert "<table>" in hm.rank(starter, demo, top=0)._repr_html_()


def test_odd_group_names_do_no_harm(odd_group: str, ranked: Callable[..., hm.Ranking]) -> None:
    ranking = ranked(odd_group, "cdte-100", 2, [{"element": "tubular-1000-120", "count": 1}])
    for page in (Page(ranking._repr_html_()), Page(ranking[0]._repr_html_())):
        assert page.tags <= TAGS
    cells = Page(ranking[0]._repr_html_()).cells
    assert any(f'group "{plain_line(odd_group)}"' in cell for cell in cells)


def test_a_ranking_has_a_row_for_each_of_its_first_ten(demo_ranking: hm.Ranking) -> None:
    cells = Page(demo_ranking._repr_html_()).cells[-10 * 11 :]  # below the first screen
    for number, candidate in enumerate(demo_ranking.candidates[:10]):
        # A page has room for names that text of 80 columns cuts.
        owned, bank = cells[11 * number + 1], cells[11 * number + 3]
        assert owned == f"{candidate.circuit.owned.group} {candidate.circuit.panels}"
        alike = f" +{candidate.like_it}" if candidate.like_it else ""
        assert bank == f"{candidate.circuit.element.id} {candidate.circuit.bank}{alike}"
        sheath, load = cells[11 * number + 9 : 11 * number + 11]
        limit = candidate.circuit.sheath.verdict_limit_c
        assert sheath == f"{candidate.heat.sheath_c:.0f}/{limit:.0f}"
        assert load == f"{candidate.heat.w_per_cm:.2f}"


def test_a_candidate_has_its_power_margins_and_assumptions(standing: hm.Candidate) -> None:
    page = Page(standing._repr_html_())
    months = 3 * 13
    powers = 8 * len(standing.delivered)
    heat = 6 * 10  # sheath, six more of its margins, bed, wall, lid
    duties = 8 * len(standing.code_duties())
    bill = 8 * len(standing.bill.lines)
    rest = 6 * len(standing.margins) + duties + bill
    assert len(page.cells) == months + powers + heat + rest
    assert page.cells[0] == "kWh/day"
    assert page.cells[1] == f"{standing.season.kwh_per_day[0]:.2f}"
    band = standing.heat.sheath_band
    shown = (band.low_c, band.typical_c, band.high_c, standing.heat.sheath_c)
    at_heat = page.cells[months + powers :]
    assert at_heat[:5] == ["sheath", *(f"{celsius:.0f}" for celsius in shown)]
    assert at_heat[heat].split(" ", 1)[1] == standing.severity
    assert {margin.sentence() for margin in standing.margins} <= set(page.cells)
    not_checked = [line.text("si") for line in _core.not_checked_lines(standing)]
    assert page.items == [*not_checked, *standing.assumed]


def test_a_candidate_without_a_store_has_no_table_of_heat(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    bare = hm.assess(starter, changed_demo(lambda plain: plain.pop("store")))
    page = bare._repr_html_()
    assert "No store is described." in page
    assert "temperatures in the store" not in page


def test_texts_are_escaped() -> None:
    page = Page(forms.html_table(("<a>",), [("<b>",)], "<c>"))
    assert page.cells == ["<b>"]
