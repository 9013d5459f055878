"""Stagnation: highest temperatures of a store from which no heat is extracted."""

from __future__ import annotations

import pickle
from collections.abc import Callable
from typing import Any

import heatmatch as hm
import pytest
from day_runs import weather_of


@pytest.fixture(scope="module")
def week(standing: hm.Candidate, demo: hm.Installation) -> hm.DayRun:
    """A January week 8 K colder than the mean."""
    return hm.simulate_day(standing, weather_of(demo), month=1, days=7, air_shift_k=-8.0)


@pytest.fixture(scope="module")
def stagnation(standing: hm.Candidate) -> hm.Stagnation:
    """A fortnight in which no heat is drawn."""
    return hm.simulate_stagnation(standing)


def test_stagnation_is_hotter_than_the_week(week: hm.DayRun, stagnation: hm.Stagnation) -> None:
    run = stagnation.run
    assert run.days == 14.0
    assert not run.heats_space
    for name in ("sheath_c", "bed_mean_c", "wall_c", "lid_c", "terminal_c"):
        assert getattr(run, name).max() > getattr(week, name).max(), name
    assert stagnation.delivered_kwh == run.energy.delivered_kwh > week.energy.delivered_kwh
    assert 1 <= stagnation.month <= 12
    assert f"{run.sheath_c.max():.0f} °C" in stagnation.sentences[0]
    # Leg ends are not in the field of a day: the floor and what the vessel is made of come after.
    lived = [p.margin.name for p in run.answer.peaks]
    peaks = [p.margin.name for p in stagnation.peaks]
    assert peaks[: len(lived)] == lived
    assert peaks[len(lived) :] == ["floor", "vessel material", "liner material", "lagging material"]


def test_it_comes_back_from_a_pickle(stagnation: hm.Stagnation) -> None:
    back = pickle.loads(pickle.dumps(stagnation))
    assert str(back) == str(stagnation)
    assert back.run.to_frame().equals(stagnation.run.to_frame())
    assert (back.month, back.delivered_kwh) == (stagnation.month, stagnation.delivered_kwh)


def test_its_text_has_eighty_columns_and_says_it_first(stagnation: hm.Stagnation) -> None:
    lines = str(stagnation).splitlines()
    assert max(len(line) for line in lines) <= 80
    assert lines[0].startswith("In stagnation the sheath reaches")
    assert stagnation._repr_html_().startswith("<p>In stagnation the sheath reaches")


def test_it_needs_a_store_and_a_place_under_the_sun(
    starter: hm.Catalog, changed_demo: Callable[..., Any]
) -> None:
    bare = hm.assess(starter, changed_demo(lambda plain: plain.pop("store")))
    with pytest.raises(hm.InvalidInput, match="describe the store"):
        hm.simulate_stagnation(bare)

    def forget(plain: dict[str, Any]) -> None:
        del plain["site"]["latitude_deg"], plain["weather"]

    with pytest.raises(hm.InvalidInput, match="latitude_deg"):
        hm.simulate_stagnation(hm.assess(starter, changed_demo(forget)))
