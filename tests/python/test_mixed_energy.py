"""Energy of arrays of unlike panels on several planes of one sky.

Source: pvlib-python, calcparams_desoto and v_from_i by Lambert's W, added in series with bypass
diodes and in parallel by NumPy (tests/bench/unlike_peer.py).
"""

from __future__ import annotations

import pickle

import heatmatch as hm
import numpy as np
import pytest
from heatmatch.errors import InvalidInput
from unlike_peer import Substrings, UnlikeArray, substrings_of

KINDS = ("silicon-60-cell-245", "silicon-60-cell-270", "silicon-72-cell-355")
NOCT_C = 45.0
WHERE = ((0, "south"), (1, "south"), (2, "west"), (0, "west"), (1, "south"), (2, "south"))


@pytest.fixture(scope="module")
def planes() -> dict[str, hm.Weather]:
    south = hm.Weather.from_installation(hm.demo())
    return {"south": south, "west": south.on_plane(tilt_deg=40, azimuth_deg=260)}


@pytest.fixture(scope="module")
def diodes(starter: hm.Catalog) -> list[hm.SingleDiode]:
    return [hm.fit_single_diode(starter.panels[kind], use_gamma=False) for kind in KINDS]


@pytest.fixture(scope="module")
def panels(diodes: list[hm.SingleDiode]) -> list[hm.StringPanel]:
    return [hm.StringPanel(diode, substrings=3) for diode in diodes]


def peer_string(
    diodes: list[hm.SingleDiode],
    planes: dict[str, hm.Weather],
    where: tuple[tuple[int, str], ...],
    rows: np.ndarray,
) -> list[Substrings]:
    made = []
    for kind, plane in dict.fromkeys(where):
        weather = planes[plane]
        sun = np.asarray(weather.plane_irradiance_w_m2)[rows]
        cells = np.asarray(weather.cell_temperature_c(noct_c=NOCT_C))[rows]
        made.append(substrings_of(diodes[kind], sun, cells, where.count((kind, plane))))
    return made


def sunlit(planes: dict[str, hm.Weather]) -> np.ndarray:
    suns = [np.asarray(weather.plane_irradiance_w_m2) for weather in planes.values()]
    return np.flatnonzero(np.max(suns, axis=0) > 0.0)


# Source: pvlib v_from_i, halved to 1e-15, hour by hour.
def test_a_string_on_two_planes_agrees_with_pvlib_in_every_hour(
    diodes: list[hm.SingleDiode],
    panels: list[hm.StringPanel],
    planes: dict[str, hm.Weather],
) -> None:
    rows = sunlit(planes)
    peer = UnlikeArray([peer_string(diodes, planes, WHERE, rows)])
    array = hm.Array([[panels[kind] for kind, _ in WHERE]])
    weathers = [planes[plane] for _, plane in WHERE]
    curve = hm.EnergyCurve(array, weathers, exact=True, noct_c=NOCT_C)
    condensed = hm.EnergyCurve(array, weathers, noct_c=NOCT_C)
    hours = np.asarray(planes["south"].hours)[rows]
    suns = np.array([np.asarray(planes[plane].plane_irradiance_w_m2)[rows] for _, plane in WHERE])
    cells = np.array(
        [np.asarray(planes[plane].cell_temperature_c(noct_c=NOCT_C))[rows] for _, plane in WHERE]
    )
    for ratio in (0.3, 1.3, 6.0):
        ohms = ratio * curve.stc_match_ohm
        theirs = peer.into_one(ohms)
        for hour in range(0, len(rows), 97):
            at = array.at(irradiance_w_m2=suns[:, hour], cell_temperature_c=cells[:, hour])
            ours = at.into_resistance(ohms).power_w
            assert ours == pytest.approx(theirs[hour], rel=1e-9, abs=1e-9)
        kwh = float(np.sum(theirs * hours)) / 1000.0
        # Between the resistances of its grid a curve is a polynomial: 6e-5.
        assert curve.delivered_kwh(ohms) == pytest.approx(kwh, rel=6e-5)
        assert condensed.delivered_kwh(ohms) == pytest.approx(kwh, rel=1e-3)


# Source: pvlib v_from_i, halved to 1e-13, at hours over the year.
def test_two_strings_on_two_planes_agree_with_pvlib(
    diodes: list[hm.SingleDiode],
    panels: list[hm.StringPanel],
    planes: dict[str, hm.Weather],
) -> None:
    rows = sunlit(planes)[40::150]
    where = [((0, "south"), (1, "south"), (2, "south")), ((0, "west"), (1, "west"), (2, "west"))]
    peer = UnlikeArray([peer_string(diodes, planes, string, rows) for string in where])
    array = hm.Array([[panels[kind] for kind, _ in string] for string in where])
    flat = [place for string in where for place in string]
    for ohms in (6.0, 20.0):
        theirs = peer.into(ohms, 200.0)
        for hour, row in enumerate(rows):
            at = array.at(
                irradiance_w_m2=[planes[p].plane_irradiance_w_m2[row] for _, p in flat],
                cell_temperature_c=[
                    planes[p].cell_temperature_c(noct_c=NOCT_C)[row] for _, p in flat
                ],
            )
            ours = at.into_resistance(ohms).power_w
            assert ours == pytest.approx(theirs[hour], rel=1e-9, abs=1e-9)


