"""Sun, sky and light on a plane against pvlib on random moments and places, and what is refused.

Source: pvlib-python, spa_python, clearsky, irradiance, iam and temperature, as named at each check.
"""

from __future__ import annotations

import datetime
import pickle
from typing import Any

import heatmatch as hm
import numpy as np
import pandas as pd
import pytest
from pvlib import atmosphere, clearsky, iam, irradiance, solarposition, temperature

COUNT = 400
PLACE = {"latitude_deg": 39.742476, "longitude_deg": -105.1786, "elevation_m": 1830.14}
NOON = pd.DatetimeIndex(["2003-10-17 12:30:30"])
ANGLES = {"plane_azimuth_deg": 180, "apparent_zenith_deg": 40, "sun_azimuth_deg": 170}
LIGHT = {"ghi_w_m2": 600, "dni_w_m2": 650, "dhi_w_m2": 100}


@pytest.fixture
def rng() -> np.random.Generator:
    return np.random.default_rng(20)


def apart_deg(zenith_a: Any, azimuth_a: Any, zenith_b: Any, azimuth_b: Any) -> Any:
    """Angle on the sky between two directions."""
    za, aa, zb, ab = (np.radians(angle) for angle in (zenith_a, azimuth_a, zenith_b, azimuth_b))
    half = np.sin((za - zb) / 2) ** 2 + np.sin(za) * np.sin(zb) * np.sin((aa - ab) / 2) ** 2
    return np.degrees(2 * np.arcsin(np.sqrt(half)))


def test_positions_agree_with_the_full_solution(rng: np.random.Generator) -> None:
    first, last = (pd.Timestamp(f"{year}-01-01", tz="UTC") for year in (1950, 2100))
    for _ in range(COUNT):
        latitude, longitude = rng.uniform(-90, 90), rng.uniform(-180, 180)
        height = rng.uniform(0, 4000)
        times = pd.DatetimeIndex([first + (last - first) * rng.uniform()]).round("s")
        ours = hm.sun_position(latitude, longitude, height, times)
        # The excess of dynamical over universal time grows, pvlib's estimate of it with it.
        peer = solarposition.spa_python(
            times,
            latitude,
            longitude,
            altitude=height,
            pressure=atmosphere.alt2pres(height),
            temperature=12,
            delta_t=None,
            how="numpy",
        ).iloc[0]
        apart = apart_deg(ours.zenith_deg, ours.azimuth_deg, peer.zenith, peer.azimuth)
        assert apart[0] < 0.012
        # Where the rim of the sun is on the horizon, a hair decides whether refraction counts.
        if abs(peer.zenith - 90.8333) > 0.02:
            assert abs(ours.apparent_zenith_deg[0] - peer.apparent_zenith) < 0.012
        extra = irradiance.get_extra_radiation(np.asarray(times.day_of_year), method="spencer")
        np.testing.assert_allclose(ours.extraterrestrial_w_m2, extra, rtol=1e-12)


def test_clear_skies_agree_with_pvlib(rng: np.random.Generator) -> None:
    zenith = np.append(rng.uniform(0, 89.9, COUNT), [0, 91, 120, 180])
    extra = rng.uniform(1321, 1414, zenith.size)
    for height, turbidity in ((0, 3), (250, 2.2), (1600, 4.5), (3200, 1.5), (60, 7)):
        sky = hm.clear_sky(
            zenith,
            elevation_m=height,
            linke_turbidity=turbidity,
            extraterrestrial_w_m2=extra,
        )
        mass = atmosphere.get_relative_airmass(zenith, "kastenyoung1989")
        mass = atmosphere.get_absolute_airmass(mass, atmosphere.alt2pres(height))
        with np.errstate(divide="ignore"):  # the peer divides by the cosine below the horizon too
            peer = clearsky.ineichen(zenith, mass, turbidity, height, extra)
        for name in ("ghi", "dni", "dhi"):
            expected = np.where(zenith > 90, 0.0, peer[name])
            np.testing.assert_allclose(getattr(sky, f"{name}_w_m2"), expected, rtol=1e-9)
    simple = hm.clear_sky(zenith, model="haurwitz")
    peer = clearsky.haurwitz(pd.Series(zenith)).ghi
    np.testing.assert_allclose(simple.ghi_w_m2, peer, rtol=1e-12)
    assert np.isnan(simple.dni_w_m2).all()
    assert np.isnan(simple.dhi_w_m2).all()


