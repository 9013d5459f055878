"""Plots to choose by: map of hook-ups, trade-offs, margins, diagram; they show what was ranked."""

from __future__ import annotations

import warnings
from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import _library as _core
from heatmatch import plot
from heatmatch.text import look

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")
backend_bases = pytest.importorskip("matplotlib.backend_bases")


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.fixture(scope="module")
def whole(starter: hm.Catalog, demo: hm.Installation) -> hm.Ranking:
    return hm.rank(starter, demo, top=2000, keep_rejected=5000)


def words(ax: Any) -> list[str]:
    return [text.get_text() for text in ax.texts]


def draw(ax: Any) -> None:
    """Draws all of it; glyphs that the font lacks are boxes."""
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", "Glyph .* missing")
        ax.figure.canvas.draw()


def test_the_map_has_the_best_bank_of_every_element_and_hookup(whole: hm.Ranking) -> None:
    ax = plot.hookup_map(whole)
    rows = [label.get_text() for label in ax.get_yticklabels()]
    columns = [label.get_text() for label in ax.get_xticklabels()]
    assert len(rows) == len({c.circuit.element.id for c in [*whole, *whole.rejected]})
    cell = {(round(t.get_position()[0]), round(t.get_position()[1])): t for t in ax.texts}
    for element, hookup in ((rows[0], columns[0]), (rows[3], columns[2]), (rows[5], columns[-1])):

        def here(candidates: Any, one: tuple[str, str] = (element, hookup)) -> list[Any]:
            return [
                c
                for c in candidates
                if (c.circuit.element.id, f"{c.circuit.owned.group} {c.circuit.panels}") == one
            ]

        shown = cell[(columns.index(hookup), rows.index(element))].get_text()
        good = here(whole)
        best = max(good or here(whole.rejected), key=lambda c: c.season.kwh)
        number = f"{best.season.kwh:.0f}" if good else f"▲ {best.season.kwh:.0f}"
        assert shown == f"{number}\n{best.circuit.bank}"
    dangers = [text for text in ax.texts if text.get_text().startswith("▲")]
    assert 0 < len(dangers) < len(cell)
    assert {text.get_color() for text in dangers} == {look.SIGNALS["danger"].fill}


def test_a_ranking_that_kept_little_says_so(starter: hm.Catalog, demo: hm.Installation) -> None:
    ax = plot.hookup_map(hm.rank(starter, demo, top=5, keep_rejected=5))
    assert "10 of 1470 pairings were kept" in ax.get_xlabel()
    everything = hm.rank(starter, demo, top=2000, keep_rejected=5000, fold=False)
    assert "were kept" not in plot.hookup_map(everything).get_xlabel()
    with pytest.raises(hm.InvalidInput, match="candidates = none must be at least one"):
        plot.hookup_map(hm.rank(starter, demo, top=0, keep_rejected=0))


def test_the_front_is_numbered_as_ranked(demo_ranking: hm.Ranking) -> None:
    ax = plot.pareto(demo_ranking)
    front = demo_ranking.pareto
    numbers = [t for t in ax.texts if t.get_text().split(":")[0].isdigit()]
    assert 2 <= len(numbers) <= 12
    assert len(numbers) == min(12, len(front))
    for text in numbers:
        one = front[int(text.get_text().split(":")[0]) - 1]
        assert text.get_text().endswith(f": {one.price_to_buy:.0f} USD")
        assert text.xy == pytest.approx((one.smallest_headroom, one.season.kwh))
    listed = next(text for text in words(ax) if text.count("\n") >= len(numbers) - 1)
    for line in listed.splitlines()[: len(numbers)]:
        one = front[int(line.split()[0]) - 1]
        assert f"{one.price_to_buy:.0f} {one.currency}" in line
    larger = [c.get_sizes()[0] for c in ax.collections[1 : 1 + len(front)]]
    prices = [one.price_to_buy for one in front]
    assert np.argmax(larger) == np.argmax(prices)


def test_labels_of_the_front_do_not_cover_each_other(whole: hm.Ranking) -> None:
    ax = plot.pareto(whole)
    draw(ax)
    labels = [t for t in ax.texts if t.get_text().split(":")[0].isdigit()]
    boxes = [matplotlib.text.Text.get_window_extent(t).padded(-1.0) for t in labels]
    assert len(boxes) > 5
    for i, one in enumerate(boxes):
        assert not any(one.overlaps(other) for other in boxes[:i])


