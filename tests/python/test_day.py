"""Simulated days: series, energy, controls, answers, frames, texts."""

from __future__ import annotations

import pickle
from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from day_runs import weather_of
from heatmatch import _library as _core
from heatmatch.io import frames_day
from heatmatch.text import day as display_day
from heatmatch.text.table import cells

pd = pytest.importorskip("pandas")
WEEK: dict[str, Any] = {"month": 1, "days": 7, "air_shift_k": -8.0}


@pytest.fixture(scope="module")
def weather(demo: hm.Installation) -> hm.Weather:
    """The demo's own weather."""
    return weather_of(demo)


@pytest.fixture(scope="module")
def week(standing: hm.Candidate, weather: hm.Weather) -> hm.DayRun:
    """A January week 8 K colder than the mean."""
    return hm.simulate_day(standing, weather, **WEEK)


def test_series_are_read_only_views_of_one_length(week: hm.DayRun) -> None:
    assert len(week) == 7 * 24 * 12  # steps of 300 s
    for name in frames_day.SERIES:
        values = getattr(week, name)
        assert values.shape == (len(week),), name
        assert np.isfinite(values).all(), name
        if name == "hour_of_day":
            continue
        assert not values.flags.writeable, name
        assert not values.flags.owndata, name
        assert np.shares_memory(values, getattr(week, name)), name
    assert week.hours[-1] == pytest.approx(24.0 * week.days)
    assert week.hour_of_day == pytest.approx((week.first_hour + week.hours) % 24.0)
    assert set(week.month.tolist()) == {1}


def test_a_series_outlives_its_run(standing: hm.Candidate, weather: hm.Weather) -> None:
    hours = hm.simulate_day(standing, weather, month=6, days=1, warm_up_days=0).hours
    assert hours.sum() == pytest.approx(np.arange(1, 289).sum() / 12.0)


def test_steps_and_days_are_those_asked_for(standing: hm.Candidate, weather: hm.Weather) -> None:
    run = hm.simulate_day(
        standing, weather, month=2, days=2, thermal_step_s=600, electrical_step_s=300
    )
    assert len(run) == 2 * 144
    assert hm.simulate_day(standing, weather, month=2, thermal_step_s=3600).days == 28.0


def test_energies_add_up(week: hm.DayRun) -> None:
    energy = week.energy
    step_h = np.diff(week.hours, prepend=0.0)
    for kwh, watts in (
        (energy.delivered_kwh, week.power_w),
        (energy.available_kwh, week.available_w),
        (energy.to_space_kwh, week.to_space_w),
    ):
        assert (watts * step_h).sum() / 1000.0 == pytest.approx(kwh, rel=1e-9)
    left = energy.stored_kwh + energy.to_space_kwh + energy.outside_kwh
    assert energy.delivered_kwh == pytest.approx(left, rel=1e-6)
    assert energy.unbalanced_share < 1e-6
    assert energy.delivered_kwh + energy.wire_kwh < energy.available_kwh
    assert week.power_w == pytest.approx(week.bank_v * week.bank_a, rel=0.05, abs=0.5)


# Sum over the balance: heat that reaches a space without thermal mass, over what it loses for a
# kelvin, is how far it lifts it.
def test_the_space_is_lifted_by_the_heat_over_its_losses(week: hm.DayRun) -> None:
    space = week.candidate.space
    lift = week.space_c - week.space_unheated_c
    assert lift == pytest.approx(week.to_space_w / space.loss_w_k, abs=1e-6)
    warm = week.to_space_w > 0.0
    assert space.lift_k(week.to_space_w[warm]) == pytest.approx(lift[warm], abs=1e-6)
    dark = week.irradiance_w_m2 < 1.0
    assert week.answer.all.lift_k == pytest.approx(lift[dark].mean(), rel=1e-6)


# Covers 28 m2, air 0.34 Wh/m3K times 16 m3 once an hour: the demo's own numbers.
def test_the_space_tells_how_it_loses_heat(
    standing: hm.Candidate, demo: hm.Installation, starter: hm.Catalog
) -> None:
    space = standing.space
    assert space.known
    assert space.air_w_k == pytest.approx(0.34 * 16.0)
    assert space.cover_w_k == pytest.approx(28.0 * starter.covers["twin-wall-8mm"].u_w_m2k)
    assert space.loss_w_k == pytest.approx(space.cover_w_k + space.air_w_k)
    assert (space.target_c, space.heat_capacity_wh_k) == (5.0, 0.0)
    assert space.lift_k(100.0) == pytest.approx(100.0 / space.loss_w_k)
    with pytest.raises(hm.InvalidInput, match="heat_w"):
        space.lift_k(-1.0)
    back = pickle.loads(pickle.dumps(standing)).space
    assert back.loss_w_k == space.loss_w_k
    assert back.assumed == space.assumed