def test_the_split_of_global_light_agrees_with_pvlib(rng: np.random.Generator) -> None:
    zenith = rng.uniform(0, 100, COUNT)
    days = rng.integers(1, 366, COUNT)
    extra = np.asarray(irradiance.get_extra_radiation(days, method="spencer"))
    ghi = rng.uniform(0, 1.1, COUNT) * extra * np.maximum(np.cos(np.radians(zenith)), 0.01)
    peer = irradiance.erbs(ghi, zenith, days)
    ours = hm.erbs_split(ghi, zenith, extra)
    np.testing.assert_allclose(ours.dni_w_m2, peer["dni"], rtol=1e-9, atol=1e-9)
    np.testing.assert_allclose(ours.dhi_w_m2, peer["dhi"], rtol=1e-9)


def test_light_on_planes_agrees_with_pvlib(rng: np.random.Generator) -> None:
    tilt, azimuth = rng.uniform(0, 90, COUNT), rng.uniform(0, 360, COUNT)
    zenith, sun_azimuth = rng.uniform(0, 89.9, COUNT), rng.uniform(0, 360, COUNT)
    dni, dhi = rng.uniform(0, 1000, COUNT), rng.uniform(5, 400, COUNT)
    albedo, extra = rng.uniform(0.1, 0.8, COUNT), rng.uniform(1321, 1414, COUNT)
    ghi = dni * np.cos(np.radians(zenith)) + dhi
    on = hm.plane_irradiance(
        tilt_deg=tilt,
        plane_azimuth_deg=azimuth,
        apparent_zenith_deg=zenith,
        sun_azimuth_deg=sun_azimuth,
        ghi_w_m2=ghi,
        dni_w_m2=dni,
        dhi_w_m2=dhi,
        extraterrestrial_w_m2=extra,
        albedo=albedo,
    )
    angle = hm.incidence_angle_deg(
        tilt_deg=tilt,
        plane_azimuth_deg=azimuth,
        apparent_zenith_deg=zenith,
        sun_azimuth_deg=sun_azimuth,
    )
    np.testing.assert_allclose(angle, irradiance.aoi(tilt, azimuth, zenith, sun_azimuth), atol=1e-6)
    sky = irradiance.haydavies(
        tilt, azimuth, dhi, dni, extra, solar_zenith=zenith, solar_azimuth=sun_azimuth
    )
    beam = irradiance.beam_component(tilt, azimuth, zenith, sun_azimuth, dni)
    ground = irradiance.get_ground_diffuse(tilt, ghi, albedo)
    np.testing.assert_allclose(on.beam_w_m2, beam, rtol=1e-9, atol=1e-9)
    np.testing.assert_allclose(on.circumsolar_w_m2 + on.sky_w_m2, sky, rtol=1e-9)
    np.testing.assert_allclose(on.ground_w_m2, ground, rtol=1e-9, atol=1e-9)
    np.testing.assert_allclose(on.total_w_m2, beam + sky + ground, rtol=1e-9)


def test_glass_agrees_with_pvlib() -> None:
    angle = np.linspace(0, 90, 181)
    peer = iam.physical(angle, n=1.526, K=4, L=0.002)
    np.testing.assert_allclose(hm.glass_transmission(angle), peer, rtol=1e-9, atol=1e-12)


# pvlib sums over all directions, here the effective angles of Brandemuehl and Beckman are used.
@pytest.mark.parametrize("tilt", [15, 30, 45, 60, 90])
def test_diffuse_light_behind_glass_agrees_with_pvlib(tilt: float) -> None:
    before = hm.plane_irradiance(tilt_deg=tilt, model="isotropic", **ANGLES, **LIGHT)
    behind = hm.plane_irradiance(
        tilt_deg=tilt, model="isotropic", behind_glass=True, **ANGLES, **LIGHT
    )
    peer = iam.marion_diffuse("physical", tilt, n=1.526, K=4, L=0.002)
    assert behind.sky_w_m2 / before.sky_w_m2 == pytest.approx(peer["sky"], abs=0.015)
    assert behind.ground_w_m2 / before.ground_w_m2 == pytest.approx(peer["ground"], abs=0.03)
    angle = hm.incidence_angle_deg(tilt_deg=tilt, **ANGLES)
    share = hm.glass_transmission(angle)
    assert behind.beam_w_m2 == pytest.approx(before.beam_w_m2 * share)


