"""Plots of days: units on the axes, limits drawn or listed, shaded nights, energies in legends."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from day_runs import weather_of
from heatmatch import plot

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")
QUICK: dict[str, Any] = {"thermal_step_s": 900, "electrical_step_s": 900}


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.fixture(scope="module")
def weather(demo: hm.Installation) -> hm.Weather:
    return weather_of(demo)


@pytest.fixture(scope="module")
def week(standing: hm.Candidate, weather: hm.Weather) -> hm.DayRun:
    return hm.simulate_day(standing, weather, month=1, days=7, **QUICK)


@pytest.fixture(scope="module")
def months(standing: hm.Candidate, weather: hm.Weather) -> hm.DayRun:
    return hm.simulate_day(standing, weather, month=12, days=59, **QUICK)


def entries(ax: Any) -> list[str]:
    return [text.get_text() for text in ax.get_legend().get_texts()]


def test_a_run_has_three_panels_over_one_time(week: hm.DayRun) -> None:
    panels = plot.day_run(week)
    assert len(panels) == 3
    for ax, unit in zip(panels, ("[W]", "[°C]", "[°C]"), strict=True):
        assert ax.get_ylabel().endswith(unit)
        assert ax.get_xlim() == (0.0, pytest.approx(168.0))
        assert entries(ax)
    power, heat, space = panels
    assert "[h]" in space.get_xlabel()
    assert week.title in power.get_title()
    assert f"into the elements, {week.energy.delivered_kwh:.1f} kWh" in entries(power)
    assert f"sheath, up to {week.sheath_c.max():.0f} °C" in entries(heat)
    assert f"target at night, {week.candidate.space.target_c:g} °C" in entries(space)
    ticks = [tick.get_text() for tick in space.get_xticklabels()]
    assert sum("day" in tick for tick in ticks) == 7
    power.figure.canvas.draw()


def test_every_limit_is_drawn_or_told(week: hm.DayRun) -> None:
    heat = plot.day_run(week)[1]
    sheath = week.candidate.circuit.sheath.verdict_limit_c
    told = [entry for entry in entries(heat) if entry.startswith("limit of")]
    assert f"limit of sheath (for years): {sheath:.0f} °C, beyond this plot" in told
    assert [entry.split(" (")[0] for entry in told] == [
        "limit of wall and lid", "limit of terminal", "limit of sheath"
    ]  # fmt: skip
    levels = {line.get_ydata()[0] for line in heat.lines if len(set(line.get_ydata())) == 1}
    terminal = min(
        peak.margin.limit
        for peak in week.answer.peaks
        if peak.margin.name.startswith(("hot tail", "end seal", "terminal"))
    )
    assert terminal in levels
    assert sheath not in levels
    assert heat.get_ylim()[1] > week.sheath_c.max()


def test_nights_are_shaded(week: hm.DayRun) -> None:
    power = plot.day_run(week)[0]
    shaded = [patch.get_extents() for patch in power.patches]
    assert len(shaded) == 8
    widths = [patch.get_width() for patch in power.patches]
    assert sum(widths) == pytest.approx(week.answer.all.dark_hours, rel=1e-6)


def test_long_runs_have_a_point_a_day(months: hm.DayRun) -> None:
    power, heat, space = plot.day_run(months)
    taken = next(line for line in power.lines if str(line.get_label()).startswith("into"))
    assert len(taken.get_xdata()) == 59
    step_h = np.diff(months.hours)[0]
    assert np.sum(taken.get_ydata()) * 24.0 / 1000.0 == pytest.approx(
        months.energy.delivered_kwh, rel=1e-6
    )
    assert step_h == pytest.approx(0.25)
    assert "mean of the day" in power.get_ylabel()
    assert "highest of the day" in heat.get_ylabel()
    assert "lowest of the day" in space.get_ylabel()
    sheath = next(line for line in heat.lines if str(line.get_label()).startswith("sheath"))
    assert max(sheath.get_ydata()) == months.sheath_c.max()
    assert "[days]" in space.get_xlabel()
    assert not power.patches


def test_bars_are_the_energies_of_months_or_days(week: hm.DayRun, months: hm.DayRun) -> None:
    ax = plot.day_energy(months)
    assert [tick.get_text() for tick in ax.get_xticklabels()] == ["Dec", "Jan"]
    given, taken, space = ([bar.get_height() for bar in bars] for bars in ax.containers)
    answer = months.answer.months
    assert given == pytest.approx([month.available_kwh_day for month in answer])
    assert taken == pytest.approx([month.delivered_kwh_day for month in answer])
    assert space == pytest.approx([month.to_space_kwh_day for month in answer])
    assert ax.get_ylabel().endswith("[kWh]")
    days = plot.day_energy(week)
    _, taken, _ = ([bar.get_height() for bar in bars] for bars in days.containers)
    assert len(taken) == 7
    assert sum(taken) == pytest.approx(week.energy.delivered_kwh)


def test_runs_are_compared_over_one_another(
    standing: hm.Candidate, weather: hm.Weather, week: hm.DayRun
) -> None:
    fan = hm.simulate_day(standing, weather, month=1, days=7, extraction_w_k=8, **QUICK)
    heat, bed = plot.compare_days({"as it is": week, "a fan": fan})
    assert heat.get_ylabel().endswith("[W]")
    assert bed.get_ylabel().endswith("[°C]")
    assert [entry.split(":")[0] for entry in entries(heat)] == ["as it is", "a fan"]
    assert f"a fan: up to {fan.bed_mean_c.max():.0f} °C" in entries(bed)
    short = hm.simulate_day(standing, weather, month=1, days=2, **QUICK)
    with pytest.raises(hm.InvalidInput, match='"short" = 2 days'):
        plot.compare_days({"as it is": week, "short": short})
    with pytest.raises(hm.InvalidInput, match="0 runs"):
        plot.compare_days({})
    with pytest.raises(hm.InvalidInput, match="6 runs"):
        plot.compare_days({str(i): week for i in range(6)})


def test_where_the_heat_goes_is_told(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation], weather: hm.Weather
) -> None:
    outside = hm.assess(
        starter, changed_demo(lambda plain: plain["store"].update(stands="outside"))
    )
    runs = {
        name: hm.simulate_day(outside, weather, month=1, days=2, extraction_w_k=w_k, **QUICK)
        for name, w_k in (("alone", 0.0), ("fetched", 5.0))
    }
    alone, fetched = entries(plot.compare_days(runs)[0])
    assert alone.endswith("(all of it outside)")
    assert fetched.endswith("of it to the space")


def test_a_stagnation_is_drawn_with_its_limits(standing: hm.Candidate) -> None:
    stagnation = hm.simulate_stagnation(standing)
    ax = plot.stagnation(stagnation)
    assert ax.get_ylabel().endswith("[°C]")
    assert "no heat drawn" in ax.get_title()
    assert f"sheath, up to {stagnation.run.sheath_c.max():.0f} °C" in entries(ax)
    assert sum(entry.startswith("limit of") for entry in entries(ax)) == 3
    with pytest.raises(hm.InvalidInput, match="simulate_stagnation"):
        plot.stagnation(stagnation.run)
    with pytest.raises(hm.InvalidInput, match="simulate_day"):
        plot.day_run(stagnation)


def test_the_given_axes_are_drawn_on(week: hm.DayRun) -> None:
    figure, axes = plt.subplots(3, 2)
    assert plot.day_run(week, axes=axes[:, 1]) == tuple(axes[:, 1])
    assert plot.day_energy(week, ax=axes[0, 0]) is axes[0, 0]
    assert not axes[1, 0].lines
    with pytest.raises(hm.InvalidInput, match="2 axes must be 3"):
        plot.day_run(week, axes=axes[0])
    figure.canvas.draw()


def test_what_is_not_known_is_said_and_markup_is_text(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation], weather: hm.Weather
) -> None:
    def change(plain: dict[str, Any]) -> None:
        plain |= {"runs": [], "devices": []}
        plain["panels"][0]["group"] = plain["circuit"]["group"] = "$\\frac{1}$ 100 % _pair_"
        del plain["space"]

    run = hm.simulate_day(hm.assess(starter, changed_demo(change)), weather, days=1, **QUICK)
    power, heat, space = plot.day_run(run)
    assert "terminal: not known" in entries(heat)
    assert entries(space) == ["air around the store"]
    power.figure.canvas.draw()