def test_an_unknown_price_is_an_open_marker_with_a_question_mark(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def change(plain: dict[str, Any]) -> None:
        plain["elements"] = [{"any": {"family": ["oven lower"]}, "count": 4}]
        del plain["goals"]["budget"], plain["circuit"]
        unpriced = starter.elements["oven-lower-1200-230"].to_dict() | {
            "id": "found-one",
            "rated_w": 700.0,
        }
        plain["parts"] = {"elements": [{k: v for k, v in unpriced.items() if "price" not in k}]}

    ranking = hm.rank(starter, changed_demo(change))
    front = ranking.pareto
    unknown = [one.price_to_buy is None for one in front]
    assert 0 < sum(unknown) < len(front)
    ax = plot.pareto(ranking)
    labels = [text for text in words(ax) if text.split(":")[0].isdigit()]
    shown = {int(text.split(":")[0]) - 1: "?" in text for text in labels}
    assert shown == {place: unknown[place] for place in shown}
    white = [1.0, 1.0, 1.0, 1.0]
    markers = ax.collections[1 : 1 + len(front)]
    assert [marker.get_facecolor()[0].tolist() == white for marker in markers] == unknown


def test_the_pointer_tells_what_it_is_over(demo_ranking: hm.Ranking) -> None:
    ax = plot.pareto(demo_ranking)
    draw(ax)
    best = demo_ranking[0]
    note = next(t for t in ax.texts if not t.get_visible())

    def point(x: float, y: float) -> None:
        pixels = ax.transData.transform((x, y))
        canvas = ax.figure.canvas
        event = backend_bases.MouseEvent("motion_notify_event", canvas, *pixels)
        canvas.callbacks.process("motion_notify_event", event)

    point(best.smallest_headroom, best.season.kwh)
    assert note.get_visible()
    assert f"{best.season.kwh:.0f} kWh of the season" in note.get_text()
    assert best.circuit.bank in note.get_text()
    point(best.smallest_headroom + 0.06, best.season.kwh + 8)
    assert not note.get_visible()


def test_margins_are_bars_up_to_their_limit(standing: hm.Candidate) -> None:
    ax = plot.margins(standing)
    labels = [label.get_text() for label in ax.get_yticklabels()]
    by_row = {round(bar.get_y() + bar.get_height() / 2): bar for bar in ax.patches}
    for name in ("touch voltage", "sheath temperature", "hot tail insulation"):
        row = next(
            i
            for i, label in enumerate(labels)
            if label.split(" +")[0].lstrip("▲△◆ ") == _core.shown_margin_name(name)
        )
        worst = min(m.headroom for m in standing.margins if m.name == name)
        assert by_row[row].get_width() == pytest.approx(max(worst, -1.0))
    warned = next(i for i, label in enumerate(labels) if label.startswith("△ touch voltage"))
    assert by_row[warned].get_hatch()
    assert matplotlib.colors.to_hex(by_row[warned].get_facecolor()) == look.SIGNALS["warning"].fill
    unknown = {m.name for m in standing.margins if m.severity == "not assessed"}
    assert words(ax).count("not assessed") == len(unknown)
    assert {_core.shown_margin_name(name) for name in unknown} <= {
        label.split(" +")[0].removeprefix("? ") for label in labels
    }
    sheath = next(m for m in standing.margins if m.name == "sheath temperature")
    assert f"{sheath.value:.0f} / 760 °C" in words(ax)
    every = {m.name for m in standing.margins if m.severity != "not assessed"}
    told = [int(word) for word in ax.get_xlabel().split() if word.isdigit() and int(word) > 1]
    assert sum(told) == len(every) + len(unknown) - len(labels)
    assert "have no number" in ax.get_xlabel()
    assert any("°F" in text for text in words(plot.margins(standing, units="us")))


def test_odd_names_are_drawn_as_they_are(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation], odd_group: str
) -> None:
    def rename(plain: dict[str, Any]) -> None:
        plain["panels"][0]["group"] = plain["circuit"]["group"] = odd_group + " $x_1$"

    installation = changed_demo(rename)
    ranking = hm.rank(starter, installation, group=odd_group + " $x_1$", top=5)
    standing = hm.assess(starter, installation)
    weather = hm.Weather.from_installation(installation)
    for ax in (
        plot.hookup_map(ranking),
        plot.pareto(ranking),
        plot.margins(standing),
        plot.hookup_diagram(standing),
        plot.day_power(standing, weather),
        plot.month_by_hour(standing, weather),
    ):
        draw(ax)
        assert all(len(text) < 600 for text in [*words(ax), ax.get_title()])
        plt.close("all")


def test_what_has_no_known_heat_is_not_drawn_as_far_from_its_limit(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def change(plain: dict[str, Any], families: list[str]) -> None:
        plain["elements"] = [{"any": {"family": ["oven lower"]}, "count": 2}]
        part = starter.elements["oven-lower-1200-230"].to_dict() | {"id": "found-one"}
        del part["heated_length_mm"]
        plain["parts"] = {"elements": [part]}
        if not families:
            plain["elements"] = [{"element": "found-one", "count": 2}]

    mixed = hm.rank(starter, changed_demo(lambda plain: change(plain, ["oven lower"])))
    unknown = [one for one in mixed if one.heat_unknown]
    assert unknown
    assert not any(one.heat_unknown for one in mixed.pareto)
    assert all(row[7] == "?" for row in _core.ranking_table(unknown).rows)
    (grey,) = [
        c for c in plot.pareto(mixed).collections if "not Pareto-optimal" in str(c.get_label())
    ]
    assert len(grey.get_offsets()) == len(mixed) - len(unknown)
    alone = hm.rank(starter, changed_demo(lambda plain: change(plain, [])))
    assert len(alone)
    with pytest.raises(hm.InvalidInput, match="heated_length_mm"):
        plot.pareto(alone)
