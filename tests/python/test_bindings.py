"""Every bound function once: value, type, keyword names, docstring, arrays and threads."""

from __future__ import annotations

import inspect
import math
import re
import sys
import threading
import time
from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch._faces import Held

CLASSES = [
    name
    for name in hm.__all__
    if inspect.isclass(getattr(hm, name)) and not issubclass(getattr(hm, name), Exception)
]
UNITS = """
_w [W]  _v [V]  _a [A]  _c [°C]  _k [K]  _m [m]  _mm [mm]  _mm2 [mm2]  _m2 [m2]  _w_m2 [W/m2]
_kwh_m2 [kWh/m2]  _kwh_day [kWh/day]  _w_k [W/K]  _wh_k [Wh/K]
_w_cm2 [W/cm2]  _w_mk [W/mK]  _w_m2k [W/m2K]  _kg_m3 [kg/m3]  _ohm [ohm]  _mohm [Mohm]
_ohm_per_km [ohm/km]  _ohm_per_m [ohm/m]  _deg [deg]  _pct [%]  _pct_per_k [%/K]  _a_per_k [A/K]
_per_k [1/K]  _ev [eV]  _conductance_s [S]
"""
UNIT_OF_ENDING = dict(zip(UNITS.split()[::2], UNITS.split()[1::2], strict=True))
PANEL = "silicon-60-cell-245"


@pytest.fixture(scope="module")
def fit(starter: hm.Catalog) -> hm.DatasheetFit:
    return hm.fit_single_diode(starter.panels[PANEL])


@pytest.fixture(scope="module")
def curve(fit: hm.DatasheetFit) -> hm.DiodeCurve:
    return fit.at(irradiance_w_m2=800, cell_temperature_c=40)


@pytest.fixture(scope="module")
def array_curve(fit: hm.DatasheetFit) -> hm.ArrayCurve:
    array = hm.Array.uniform(fit, series=3, parallel=2)
    return array.at(irradiance_w_m2=800, cell_temperature_c=40)


def members(cls: type) -> list[str]:
    """Public members; the fields of a record of Python are described in its docstring."""
    described = getattr(cls, "__dataclass_fields__", {})
    return [n for n in dir(cls) if not n.startswith("_") and n != "kind" and n not in described]


@pytest.mark.parametrize(
    "name", [name for name in hm.__all__ if name not in ("__version__", "plot", "weather")]
)
def test_every_public_name_has_a_docstring_and_belongs_to_the_package(name: str) -> None:
    thing = getattr(hm, name)
    assert thing.__doc__
    assert thing.__module__.startswith("heatmatch")
    assert "_core" not in thing.__module__


@pytest.mark.parametrize("name", CLASSES)
def test_every_public_member_has_a_docstring(name: str) -> None:
    cls = getattr(hm, name)
    for member in members(cls):
        text = getattr(cls, member).__doc__ or ""
        # A bound function's begins with its signature, or with several.
        said = re.sub(r"^(?:\d+\. )?\w+\(.*$", "", text, flags=re.MULTILINE)
        assert said.replace("Overloaded function.", "").strip(), f"{name}.{member}"
        # Two colons at the end of a line begin a block of equations.
        assert not re.search(r"::\S", text), f"{name}.{member} shows a name of C++: {text}"


@pytest.mark.parametrize("name", CLASSES)
def test_numeric_properties_state_their_unit(name: str) -> None:
    cls = getattr(hm, name)
    tables = {"Medium": {"heat_capacity_j_kgk", "conductivity_w_mk"}}.get(name, set())
    for member in set(members(cls)) - tables:
        endings = [ending for ending in UNIT_OF_ENDING if member.endswith(ending)]
        if endings and isinstance(inspect.getattr_static(cls, member), (property, Held)):
            unit = UNIT_OF_ENDING[max(endings, key=len)]
            assert unit in getattr(cls, member).__doc__, f"{name}.{member} lacks {unit}"


def test_a_fit_meets_its_label(starter: hm.Catalog, fit: hm.DatasheetFit) -> None:
    panel = starter.panels[PANEL]
    at_label = fit.at(irradiance_w_m2=1000, cell_temperature_c=25)
    best = at_label.maximum_power()
    assert isinstance(fit, hm.SingleDiode)
    assert (fit.fit_mode, fit.vmp_shift, fit.assumed, fit.warnings) == ("exact", 0.0, [], [])
    assert fit.series_resistance_clamped is False
    assert best.voltage_v == pytest.approx(panel.v_mp, rel=1e-9)
    assert best.current_a == pytest.approx(panel.i_mp, rel=1e-9)
    assert best.power_w == pytest.approx(panel.v_mp * panel.i_mp, rel=1e-9)
    assert at_label.open_circuit_voltage_v == pytest.approx(panel.v_oc, rel=1e-9)
    assert at_label.short_circuit_current_a == pytest.approx(panel.i_sc, rel=1e-9)


