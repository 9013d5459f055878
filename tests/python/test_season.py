"""Energy curves and the season's ranking from Python."""

from __future__ import annotations

import pickle

import heatmatch as hm
import numpy as np
import pytest

PANEL = "silicon-60-cell-245"


@pytest.fixture(scope="module")
def weather(demo: hm.Installation) -> hm.Weather:
    normals = demo.to_dict()["weather"]
    return hm.Weather.from_months(
        demo.site, normals["sun_hours"], normals["temp_min_c"], normals["temp_max_c"]
    )


@pytest.fixture(scope="module")
def curve(starter: hm.Catalog, weather: hm.Weather) -> hm.EnergyCurve:
    return hm.EnergyCurve(starter.panels[PANEL], weather)


def row_by_row(panel: hm.Panel, weather: hm.Weather, ohm: float) -> float:
    """The sum over the rows of the weather, one operating point each [kWh]."""
    diode = hm.fit_single_diode(panel)
    rise = (panel.noct_c - 20.0) / 800.0
    total = 0.0
    for sun, base, warming, hours in zip(
        weather.plane_irradiance_w_m2, weather.base_c, weather.heating_irradiance_w_m2,
        weather.hours,
        strict=True,
    ):  # fmt: skip
        if sun > 0.0:
            at = diode.at(irradiance_w_m2=sun, cell_temperature_c=base + warming * rise)
            total += hours * at.into_resistance(ohm).power_w / 1000.0
    return total


def test_a_curve_is_the_sum_of_the_rows(
    starter: hm.Catalog, weather: hm.Weather, curve: hm.EnergyCurve
) -> None:
    panel = starter.panels[PANEL]
    exact = hm.EnergyCurve(panel, weather, exact=True)
    for ratio in (0.5, 1.4, 4.0):
        ohm = ratio * curve.stc_match_ohm
        truth = row_by_row(panel, weather, ohm)
        assert exact.delivered_kwh(ohm) == pytest.approx(truth, rel=3e-5)
        assert curve.delivered_kwh(ohm) == pytest.approx(truth, rel=5e-4)


def test_arrays_go_through_and_keep_their_shape(curve: hm.EnergyCurve) -> None:
    ohms = np.array([[1.0, 2.0, 4.0], [8.0, 16.0, 32.0]])
    energies = curve.delivered_kwh(ohms)
    assert energies.shape == ohms.shape
    assert energies[1, 2] == curve.delivered_kwh(32.0)
    assert curve.slope_kwh(ohms).shape == ohms.shape
    assert np.isnan(curve.delivered_kwh([1.0, np.nan])[1])
    hours = curve.hours_above(5.0, [0.0, 50.0, 100.0, 1000.0])
    assert list(hours) == sorted(hours, reverse=True)
    assert hours[-1] == 0.0
    assert curve.near_short_circuit_share(0.1) > curve.near_short_circuit_share(10.0)


def test_the_best_resistance_is_the_best(curve: hm.EnergyCurve) -> None:
    ohms = np.geomspace(0.2, 20.0, 400) * curve.stc_match_ohm
    energies = curve.delivered_kwh(ohms)
    best = curve.delivered_kwh(curve.best_resistance_ohm)
    assert best >= energies.max()
    assert energies.max() < curve.mpp_kwh
    assert curve.best_resistance_ohm > curve.stc_match_ohm


def test_wire_takes_its_share(curve: hm.EnergyCurve) -> None:
    expected = curve.delivered_kwh(6.0) * 5.0 / 6.0
    assert curve.delivered_kwh(5.0, wire_ohm=1.0) == pytest.approx(expected, rel=1e-12)


def test_every_width_of_vectors_gives_the_same(starter: hm.Catalog, weather: hm.Weather) -> None:
    panel = starter.panels[PANEL]
    curves = [
        hm.EnergyCurve(panel, weather, vector_width=width)
        for width in ("portable", "avx2", "avx512", "automatic")
    ]
    energies = [curve.delivered_kwh(7.0) for curve in curves]
    assert energies == pytest.approx([energies[0]] * 4, rel=1e-12)
    assert hm.widest_vectors() in ("portable", "avx2", "avx512")


