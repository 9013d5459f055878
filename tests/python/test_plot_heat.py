"""Plots of heat: labelled with units, limits drawn in, what is not known shown as such."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import plot
from matplotlib.text import Text

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")

FUNCTIONS = [plot.heat_path, plot.sheath_by_power, plot.time_to_limit]
each_function = pytest.mark.parametrize("function", FUNCTIONS, ids=lambda f: f.__name__)


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


def entries(ax: Any) -> list[str]:
    return [text.get_text() for text in ax.get_legend().get_texts()]


def texts(ax: Any) -> list[str]:
    return [text.get_text() for text in ax.texts]


@each_function
def test_the_given_axes_is_drawn_on_and_given_back(function: Any, standing: hm.Candidate) -> None:
    figure, (left, right) = plt.subplots(1, 2)
    assert function(standing, ax=right) is right
    assert right.lines
    assert not left.lines
    assert isinstance(function(standing), matplotlib.axes.Axes)
    with pytest.raises(TypeError):
        function(standing, right)
    figure.canvas.draw()


@each_function
def test_axes_have_labels_with_units_a_title_and_a_legend(
    function: Any, standing: hm.Candidate
) -> None:
    ax = function(standing)
    units = {
        "heat_path": ("(not to scale)", "[°C]"),
        "sheath_by_power": ("[W]", "[°C]"),
        "time_to_limit": ("[W/cm]", "[s, min, h]"),
    }
    x, y = units[function.__name__]
    assert ax.get_xlabel().endswith(x)
    assert ax.get_ylabel().endswith(y)
    assert standing.circuit.element.id in ax.get_title()
    assert entries(ax)


@each_function
def test_every_kind_of_candidate_can_be_drawn(function: Any, demo_ranking: hm.Ranking) -> None:
    drawn = 0
    for candidate in [*demo_ranking.candidates[::60], *demo_ranking.rejected[::50]]:
        heat = candidate.circuit.heat
        assert heat is not None
        if function is not plot.heat_path and (not heat.known or heat.sheath is None):
            with pytest.raises(hm.InvalidInput, match="must be known"):
                function(candidate)
            continue
        function(candidate).figure.canvas.draw()
        plt.close("all")
        drawn += 1
    assert drawn > 5


def test_the_sheath_passes_through_the_circuit_and_its_limits_are_drawn(
    standing: hm.Candidate,
) -> None:
    ax = plot.sheath_by_power(standing)
    judged = next(line for line in ax.lines if str(line.get_label()).startswith("judged"))
    watts, celsius = (np.asarray(data, dtype=float) for data in judged.get_data())
    at = np.interp(standing.bright.element_power_w, watts, celsius)
    assert at == pytest.approx(standing.heat.sheath_c, abs=1.0)
    sheath = standing.circuit.sheath
    levels = {float(line.get_ydata()[0]) for line in ax.lines if len(set(line.get_ydata())) == 1}
    assert {sheath.verdict_limit_c, sheath.hard_limit_c} <= levels
    most = standing.circuit.heat.largest_element_w(with_stagnation=False)
    assert np.interp(most, watts, celsius) == pytest.approx(sheath.verdict_limit_c, abs=5.0)
    assert any(f"rated: {standing.circuit.element.rated_w:.0f} W" in entry for entry in entries(ax))


def test_a_sheath_that_is_not_known_is_said(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    odd = starter.elements["storage-rod-1000-240"].replace(id="odd-rod", sheath=None)

    def change(plain: dict[str, Any]) -> None:
        plain["parts"] = {"elements": [odd.to_dict()]}
        plain["circuit"]["element"] = "odd-rod"

    candidate = hm.assess(starter, changed_demo(change))
    assert candidate.circuit.sheath is None
    assert "limits of the sheath: not known" in entries(plot.sheath_by_power(candidate))
    assert texts(plot.heat_path(candidate)).count("limit ?") >= 2
    with pytest.raises(hm.InvalidInput, match="odd-rod"):
        plot.time_to_limit(candidate)


def test_times_to_a_limit_are_those_of_the_bed(standing: hm.Candidate) -> None:
    ax = plot.time_to_limit(standing)
    heat = standing.circuit.heat
    hard = heat.sheath.hard_limit_c
    line = next(line for line in ax.lines if f"until {hard:.0f} °C" in str(line.get_label()))
    loads, hours = (np.asarray(data, dtype=float) for data in line.get_data())
    bed = heat.bed(conductivity="low")
    some = np.flatnonzero(np.isfinite(hours))[::20]
    assert len(some) > 2
    for place in some:
        watts = loads[place] * 100.0 * heat.heated_length_m
        assert hours[place] == pytest.approx(bed.hours_to_limit(watts, limit_c=hard), rel=1e-6)
    rated = standing.circuit.element.rated_w / (heat.heated_length_m / heat.elements) / 100.0
    (entry,) = [entry for entry in entries(ax) if entry.startswith("rated power")]
    assert f"{rated:.3g} W/cm" in entry
    assert "after" in entry


def test_the_path_shows_every_part_with_its_limit(standing: hm.Candidate) -> None:
    ax = plot.heat_path(standing)
    names = [tick.get_text().split(",")[0] for tick in ax.get_xticklabels()]
    for part in standing.circuit.runs:
        assert part.name in names
    assert names[:4] == ["coil", "sheath", "bed", "wall"]
    assert names[-1] == "panels"
    shown = " ".join(texts(ax))
    sheath = standing.circuit.sheath
    assert f"{sheath.verdict_limit_c:.0f}" in shown
    *others, at_element = standing.check_wires()
    for check in others:
        assert f"{check.limits[0].what} {check.limits[0].limit_c:.0f}" in shown
    assert at_element.at_element
    dry = [m for m in standing.margins if m.name.startswith("hot tail ") and m.limit is not None]
    lowest = min(dry, key=lambda margin: margin.limit)
    assert f"{lowest.name.removeprefix('hot tail ')} {lowest.limit:.0f}" in shown
    assert "limit ?" in shown  # of the coil, whose alloy is not known
    values = [y for line in ax.lines for y in line.get_ydata()]
    for celsius in (standing.heat.sheath_c, standing.heat.coil_c, standing.tail.terminal_c):
        assert celsius in values
    assert ax.get_ylim()[1] > max(v for v in values if np.isfinite(v))


def test_without_a_store_the_path_shows_what_is_not_known(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    bare = hm.assess(starter, changed_demo(lambda plain: plain.pop("store")))
    ax = plot.heat_path(bare)
    assert texts(ax).count("?") >= 4
    for function in (plot.sheath_by_power, plot.time_to_limit):
        with pytest.raises(hm.InvalidInput, match="describe the store"):
            function(bare)


def test_water_has_no_line_over_watts(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def fill(plain: dict[str, Any]) -> None:
        plain["store"] |= {"medium": "water", "vented": True}

    wet = hm.assess(starter, changed_demo(fill))
    plot.heat_path(wet).figure.canvas.draw()
    with pytest.raises(hm.InvalidInput, match="liquid"):
        plot.sheath_by_power(wet)


def test_a_title_with_markup_is_drawn_as_text(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def rename(plain: dict[str, Any]) -> None:
        plain["panels"][0]["group"] = plain["circuit"]["group"] = "$\\frac{1}$ 100 % _pair_"
        plain["runs"][0]["name"] = "$\\frac{1}$"
        plain["devices"][0]["run"] = "$\\frac{1}$"

    odd = hm.assess(starter, changed_demo(rename))
    drawn = []
    for function in FUNCTIONS:
        figure = function(odd).figure
        figure.canvas.draw()
        drawn += [text.get_text() for text in figure.findobj(Text)]
    assert any("frac" in text for text in drawn)