def test_the_curve_of_equal_panels_is_that_of_one_panel(
    starter: hm.Catalog, planes: dict[str, hm.Weather]
) -> None:
    panel = starter.panels[KINDS[0]]
    one = hm.EnergyCurve(panel, planes["south"])
    array = hm.Array([[panel, panel], [panel, panel]])
    both = hm.EnergyCurve(array, planes["south"])
    uniform = hm.EnergyCurve(
        hm.Array.uniform(panel, series=2, parallel=2), planes["south"], noct_c=panel.noct_c
    )
    ohms = np.array([2.0, 7.0, 12.0, 40.0])
    np.testing.assert_allclose(both.delivered_kwh(ohms), 4 * one.delivered_kwh(ohms), rtol=2e-4)
    np.testing.assert_allclose(uniform.delivered_kwh(ohms), both.delivered_kwh(ohms), rtol=1e-9)
    assert both.stc_match_ohm == pytest.approx(one.stc_match_ohm, rel=1e-2)
    assert both.mpp_kwh == pytest.approx(4 * one.mpp_kwh, rel=1e-9)
    assert both.largest(8.0).power_w == pytest.approx(4 * one.largest(8.0).power_w, rel=1e-9)


def test_an_array_has_one_weather_or_one_for_each_panel(
    panels: list[hm.StringPanel], planes: dict[str, hm.Weather]
) -> None:
    array = hm.Array([[panels[0], panels[1]], [panels[2], panels[2]]])
    south, west = planes["south"], planes["west"]
    flat = hm.EnergyCurve(array, [south, south, west, west])
    nested = hm.EnergyCurve(array, [[south, south], [west, west]])
    assert flat.delivered_kwh(10.0) == nested.delivered_kwh(10.0)
    copied = pickle.loads(pickle.dumps(flat))
    assert copied.delivered_kwh(10.0) == flat.delivered_kwh(10.0)
    assert copied.mpp_kwh == flat.mpp_kwh
    with pytest.raises(InvalidInput, match="one for each of its 4 panels"):
        hm.EnergyCurve(array, [south, west])
    with pytest.raises(InvalidInput, match="a Weather, or a list"):
        hm.EnergyCurve(array, "sunny")
    short = hm.Weather.from_plane([500.0, 0.0], [30.0, 10.0], 1.0)
    with pytest.raises(InvalidInput, match="one sky"):
        hm.EnergyCurve(array, [south, south, south, short])


def test_a_weather_keeps_its_sky_in_a_pickle(planes: dict[str, hm.Weather]) -> None:
    south = planes["south"]
    assert south.has_sky
    copied = pickle.loads(pickle.dumps(south))
    assert copied.has_sky
    assert copied.on_plane(tilt_deg=40, azimuth_deg=260) == planes["west"]
    plain = hm.Weather.from_plane([500.0], [30.0], 1.0)
    assert not plain.has_sky
    with pytest.raises(InvalidInput, match="ghi, dni and dhi"):
        plain.on_plane(tilt_deg=40, azimuth_deg=260)
    with pytest.raises(InvalidInput, match="tilt_deg"):
        south.on_plane(tilt_deg=100, azimuth_deg=0)


def test_a_group_ranks_on_its_own_plane_and_in_its_shade(starter: hm.Catalog) -> None:
    plain = hm.demo().to_dict()
    group = plain["panels"][0]["group"]

    def kwh(**changes: object) -> float:
        made = {**plain, "panels": [{**plain["panels"][0], **changes}, *plain["panels"][1:]]}
        ranking = hm.rank(starter, hm.Installation(**_arguments(made)), group=group, top=1)
        return ranking[0].season.kwh  # type: ignore[union-attr]

    today = kwh()
    assert kwh(tilt_deg=plain["site"]["tilt_deg"]) == today
    assert kwh(azimuth_deg=100) < today
    assert kwh(shade_pct=20) < today
    assert kwh(shade_pct=[0] * 12) == today
    assert kwh(shade_pct=[[0] * 12 + [50] * 12] * 12) < today


def _arguments(plain: dict) -> dict:
    return {name: value for name, value in plain.items() if name != "heatmatch_installation"}