def test_a_fit_of_two_label_values_says_what_it_assumed(minimal: Callable[..., Any]) -> None:
    assumed = hm.fit_single_diode(minimal("panel")).assumed
    for field in ("v_mp", "i_mp", "beta_voc_pct_per_k", "technology"):
        assert any(field in text for text in assumed)
    without = hm.fit_single_diode(minimal("panel"), use_gamma=False)
    assert without.series_resistance_per_k == 0.0


def test_a_single_diode_keeps_logarithm_and_conductance() -> None:
    diode = hm.SingleDiode(
        light_current_a=8.67,
        saturation_current_a=3e-10,
        series_resistance_ohm=0.3,
        shunt_resistance_ohm=250,
        modified_ideality_v=1.58,
    )
    assert diode.ln_saturation_current == pytest.approx(math.log(3e-10), rel=1e-15)
    assert diode.shunt_conductance_s == pytest.approx(1 / 250, rel=1e-15)
    assert (diode.light_current_a, diode.series_resistance_ohm) == (8.67, 0.3)
    assert (diode.modified_ideality_v, diode.alpha_isc_a_per_k) == (1.58, 0.0)
    half = diode.scaled(current_factor=0.5, voltage_factor=2)
    stc = {"irradiance_w_m2": 1000, "cell_temperature_c": 25}
    whole, scaled = diode.at(**stc).maximum_power(), half.at(**stc).maximum_power()
    assert scaled.voltage_v == pytest.approx(2 * whole.voltage_v, rel=1e-12)
    assert scaled.current_a == pytest.approx(0.5 * whole.current_a, rel=1e-12)


def test_no_sun_gives_nothing(fit: hm.DatasheetFit) -> None:
    dark = fit.at(irradiance_w_m2=0, cell_temperature_c=10)
    point = dark.into_resistance(10.0)
    assert (point.voltage_v, point.current_a, point.power_w) == (0.0, 0.0, 0.0)
    assert dark.maximum_power().power_w == 0.0


def test_an_array_scales_volts_by_series_and_amperes_by_parallel(
    starter: hm.Catalog, fit: hm.DatasheetFit, curve: hm.DiodeCurve, array_curve: hm.ArrayCurve
) -> None:
    assert (array_curve.series, array_curve.parallel) == (3, 2)
    assert array_curve.open_circuit_voltage_v == pytest.approx(3 * curve.open_circuit_voltage_v)
    assert array_curve.short_circuit_current_a == pytest.approx(2 * curve.short_circuit_current_a)
    assert array_curve.maximum_power().power_w == pytest.approx(6 * curve.maximum_power().power_w)
    # The load of each panel is R x parallel / series = 15 ohm x 2 / 3.
    whole, each = array_curve.into_resistance(15.0), curve.into_resistance(10.0)
    assert whole.power_w == pytest.approx(6 * each.power_w, rel=1e-12)
    from_panel = hm.Array.uniform(starter.panels[PANEL])
    assert (from_panel.series, from_panel.parallel) == (1, 1)
    assert from_panel.panel.light_current_a == fit.light_current_a


@pytest.mark.parametrize(
    "numbers",
    [
        [1.0, 10.0, 30.0],
        (1, 10, 30),
        range(1, 30, 9),
        np.array([[1.0, 5.0], [10.0, 30.0]]),
        np.array([[1.0, 5.0], [10.0, 30.0]]).T,
        np.linspace(1.0, 30.0, 9)[::-2],
        np.array([1, 10, 30], dtype=np.int16),
        np.array([1.0, 10.0, 30.0], dtype=np.float32),
        [],
        np.zeros((0, 3)),
    ],
    ids=lambda numbers: f"{type(numbers).__name__}{np.shape(numbers)}",
)
def test_arrays_give_what_scalars_give_in_the_same_shape(
    curve: hm.DiodeCurve, array_curve: hm.ArrayCurve, numbers: Any
) -> None:
    plain = np.asarray(numbers, dtype=float)
    for one in (curve, array_curve):
        for function in (one.current_a, one.voltage_v):
            many = function(numbers)
            assert isinstance(many, np.ndarray)
            assert (many.dtype, many.shape) == (np.float64, plain.shape)
            assert many.ravel().tolist() == [function(x) for x in plain.ravel().tolist()]
        points = one.into_resistance(numbers)
        assert isinstance(points, hm.OperatingPoints)
        singles = [one.into_resistance(x) for x in plain.ravel().tolist()]
        for name in ("voltage_v", "current_a", "power_w"):
            many = getattr(points, name)
            assert (many.dtype, many.shape) == (np.float64, plain.shape)
            assert many.ravel().tolist() == [getattr(point, name) for point in singles]


