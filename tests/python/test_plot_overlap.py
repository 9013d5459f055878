"""No two texts of a plot cover each other: measured with the renderer of the plots."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import heatmatch as hm
import picture_scenes as scenes
import pytest

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")

PLACES = {
    "demo": lambda starter, demo: demo,
    "forty elements": scenes.forty_elements,
    "five groups": scenes.five_groups,
}


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.fixture(scope="module", params=list(PLACES))
def place(request: Any, starter: hm.Catalog, demo: hm.Installation) -> hm.Installation:
    return PLACES[request.param](starter, demo)


@pytest.fixture(scope="module")
def pictures(place: hm.Installation, starter: hm.Catalog) -> dict[str, Any]:
    """All pictures of a place, in US units: their texts are longer."""
    weather = hm.Weather.from_installation(place)
    ranking = hm.rank(starter, place, top=2000, keep_rejected=5000)
    one = hm.assess(starter, place)
    days = {} if len(place.elements) > 10 else scenes.of_days(one, weather, "us")
    return scenes.of_ranking(ranking, "us") | scenes.of_candidate(one, weather, "us") | days


def test_no_two_texts_overlap(pictures: dict[str, Any]) -> None:
    found = {}
    for name, draw in pictures.items():
        found[name] = scenes.overlaps(draw().figure)
        plt.close("all")
    assert len(found) >= 14
    assert not {name: pairs for name, pairs in found.items() if pairs}


def test_an_overlap_is_found() -> None:
    figure, ax = plt.subplots()
    ax.text(0.5, 0.5, "one text")
    ax.text(0.51, 0.5, "another")
    assert scenes.overlaps(figure)


def test_labels_of_trade_offs_are_at_most_twelve(pictures: dict[str, Any]) -> None:
    ax = pictures["pareto"]()
    numbered = [text for text in ax.texts if text.get_text().split(":")[0].isdigit()]
    assert 0 < len(numbered) <= 12


def test_the_map_can_be_read_at_its_own_size(pictures: dict[str, Any]) -> None:
    ax = pictures["map"]()
    figure = ax.figure
    figure.canvas.draw()
    cells = [text for text in ax.texts if "\n" in text.get_text()]
    assert cells
    assert min(text.get_fontsize() for text in cells) >= 6.0
    wide, high = ax.transData.transform((1.0, 1.0)) - ax.transData.transform((0.0, 0.0))
    for text in cells:
        box = text.get_window_extent()
        assert box.width < abs(wide)
        assert box.height < abs(high)


def test_us_units_are_everywhere(pictures: dict[str, Any]) -> None:
    from matplotlib.text import Text

    for name, draw in pictures.items():
        texts = [text.get_text() for text in draw().figure.findobj(Text)]
        assert not [text for text in texts if "°C" in text or re.search(r"\bmm\b", text)], name
        plt.close("all")
