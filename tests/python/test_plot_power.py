"""Power over days and over the hours of a year: as the season counts it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch import plot
from heatmatch.plot.power import hourly_power
from heatmatch.text.season import MONTHS

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.fixture(scope="module")
def weather(demo: hm.Installation) -> hm.Weather:
    return hm.Weather.from_installation(demo)


def test_the_hours_sum_to_the_heat_of_the_season(
    standing: hm.Candidate, weather: hm.Weather
) -> None:
    power = hourly_power(standing, weather)
    season = standing.season
    assert season is not None
    for watts, kwh_per_day in (
        (power.element_w, season.kwh_per_day),
        (power.most_w, season.mpp_kwh_per_day),
    ):
        sums = np.bincount(power.month, watts, 13)[1:] / 1000 / weather.days
        # The season condenses its weather to few nodes.
        np.testing.assert_allclose(sums, kwh_per_day, rtol=1e-3)
    assert (power.element_w <= power.most_w * (1 + 1e-9)).all()


def test_snow_takes_its_share_of_the_hours(
    starter: hm.Catalog, demo: hm.Installation, standing: hm.Candidate, weather: hm.Weather
) -> None:
    plain = demo.to_dict()
    plain["site"]["snow_cover_pct"] = [50, *[0] * 11]
    snowy = hm.Weather.from_installation(hm.Installation.from_dict(plain))
    bare, less = hourly_power(standing, weather), hourly_power(standing, snowy)
    january = bare.month == 1
    np.testing.assert_allclose(less.element_w[january], 0.5 * bare.element_w[january])
    np.testing.assert_allclose(less.element_w[~january], bare.element_w[~january])


def test_a_clear_day_gives_more_than_a_dull_one(
    standing: hm.Candidate, weather: hm.Weather
) -> None:
    ax = plot.day_power(standing, weather, month=3)
    labels = [text.get_text() for text in ax.get_legend().get_texts()]
    kwh = [float(text.split(": ")[1].split()[0]) for text in labels if "day:" in text]
    assert len(kwh) == 3
    assert kwh == sorted(kwh, reverse=True)
    assert "days in Mar" in ax.get_title()
    for line in ax.lines[::2]:
        assert len(line.get_xdata()) == 24
    season = standing.season
    assert season is not None
    darkest = min(season.months, key=lambda m: season.kwh_per_day[m - 1])
    named = plot.day_power(standing, weather).get_title()
    assert named.endswith(MONTHS[darkest - 1])


def test_a_day_of_which_the_weather_has_a_part_is_not_the_dull_one(
    demo: hm.Installation, standing: hm.Candidate
) -> None:
    pd = pytest.importorskip("pandas")
    # Equal days; the record begins and ends about noon.
    times = pd.date_range("2025-01-10 17:00", "2025-01-15 17:00", freq="h", tz="UTC")
    ghi = np.clip(400 * np.sin((times.hour - 12.5) / 9 * np.pi), 0, None) * (
        abs(times.hour - 17) < 5
    )
    frame = pd.DataFrame({"ghi": ghi, "temp_air": -5.0}, index=times)
    weather = hm.Weather.from_frame(frame, demo.site)
    ax = plot.day_power(standing, weather)
    assert [len(line.get_xdata()) for line in ax.lines] == [24] * 6
    labels = [text.get_text() for text in ax.get_legend().get_texts()]
    kwh = [float(text.split(": ")[1].split()[0]) for text in labels if "day:" in text]
    assert min(kwh) == pytest.approx(max(kwh), rel=0.02)
    few = hm.Weather.from_frame(frame.iloc[:20], demo.site)
    with pytest.raises(hm.InvalidInput, match="month = Jan must be in the weather with at least"):
        plot.day_power(standing, few, month=1)


def test_without_a_season_the_month_of_least_sun_is_drawn(
    starter: hm.Catalog, demo: hm.Installation, weather: hm.Weather
) -> None:
    plain = demo.to_dict()
    sun = plain.pop("weather")["sun_hours"]
    bare = hm.assess(starter, hm.Installation.from_dict(plain))
    named = plot.day_power(bare, weather).get_title()
    assert named.endswith(MONTHS[int(np.argmin(sun))])


def test_the_map_of_hours_sums_to_the_months(standing: hm.Candidate, weather: hm.Weather) -> None:
    ax = plot.month_by_hour(standing, weather)
    watts = ax.images[0].get_array()
    assert watts.shape == (24, 12)
    season = standing.season
    assert season is not None
    np.testing.assert_allclose(watts.sum(axis=0) / 1000, season.kwh_per_day, rtol=1e-3)
    # common practice, no source: the sun is highest at solar noon.
    assert set(np.argmax(watts[:, [0, 5, 11]], axis=0)) <= {11, 12, 13, 10}
    shown: list[Any] = [label.get_text() for label in ax.get_xticklabels()]
    assert shown[0] == "Jan*"
    assert shown[5] == "Jun"


def test_what_cannot_be_drawn_is_said(standing: hm.Candidate, weather: hm.Weather) -> None:
    loose = hm.Weather.from_plane([0.0, 500.0], [0.0, 20.0], 1.0, month=[1, 1])
    for draw in (plot.day_power, plot.month_by_hour):
        with pytest.raises(hm.InvalidInput, match="weather: first_hour = none must be known"):
            draw(standing, loose)
    for month in (0, 13, True, 2.5):
        with pytest.raises(hm.InvalidInput, match="must be 1 to 12"):
            plot.day_power(standing, weather, month=month)