def test_the_answer_says_how_small_it_is(week: hm.DayRun) -> None:
    answer = week.answer
    assert "only a small part of the heating" in answer.sentences[0]
    assert week.sentences() == answer.sentences
    assert "°F" in week.sentences(units="us")[0] == answer.sentences[0].text("us")
    (january,) = answer.months
    assert (january.month, answer.all.month) == (1, 0)
    assert january.delivered_kwh_day == pytest.approx(week.energy.delivered_kwh / 7.0)
    assert 0.0 < january.lift_k < january.required_lift_k
    assert january.lowest_unheated_c < january.lowest_c < 5.0
    assert january.above_target_unheated_hours <= january.above_target_hours
    assert january.dark_hours < 24.0 * 7.0


def test_peaks_are_the_highest_of_the_series(week: hm.DayRun) -> None:
    peaks = {peak.margin.name: peak for peak in week.answer.peaks}
    for name, values in (
        ("sheath temperature", week.sheath_c),
        ("coil temperature", week.coil_c),
        ("terminal temperature", week.terminal_c),
        ("touch temperature", np.maximum(week.wall_c, week.lid_c)),
    ):
        peak = peaks[name]
        assert peak.margin.value == values.max()
        assert peak.hours == week.hours[np.argmax(values)]
        assert "{" not in peak.margin.sentence()
    assert peaks["sheath temperature"].margin.limit == 760.0


def test_a_run_comes_back_from_a_pickle(week: hm.DayRun) -> None:
    back = pickle.loads(pickle.dumps(week))
    assert back.to_frame().equals(week.to_frame())
    assert str(back) == str(week)
    assert back.sentences(units="us") == week.sentences(units="us")


def test_a_candidate_that_came_back_lives_the_same_days(
    standing: hm.Candidate, weather: hm.Weather
) -> None:
    back = pickle.loads(pickle.dumps(standing))
    runs = [hm.simulate_day(c, weather, month=2, days=1) for c in (standing, back)]
    assert runs[0].to_frame().equals(runs[1].to_frame())
    assert runs[0].answer.sentences == runs[1].answer.sentences


def test_frames_hold_what_the_run_holds(week: hm.DayRun) -> None:
    frame = week.to_frame()
    assert list(frame.columns) == list(frames_day.SERIES)
    assert frame.shape == (len(week), 19)
    for name in frame.columns:
        assert (frame[name].to_numpy() == getattr(week, name)).all()
    months = week.months_frame()
    assert list(months.columns) == list(frames_day.MONTH_FIELDS)
    assert months.loc[0, "lift_k"] == week.answer.months[0].lift_k


def test_months_come_in_the_order_of_time(standing: hm.Candidate, weather: hm.Weather) -> None:
    run = hm.simulate_day(standing, weather, month=12, days=40, thermal_step_s=1800)
    assert run.months_frame()["month"].tolist() == [12, 1]
    assert run.months_frame()["days"].tolist() == pytest.approx([31.0, 9.0])
    assert cells(_core.months_table(run))[-1][0] == "all"


def test_a_terminal_that_is_not_known_is_missing(
    starter: hm.Catalog, changed_demo: Callable[..., Any], weather: hm.Weather
) -> None:
    wireless = changed_demo(lambda plain: plain.update(runs=[], devices=[]))
    run = hm.simulate_day(hm.assess(starter, wireless), weather, month=2, days=1)
    assert run.terminal_c is None
    assert run.to_frame()["terminal_c"].isna().all()
    assert pickle.loads(pickle.dumps(run)).terminal_c is None


def test_texts_have_eighty_columns_and_say_it_first(
    week: hm.DayRun,
) -> None:
    for text in (str(week), repr(week), display_day.day_text(week, units="us")):
        assert max(len(line) for line in text.splitlines()) <= 80
    text = " ".join(str(week).split())
    order = ["only a small part of the heating", "energy, kWh", "most, °C", "need K", "assumed:"]
    places = [text.index(piece) for piece in order]
    assert places == sorted(places)
    assert "-0.00" not in text
    html = week._repr_html_()
    assert html.index("only a small part") < html.index("<table>")
    assert html.count("<table>") == 3