def test_a_number_gives_a_number(curve: hm.DiodeCurve, array_curve: hm.ArrayCurve) -> None:
    for one in (curve, array_curve):
        for number in (10, 10.0, np.float32(10), np.int64(10), np.array(10.0)):
            assert type(one.current_a(number)) is float
            assert one.current_a(voltage_v=number) == one.current_a(10.0)
            assert one.voltage_v(current_a=number) == one.voltage_v(10.0)
            point = one.into_resistance(resistance_ohm=number)
            assert isinstance(point, hm.OperatingPoint)
            assert point.voltage_v == pytest.approx(10.0 * point.current_a, rel=1e-12)
            assert point.power_w == pytest.approx(point.voltage_v * point.current_a, rel=1e-12)
        assert one.current_a(one.open_circuit_voltage_v) == pytest.approx(0.0, abs=1e-9)
        assert one.current_a(0.0) == pytest.approx(one.short_circuit_current_a, rel=1e-12)


@pytest.mark.parametrize(
    "wrong",
    ["ten", {}, {1.0}, [[1.0], [1.0, 2.0]], 1j, [1j], ..., None, [None], "10 V"],
    ids=repr,
)
def test_what_is_no_number_is_refused_in_words(curve: hm.DiodeCurve, wrong: Any) -> None:
    for function in (curve.current_a, curve.voltage_v, curve.into_resistance):
        with pytest.raises((TypeError, hm.InvalidInput)):
            function(wrong)


def test_operating_points_of_many_curves_are_those_of_each(fit: hm.DatasheetFit) -> None:
    suns = [(1000, 45), (600, 35), (200, 25), (0, 10)]
    curves = [fit.at(irradiance_w_m2=g, cell_temperature_c=t) for g, t in suns]
    names = ("light_current_a", "ln_saturation_current", "series_resistance_ohm")
    names += ("shunt_conductance_s", "ideality_v")
    columns = {name: np.array([getattr(one, name) for one in curves]) for name in names}
    ohms = np.array([4.0, 8.0, 16.0, 32.0])
    points = hm.operating_points(**columns, resistance_ohm=ohms)
    each = [one.into_resistance(r) for one, r in zip(curves, ohms, strict=True)]
    assert points.power_w == pytest.approx([point.power_w for point in each], rel=1e-12)
    square = {name: column.reshape(2, 2) for name, column in columns.items()}
    shaped = hm.operating_points(**square, resistance_ohm=ohms.reshape(2, 2))
    assert shaped.voltage_v.shape == (2, 2)
    assert shaped.voltage_v.ravel().tolist() == points.voltage_v.tolist()
    with pytest.raises(hm.InvalidInput, match="4 for all six arrays") as refused:
        hm.operating_points(**columns | {"ideality_v": [1.5]}, resistance_ohm=ohms)
    assert refused.value.value == "1"
    with pytest.raises(TypeError):
        hm.operating_points(**columns, resistance_ohm=["many"] * 4)


def gets_a_turn_during(call: Callable[[], object]) -> bool:
    """Whether another thread runs during the call: only if the lock is released."""
    turns = 0
    running, stop = threading.Event(), threading.Event()

    def count() -> None:
        nonlocal turns
        while not stop.is_set():
            turns += 1
            running.set()
            time.sleep(1e-4)

    interval = sys.getswitchinterval()
    thread = threading.Thread(target=count)
    thread.start()
    running.wait()
    # From here on this thread keeps the lock unless the call gives it up.
    sys.setswitchinterval(1000.0)
    try:
        before = turns
        return any(call() is not stop and turns > before for _ in range(100))
    finally:
        sys.setswitchinterval(interval)
        stop.set()
        thread.join()


def test_long_calls_let_other_threads_run(
    starter: hm.Catalog, demo: hm.Installation, curve: hm.DiodeCurve, array_curve: hm.ArrayCurve
) -> None:
    many = np.linspace(0.1, 30.0, 300_000)
    same = [np.full_like(many, value) for value in (8.0, -22.0, 0.3, 0.002, 1.5)]
    assert gets_a_turn_during(lambda: curve.current_a(many))
    assert gets_a_turn_during(lambda: array_curve.voltage_v(many))
    assert gets_a_turn_during(lambda: curve.into_resistance(many))
    assert gets_a_turn_during(lambda: hm.operating_points(*same, many))
    assert gets_a_turn_during(lambda: hm.rank(starter, demo, top=50))
    standing = hm.assess(starter, demo)
    clear = hm.Weather.clear_days(demo.site)
    assert gets_a_turn_during(lambda: hm.simulate_day(standing, clear, days=20))
    assert gets_a_turn_during(lambda: hm.simulate_stagnation(standing))