def test_cell_temperatures_agree_with_pvlib(rng: np.random.Generator) -> None:
    sun, air, wind = rng.uniform(0, 1200, COUNT), rng.uniform(-40, 45, COUNT), rng.uniform(0, 20)
    faiman = temperature.faiman(sun, air, wind, u0=25.0, u1=6.84)
    np.testing.assert_allclose(hm.faiman_cell_temperature_c(sun, air, wind), faiman, rtol=1e-12)
    ross = temperature.ross(sun, air, 46.0)
    np.testing.assert_allclose(hm.noct_cell_temperature_c(sun, air, noct_c=46), ross, rtol=1e-12)


# Source: the worked example of the solar position algorithm (reda-andreas-2004), from memory.
def test_moments_of_every_kind_give_the_published_example() -> None:
    times = NOON.tz_localize("Etc/GMT+7")
    python = times[0].to_pydatetime()
    seconds = times[0].timestamp()
    kinds = [times, times.tz_convert("UTC").to_numpy("datetime64[ns]"), pd.Series(times)]
    kinds += [[python], [times[0]], [seconds], np.array([int(seconds)])]
    kinds += [np.array(["2003-10-17T19:30:30"], dtype="datetime64[s]"), times.as_unit("ms")]
    for kind in kinds:
        sun = hm.sun_position(**PLACE, times_utc=kind)
        assert sun.zenith_deg.shape == (1,)
        # Its pressure is 820 mbar, that of the standard atmosphere 813: 1e-4 degrees of refraction.
        assert sun.apparent_zenith_deg[0] == pytest.approx(50.11162, abs=0.005)
        assert sun.azimuth_deg[0] == pytest.approx(194.34024, abs=0.01)
    for single in (times[0], python, seconds, np.datetime64("2003-10-17T19:30:30")):
        assert hm.sun_position(**PLACE, times_utc=single).zenith_deg.shape == ()


def test_fractions_of_seconds_count() -> None:
    steps = np.array(["2003-10-17T19:30:30", "2003-10-17T19:30:30.500"], dtype="datetime64[ms]")
    whole = hm.sun_position(**PLACE, times_utc=steps).azimuth_deg
    numbers = steps.astype("datetime64[ms]").astype(float) / 1000
    assert whole[1] > whole[0]
    np.testing.assert_array_equal(whole, hm.sun_position(**PLACE, times_utc=numbers).azimuth_deg)


NAIVE = [
    NOON,
    pd.Series(NOON),
    NOON[0],
    datetime.datetime(2003, 10, 17, 12, 30),
    [datetime.datetime(2003, 10, 17, 12, 30)],
]
BAD_TIMES = [
    ("NaT", "known", pd.NaT),
    ("NaT", "known", np.array(["2003-10-17", "NaT"], dtype="datetime64[s]")),
    ("NaT", "known", pd.DatetimeIndex(["2003-10-17", pd.NaT], tz="UTC")),
    ("nan", "known", [1.7e9, float("nan")]),
    ("1949-12-31", "1950", np.array(["1949-12-31"], dtype="datetime64[D]")),
    ("2101-01-01", "2100", pd.DatetimeIndex(["2101-01-01"], tz="UTC")),
    ("1.7e+12", "2100", [1.7e12]),
    ("inf", "2100", float("inf")),
    ("'2003-10-17'", "time zone", "2003-10-17"),
    ("date(2003, 10, 17)", "time zone", datetime.date(2003, 10, 17)),
    ("DataFrame", "time zone", pd.DataFrame({"time": NOON})),
    ("True", "time zone", True),
    ("None", "time zone", None),
]


@pytest.mark.parametrize("times", NAIVE, ids=lambda times: type(times).__name__)
def test_clocks_without_a_time_zone_are_refused(times: Any) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        hm.sun_position(**PLACE, times_utc=times)
    error = refused.value
    assert error.field == "times_utc"
    assert "2003-10-17" in error.value
    assert error.allowed == "moments with a time zone"
    assert "tz_localize" in error.remedy