def test_a_title_is_escaped(
    starter: hm.Catalog, changed_demo: Callable[..., Any], weather: hm.Weather
) -> None:
    def rename(plain: dict[str, Any]) -> None:
        plain["panels"][0]["group"] = plain["circuit"]["group"] = "<script>"

    run = hm.simulate_day(hm.assess(starter, changed_demo(rename)), weather, month=1, days=1)
    assert "<script>" in run.title
    assert "<script>" not in run._repr_html_()


@pytest.fixture(scope="module")
def clear(demo: hm.Installation) -> hm.Weather:
    """A year without a cloud."""
    return hm.Weather.clear_days(demo.site)


@pytest.mark.parametrize(
    ("switches", "events"),
    [
        ("works", {"opens", "closes"}),
        ("thermostat welded", {"cannot open"}),
        ("breaker welded", {"cannot open"}),
    ],
)
def test_switches_act_or_are_said_to_be_stuck(
    switches: str,
    events: set[str],
    starter: hm.Catalog,
    changed_demo: Callable[..., Any],
    clear: hm.Weather,
) -> None:
    def change(plain: dict[str, Any]) -> None:
        for device in plain["devices"]:
            if device["part"] == "snap-disc-fixed":
                device |= {"part": "capillary-thermostat-90", "senses": "bed", "set_c": 30}

    installation = changed_demo(change)
    assert {d.senses for d in installation.devices} == {None, "wall", "bed"}
    candidate = hm.assess(starter, installation)
    days: dict[str, Any] = {"month": 4, "days": 4, "air_around_c": 10, "warm_up_days": 0}
    run = hm.simulate_day(candidate, clear, switches=switches, **days)
    assert {event.what for event in run.events} == events
    assert all(event.device == "capillary-thermostat-90" for event in run.events)
    stuck = switches != "works"
    assert (run.bed_mean_c.max() > 31.0) == stuck
    assert any("should have opened" in text for text in run.answer.sentences) == stuck


def test_a_fan_takes_heat_in_its_hours_only(standing: hm.Candidate, weather: hm.Weather) -> None:
    fan = {"extraction_w_k": 10.0, "extraction_from_hour": 18.0, "extraction_until_hour": 6.0}
    still, blown = (hm.simulate_day(standing, weather, **WEEK, **more) for more in ({}, fan))
    assert blown.bed_mean_c.max() < still.bed_mean_c.max()
    assert blown.released_w.max() > 1.2 * still.released_w.max()
    total = [run.energy.to_space_kwh + run.energy.stored_kwh for run in (still, blown)]
    assert total[0] == pytest.approx(total[1], rel=0.01)


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ({"month": 13}, "month"),
        ({"month": 0}, "month"),
        ({"days": 0}, "days"),
        ({"days": -3}, "days"),
        ({"air_shift_k": 100.0}, "air_shift_k"),
        ({"electrical_step_s": 0.0}, "electrical_step_s"),
        ({"thermal_step_s": float("nan")}, "thermal_step_s"),
        ({"warm_up_days": -1}, "warm_up_days"),
        ({"start_c": 1e6}, "start_c"),
        ({"conductivity": "good"}, "conductivity"),
        ({"switches": "welded"}, "switches"),
        ({"extraction_w_k": -1.0}, "extraction.w_k"),
        ({"extraction_from_hour": 25.0}, "extraction.from_hour"),
        ({"extraction_until_hour": -1.0}, "extraction.until_hour"),
        ({"air_around_c": 200.0}, "air_around_c"),
    ],
)
def test_what_cannot_be_lived_through_is_refused_by_name(
    arguments: dict[str, Any], field: str, standing: hm.Candidate, weather: hm.Weather
) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        hm.simulate_day(standing, weather, **arguments)
    assert refused.value.field == field
    assert refused.value.remedy or refused.value.allowed


def test_without_an_order_of_time_there_are_no_days(standing: hm.Candidate) -> None:
    cells = hm.Weather.from_plane([0.0, 500.0], [5.0, 20.0], 1.0)
    assert cells.first_hour is None
    with pytest.raises(hm.InvalidInput, match="without a gap"):
        hm.simulate_day(standing, cells)
    with pytest.raises(TypeError):
        hm.simulate_day(standing, cells, 1)
