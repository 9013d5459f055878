"""Plots of the season: drawn data equal those of the season and its curves."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import plot

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.fixture(scope="module")
def weather(demo: hm.Installation) -> hm.Weather:
    normals = demo.to_dict()["weather"]
    return hm.Weather.from_months(
        demo.site, normals["sun_hours"], normals["temp_min_c"], normals["temp_max_c"]
    )


def curves(ax: Any) -> list[Any]:
    """The lines of energy."""
    return [line for line in ax.lines if "best" in str(line.get_label())]


def points(line: Any) -> tuple[Any, Any]:
    x, y = line.get_data()
    return np.asarray(x, dtype=float), np.asarray(y, dtype=float)


def dots(ax: Any) -> list[Any]:
    return [line for line in ax.lines if line.get_marker() == "o"]


def test_the_axes_given_are_drawn_on_and_others_made(
    standing: hm.Candidate, weather: hm.Weather
) -> None:
    _, (left, right) = plt.subplots(1, 2)
    assert plot.energy_against_ohms(standing, weather, ax=left) is left
    assert plot.months(standing, ax=right) is right
    assert plot.energy_against_ohms(standing, weather) is not left
    assert plot.months(standing) is not right


def test_axes_have_labels_with_units_a_title_and_a_legend(
    standing: hm.Candidate, weather: hm.Weather
) -> None:
    for ax, labels in (
        (
            plot.energy_against_ohms(standing, weather),
            ("resistance of the elements [ohm]", "energy into the elements [kWh]"),
        ),
        (plot.months(standing), ("month", "heat per day [kWh]")),
    ):
        assert (ax.get_xlabel(), ax.get_ylabel()) == labels
        assert ax.get_title()
        assert ax.get_legend().get_texts()
        ax.figure.canvas.draw()


def test_dot_and_best_are_those_of_the_season(standing: hm.Candidate, weather: hm.Weather) -> None:
    ax = plot.energy_against_ohms(standing, weather)
    season = standing.season
    (dot,) = dots(ax)
    ohm, kwh = points(dot)
    assert ohm[0] == standing.circuit.bank_ohm
    assert kwh[0] == pytest.approx(season.kwh, rel=2e-4)  # read between the curve's ohms
    (line,) = curves(ax)
    assert f"best {season.best_ohm:.3g} ohm" in line.get_label()
    ohms, energies = points(line)
    assert energies.max() == pytest.approx(np.interp(season.best_ohm, ohms, energies), rel=1e-4)
    most = next(line for line in ax.lines if "available from the panels" in str(line.get_label()))
    assert points(most)[1][0] == pytest.approx(season.mpp_kwh, rel=1e-4)
    assert energies.max() < season.mpp_kwh
    labels = [text.get_text() for text in ax.get_legend().get_texts()]
    assert f"Vmp/Imp in full sun, {season.stc_match_ohm:.3g} ohm" in labels


def test_a_panel_alone_has_neither_dot_nor_band(starter: hm.Catalog, weather: hm.Weather) -> None:
    panel = starter.panels["silicon-60-cell-245"]
    ax = plot.energy_against_ohms(panel, weather, months=[1, 2])
    assert not dots(ax)
    assert not ax.patches
    curve = hm.EnergyCurve(panel, weather, months=[1, 2])
    ohms, energies = points(curves(ax)[0])
    assert energies.tolist() == curve.delivered_kwh(ohms).tolist()
    assert f"best {curve.best_resistance_ohm:.3g} ohm" in curves(ax)[0].get_label()
    assert "(Jan Feb)" in ax.get_title()
    assert "(the year)" in plot.energy_against_ohms(panel, weather).get_title()


def test_several_weathers_have_lines_of_their_own(
    standing: hm.Candidate, weather: hm.Weather
) -> None:
    ax = plot.energy_against_ohms(standing, {"here": weather, "there": weather})
    first, second = curves(ax)
    assert first.get_linestyle() != second.get_linestyle()
    assert first.get_color() != second.get_color()
    assert first.get_label().startswith("here: ")
    assert len(dots(ax)) == 2
    with pytest.raises(hm.InvalidInput, match="6 weathers must be 1 to 5"):
        plot.energy_against_ohms(standing, dict.fromkeys("abcdef", weather))
    with pytest.raises(hm.InvalidInput, match="0 weathers"):
        plot.energy_against_ohms(standing, {})


def test_the_bars_are_the_months(standing: hm.Candidate) -> None:
    ax = plot.months(standing)
    season = standing.season
    possible, chosen, others = ax.containers
    assert [bar.get_height() for bar in possible] == list(season.mpp_kwh_per_day)
    expected = [season.kwh_per_day[m - 1] for m in sorted(season.months)]
    assert [bar.get_height() for bar in chosen] == expected
    assert len(others) == 12 - len(expected)
    ticks = [text.get_text() for text in ax.get_xticklabels()]
    assert [n + 1 for n, tick in enumerate(ticks) if tick.endswith("*")] == sorted(season.months)


def test_every_kind_of_candidate_can_be_drawn(
    demo_ranking: hm.Ranking, weather: hm.Weather
) -> None:
    for candidate in [*demo_ranking.candidates[::180], *demo_ranking.rejected[::240]]:
        for ax in (plot.months(candidate), plot.energy_against_ohms(candidate, weather)):
            ax.figure.canvas.draw()
            assert ax.lines or ax.patches
            plt.close(ax.figure)


def test_what_cannot_be_drawn_is_refused(
    starter: hm.Catalog,
    changed_demo: Callable[..., hm.Installation],
    standing: hm.Candidate,
    weather: hm.Weather,
) -> None:
    bare = hm.assess(starter, changed_demo(lambda plain: plain.pop("weather")))
    with pytest.raises(hm.InvalidInput, match="season = none"):
        plot.months(bare)
    with pytest.raises(hm.InvalidInput, match="months = 13"):
        plot.energy_against_ohms(standing, weather, months=[13])
    with pytest.raises(hm.InvalidInput, match="candidate_or_panel = str"):
        plot.energy_against_ohms("barn pair", weather)  # type: ignore[arg-type]
    with pytest.raises(TypeError):
        plot.energy_against_ohms(standing, weather, [1])  # type: ignore[misc]
    assert "(the year)" in plot.energy_against_ohms(bare, weather).get_title()