@pytest.mark.parametrize(("value", "allowed", "times"), BAD_TIMES)
def test_moments_that_cannot_be_used_are_refused(value: str, allowed: str, times: Any) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        hm.sun_position(**PLACE, times_utc=times)
    error = refused.value
    assert error.field == "times_utc"
    assert value in error.value
    assert allowed in error.allowed
    assert error.remedy


@pytest.mark.parametrize(
    ("field", "call"),
    [
        ("latitude_deg", lambda: hm.sun_position(95, 0, 0, 0.0)),
        ("longitude_deg", lambda: hm.sun_position(0, 200, 0, 0.0)),
        ("elevation_m", lambda: hm.sun_position(0, 0, float("nan"), 0.0)),
        ("apparent_zenith_deg", lambda: hm.clear_sky([20, 200])),
        ("linke_turbidity", lambda: hm.clear_sky(20, linke_turbidity=0.5)),
        ("elevation_m", lambda: hm.clear_sky(20, elevation_m=1e5)),
        ("model", lambda: hm.clear_sky(20, model="overcast")),
        ("extraterrestrial_w_m2", lambda: hm.erbs_split(500, 40, 700)),
        ("zenith_deg shape", lambda: hm.erbs_split([500, 600], [40, 50, 60], 1366)),
        ("ghi_w_m2", lambda: hm.erbs_split("bright", 40, 1366)),
        ("plane_azimuth_deg", lambda: plane(plane_azimuth_deg=-20)),
        ("tilt_deg", lambda: plane(tilt_deg=120)),
        ("albedo", lambda: plane(albedo=20)),
        ("dni_w_m2", lambda: plane(dni_w_m2=-1)),
        ("model", lambda: plane(model="perez")),
        ("incidence_deg", lambda: hm.glass_transmission(-5)),
        ("wind_m_s", lambda: hm.faiman_cell_temperature_c(800, 20, -1)),
        ("still_w_m2k", lambda: hm.faiman_cell_temperature_c(800, 20, 1, still_w_m2k=0)),
        ("air_c", lambda: hm.noct_cell_temperature_c(800, 300)),
        ("noct_c", lambda: hm.noct_cell_temperature_c(800, 20, noct_c=450)),
    ],
)
def test_a_value_that_cannot_be_is_refused_by_name(field: str, call: Any) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        call()
    error = refused.value
    assert error.field == field
    assert all((error.value, error.allowed, error.remedy))


def plane(**changes: Any) -> Any:
    """The light on one plane, some of the arguments changed."""
    return hm.plane_irradiance(**{"tilt_deg": 30, **ANGLES, **LIGHT, **changes})


def test_numbers_give_numbers_and_arrays_the_same_in_their_shape() -> None:
    assert isinstance(hm.clear_sky(40), hm.SkyIrradiance)
    assert isinstance(hm.glass_transmission(40), float)
    assert isinstance(plane(), hm.PlaneIrradiance)
    square = hm.faiman_cell_temperature_c([[800], [400]], 20, [0.0, 1.0, 3.0])
    assert square.shape == (2, 3)
    assert square[0, 2] == hm.faiman_cell_temperature_c(800, 20, 3)
    many = plane(tilt_deg=[30, 60])
    assert isinstance(many, hm.PlaneIrradiances)
    assert many.total_w_m2[0] == plane().total_w_m2
    assert many.sky_w_m2[1] == plane(tilt_deg=60).sky_w_m2
    sky = hm.clear_sky([40.0, float("nan")])
    assert sky.ghi_w_m2[0] == hm.clear_sky(40).ghi_w_m2
    assert np.isnan(sky.ghi_w_m2[1])
    assert hm.clear_sky([]).ghi_w_m2.shape == (0,)


def test_positions_pickle() -> None:
    sun = hm.sun_position(**PLACE, times_utc=NOON.tz_localize("UTC"))
    back = pickle.loads(pickle.dumps(sun))
    for name in ("zenith_deg", "apparent_zenith_deg", "azimuth_deg", "extraterrestrial_w_m2"):
        np.testing.assert_array_equal(getattr(back, name), getattr(sun, name))