def test_condensed_weather_is_kept_with_its_months_as_long_as_the_weather(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    panel = starter.panels[PANEL]
    for _ in range(50):  # objects come and go at the same addresses
        clear = hm.Weather.clear_days(demo.site)
        year = hm.EnergyCurve(panel, clear).delivered_kwh(7.0)
        june = hm.EnergyCurve(panel, clear, months=[6]).delivered_kwh(7.0)
        assert hm.EnergyCurve(panel, clear).delivered_kwh(7.0) == year > june > 0.0
        dull = hm.Weather.from_plane(0.1 * clear.plane_irradiance_w_m2, clear.base_c, 1.0)
        del clear
        assert hm.EnergyCurve(panel, dull).delivered_kwh(7.0) < 0.1 * year


def test_a_curve_pickles(curve: hm.EnergyCurve) -> None:
    back = pickle.loads(pickle.dumps(curve))
    assert back.delivered_kwh(7.0) == curve.delivered_kwh(7.0)
    assert back.mpp_kwh == curve.mpp_kwh


def test_one_call_with_weather_equals_the_installation_with_months(
    starter: hm.Catalog, demo: hm.Installation, weather: hm.Weather
) -> None:
    own = hm.rank(starter, demo, top=5)
    given = hm.rank(starter, demo, weather, top=5)
    assert [c.objective for c in own] == [c.objective for c in given]
    exact = hm.rank(starter, demo, weather, top=5, exact_weather=True)
    assert exact[0].season.kwh == pytest.approx(own[0].season.kwh, rel=1e-3)


def test_the_season_is_that_of_the_goals(starter: hm.Catalog, demo: hm.Installation) -> None:
    candidate = hm.assess(starter, demo)
    season = candidate.season
    assert season.months == (demo.to_dict()["goals"]["months"])
    assert season.days == 151.0
    days = {11: 30, 12: 31, 1: 31, 2: 28, 3: 31}
    total = sum(days[month] * season.kwh_per_day[month - 1] for month in season.months)
    assert season.kwh == pytest.approx(total, rel=2e-3)
    assert season.kwh_low < season.kwh < season.kwh_high
    assert 0.0 < season.harvest_fraction < 1.0
    assert season.best_ohm > season.stc_match_ohm
    assert f"{season.best_ohm:.3g} ohm" in season.best_ohm_sentence
    assert season.stc_match_kwh < season.best_kwh <= season.mpp_kwh
    assert season.stc_match_loss == pytest.approx(1.0 - season.stc_match_kwh / season.best_kwh)
    assert f"{season.stc_match_ohm:.3g} ohm (Vmp/Imp in full sun)" in season.stc_match_loss_sentence


def test_without_weather_power_at_the_conditions_decides(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    plain = demo.to_dict()
    del plain["weather"]
    ranking = hm.rank(starter, hm.Installation.from_dict(plain), top=3)
    assert not ranking.by_season
    assert ranking[0].season is None
    assert ranking[0].objective == ranking[0].mean_power_w
    assert "Without weather data, ranked by power" in ranking.remarks[0]


def test_months_without_a_latitude_are_not_used_and_that_is_said(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    plain = demo.to_dict()
    del plain["site"]["latitude_deg"]
    ranking = hm.rank(starter, hm.Installation.from_dict(plain), top=3)
    assert not ranking.by_season
    assert any("the site lacks latitude_deg" in remark for remark in ranking.remarks)


def test_a_bar_is_drawn(
    starter: hm.Catalog, demo: hm.Installation, capsys: pytest.CaptureFixture[str]
) -> None:
    hm.rank(starter, demo, top=3, progress=True)
    assert "100" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda c, w: hm.EnergyCurve(c.panels[PANEL], w, months=[13]), "months"),
        (lambda c, w: hm.EnergyCurve(c.panels[PANEL], w, months=[2, 2]), "given twice"),
        (lambda c, w: hm.EnergyCurve(c.panels[PANEL], w, noct_c=200), "noct_c"),
        (lambda c, w: hm.EnergyCurve(c.panels[PANEL], w, vector_width="wide"), "vector_width"),
        (lambda c, w: hm.EnergyCurve(PANEL, w), "panel_or_diode"),
        (lambda c, w: hm.EnergyCurve(c.panels[PANEL], w).delivered_kwh(-1.0), "resistance_ohm"),
        (lambda c, w: hm.EnergyCurve(c.panels[PANEL], w).delivered_kwh(1, wire_ohm=-1), "wire_ohm"),
    ],
)
def test_what_means_nothing_is_refused_by_name(
    call: object, words: str, starter: hm.Catalog, weather: hm.Weather
) -> None:
    with pytest.raises(hm.InvalidInput, match=words):
        call(starter, weather)  # type: ignore[operator]
