"""The installation: read from file, text or dict; its records; wires in their surroundings."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

BARE = {"heatmatch_installation": 1, "site": {"record_low_c": -20}}


def test_the_demo_is_the_file_in_the_notebooks_folder(demo: hm.Installation) -> None:
    path = Path(__file__).parents[2] / "notebooks" / "data" / "demo_installation.json"
    assert hm.Installation.from_json(path) == demo
    assert hm.Installation.from_json(str(path)) == demo


def test_an_installation_comes_back_from_text_file_and_dict(
    demo: hm.Installation, tmp_path: Path
) -> None:
    text = demo.to_json_text()
    assert hm.Installation.from_json_text(text) == demo
    assert hm.Installation.from_json_text(text).to_json_text() == text
    assert hm.Installation.from_dict(demo.to_dict()) == demo
    assert demo.to_dict() == json.loads(text)
    demo.to_json(tmp_path / "ö.json")
    assert (tmp_path / "ö.json").read_text(encoding="utf-8") == text
    assert hm.Installation.from_json(tmp_path / "ö.json") == demo


def test_installations_are_equal_by_content(
    demo: hm.Installation, changed_demo: Callable[..., hm.Installation]
) -> None:
    assert demo == hm.demo()
    assert demo != changed_demo(lambda plain: plain.update(name="elsewhere"))
    assert demo != 5
    assert demo is not None
    assert repr(demo) == "Installation('seedling house at Hollow Brook', 3 groups of panels)"


# The numbers are those of notebooks/data/demo_installation.json.
def test_the_records_of_the_demo_can_be_read(demo: hm.Installation) -> None:
    assert demo.name == "seedling house at Hollow Brook"
    site = demo.site
    assert (site.latitude_deg, site.longitude_deg, site.record_low_c) == (44.1, -72.6, -32.0)
    assert (site.elevation_m, site.tilt_deg, site.azimuth_deg) == (310.0, 60.0, 180.0)
    assert (site.albedo, site.wet, site.bright_irradiance_w_m2) == (0.2, True, 1000.0)
    pair, four, thin = demo.panels
    assert (pair.group, pair.panel, pair.count) == ("barn pair", "silicon-60-cell-245", 2)
    assert (pair.age_years, four.count, thin.measured) == (14.0, 4, None)
    assert pair.measured == {
        "v_oc": 33.6,
        "i_sc": 6.9,
        "irradiance_w_m2": 815.0,
        "cell_temperature_c": 52.0,
    }
    home, wall, tail = demo.runs
    assert (home.name, home.carries, home.length_m) == ("home run", "array", 9.0)
    assert (home.wire, home.connector, home.joint_ohm) == ("choose", "pv-plug-4-mm", None)
    assert (home.surroundings.kind, home.surroundings.air_c) == ("sunlit", 35.0)
    assert (wall.surroundings.kind, wall.connector) == ("conduit", None)
    assert tail.surroundings == hm.Surroundings(kind="open air", air_c=120, metal_raceway=True)
    devices = {device.part: device for device in demo.devices}
    isolator, thermostat = devices["pv-isolator-2-pole"], devices["snap-disc-fixed"]
    assert (isolator.run, isolator.duty, isolator.poles_used) == ("home run", "breaks dc", 2)
    assert (thermostat.run, thermostat.duty) == (None, "senses only")
    for record in (site, pair, home, isolator, home.surroundings):
        assert record == record
        assert record.to_dict()
        assert repr(record).startswith(type(record).__name__ + "(")


def test_a_number_may_be_text_with_a_unit_here_too(
    changed_demo: Callable[..., hm.Installation],
) -> None:
    # -22 °F = -30 °C; 30 ft = 9.144 m.
    cold = changed_demo(lambda plain: plain["site"].update(record_low_c="-22 °F"))
    assert cold.site.record_low_c == -30.0
    long = changed_demo(lambda plain: plain["runs"][0].update(length_m="30 ft"))
    assert long.runs[0].length_m == pytest.approx(9.144, rel=1e-12)


@pytest.mark.parametrize(
    "number", [np.int64(3), np.float64(3), np.float32(3)], ids=lambda number: type(number).__name__
)
def test_numpy_scalars_are_numbers_in_a_dict(
    number: Any, changed_demo: Callable[..., hm.Installation]
) -> None:
    changed = changed_demo(lambda plain: plain["panels"][0].update(count=number))
    assert changed.panels[0].count == 3


def test_what_is_left_out_is_unknown_or_has_a_default() -> None:
    bare = hm.Installation.from_dict(BARE)
    assert (bare.name, bare.panels, bare.runs, bare.devices) == ("", [], [], [])
    assert (bare.site.latitude_deg, bare.site.wet) == (None, None)
    assert hm.Installation.from_dict({**BARE, "weather": None, "store": None}) == bare


def test_odd_names_pass_through(changed_demo: Callable[..., hm.Installation]) -> None:
    for name in ("<script>alert(1)</script>", "גן ☀️", "x" * 10_000, 'a "b" \\ c'):
        assert changed_demo(lambda plain, name=name: plain.update(name=name)).name == name


def test_a_part_may_be_given_inline(starter: hm.Catalog, minimal: Callable[..., Any]) -> None:
    plain = {
        **BARE,
        "panels": [{"group": "one", "panel": "my-panel", "count": 1}],
        "elements": [{"element": "my-element", "count": 1}],
        "parts": {
            "panels": [minimal("panel").to_dict()],
            "elements": [minimal("element").to_dict()],
        },
    }
    ranking = hm.rank(starter, hm.Installation.from_dict(plain))
    assert ranking.evaluated == 1
    assert ranking[0].circuit.panel == minimal("panel")
    assert ranking[0].circuit.element == minimal("element")


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (lambda d: d.pop("site"), r"site = \(missing\) must be given"),
        (lambda d: d.update(site=None), "site"),
        (lambda d: d["site"].pop("record_low_c"), r"record_low_c = \(missing\)"),
        (lambda d: d["site"].update(record_low_c=None), r"record_low_c = \(missing\)"),
        (lambda d: d["site"].update(record_low_c=float("nan")), "record_low_c|correct the JSON"),
        (lambda d: d["site"].update(record_low_c=-320), "record_low_c = -320 °C must be"),
        (lambda d: d["site"].update(recordlow=-3), "choices: record_low_c"),
        (lambda d: d.update(pannels=[]), 'did you mean "panels"'),
        (lambda d: d.update(panels={}), "a list in brackets"),
        (lambda d: d["panels"][0].update(count=0), r'panels\[0\] "barn pair": count = 0'),
        (lambda d: d["panels"][0].update(count=1.5), "a whole number"),
        (lambda d: d["panels"][1].pop("panel"), r'panels\[1\] "porch four": panel = \(missing\)'),
        (lambda d: d["panels"][0]["measured"].pop("irradiance_w_m2"), "irradiance_w_m2"),
        (
            lambda d: d["panels"][0].update(
                measured={"irradiance_w_m2": 800, "cell_temperature_c": 50}
            ),
            "v_oc|i_sc",
        ),
        (lambda d: d["elements"][0].update(any={}), "given together with `any`"),
        (lambda d: d["elements"].append({"count": 2}), "element"),
        (lambda d: d["runs"][0]["surroundings"].update(kind="sunny"), "sunlit"),
        (lambda d: d["runs"][0].update(carries="volts"), "carries"),
        (lambda d: d["devices"][0].update(duty="break dc"), 'did you mean "breaks dc"'),
        (lambda d: d["store"].update(shape="barrel"), "cylinder or box"),
        (lambda d: d["weather"]["sun_hours"].pop(), "sun_hours = 11 values must be 12"),
        (lambda d: d["weather"]["temp_min_c"].__setitem__(0, 50), "exchange the two"),
        (lambda d: d["site"].update(record_low_c=24), "record_low_c = 24 °C .* minus sign"),
        (lambda d: d["goals"].update(months=[13]), "months"),
        (lambda d: d["goals"].update(months=[1.5]), "months"),
        (lambda d: d.update(heatmatch_installation=2), "heatmatch_installation = 2 must be 1"),
        (lambda d: d.update(heatmatch_installation=2**32 + 1), "heatmatch_installation"),
        (lambda d: d.update(parts={"panels": [{"id": "a"}]}), r'panel\[0\] "a": label'),
        (lambda d: d.update(parts={"panles": []}), "choices: panel, element"),
    ],
)
def test_what_cannot_be_is_refused_with_its_place(
    change: Callable[[dict[str, Any]], Any],
    words: str,
    changed_demo: Callable[..., hm.Installation],
) -> None:
    with pytest.raises(hm.InvalidInput, match=words):
        changed_demo(change)


def test_files_that_cannot_be_read_or_written_are_named(
    demo: hm.Installation, tmp_path: Path
) -> None:
    for path in (tmp_path / "none.json", tmp_path):
        with pytest.raises(hm.FileError, match=path.name) as refused:
            hm.Installation.from_json(path)
        assert refused.value.part == str(path)
    with pytest.raises(hm.FileError, match="no-folder"):
        demo.to_json(tmp_path / "no-folder" / "x.json")
    (tmp_path / "latin.json").write_bytes(b'{"heatmatch_installation": 1, "name": "\xff"}')
    with pytest.raises(hm.InvalidInput, match="latin.json"):
        hm.Installation.from_json(tmp_path / "latin.json")
    for wrong in (5, None, {}):
        with pytest.raises(TypeError):
            hm.Installation.from_json(wrong)  # type: ignore


def test_surroundings_have_three_short_forms() -> None:
    assert hm.Surroundings.open_air(25) == hm.Surroundings(kind="open air", air_c="77 °F")
    sunlit = hm.Surroundings.sunlit(35, irradiance_w_m2=800)
    assert sunlit == hm.Surroundings(kind="sunlit", air_c=35, irradiance_w_m2=800)
    assert hm.Surroundings.sunlit(35).irradiance_w_m2 == 1000.0
    assert hm.Surroundings.conduit(air_c=30).kind == "conduit"
    with pytest.raises(hm.InvalidInput, match="open air, sunlit, conduit, bed, cavity or buried"):
        hm.Surroundings(kind="water")


def test_a_wire_is_warmed_by_its_current_and_by_the_sun(starter: hm.Catalog) -> None:
    wire = starter.wires["silicone-14-awg"]
    insulation = starter.insulations[wire.insulation]

    def at(current_a: float, around: hm.Surroundings) -> hm.ConductorTemperature:
        found = hm.conductor_temperature(
            wire, current_a=current_a, surroundings=around, insulation=insulation
        )
        assert isinstance(found, hm.ConductorTemperature)
        return found

    still = hm.Surroundings.open_air(25.0)
    assert at(0, still).conductor_c == pytest.approx(25.0, abs=1e-6)
    assert at(10, still).conductor_c > at(10, still).surface_c > 25.0
    assert at(20, still).conductor_c > at(10, still).conductor_c
    assert at(10, hm.Surroundings.conduit(25)).conductor_c > at(10, still).conductor_c
    assert at(10, hm.Surroundings.sunlit(25)).conductor_c > at(10, still).conductor_c
    assert at(10, hm.Surroundings(kind="bed", air_c=200)).conductor_c > 200.0
    assert at(10, still).runaway is False
    assert at(2000, still).runaway is True
    assert at(10, still).assumed == []
    assumed = hm.conductor_temperature(wire, current_a=10, surroundings=still).assumed
    assert any("conductivity" in text for text in assumed)
    windy = hm.Surroundings(kind="open air", air_c=25, wind_m_s="10 km/h", loaded_conductors=1)
    assert windy.wind_m_s == pytest.approx(10 / 3.6)
    assert at(10, windy).conductor_c < at(10, still).conductor_c
    assert at(10, hm.Surroundings(kind="cavity", air_c=25)).conductor_c > at(10, still).conductor_c
    for field, value in (("wind_m_s", -1), ("loaded_conductors", 0)):
        with pytest.raises(hm.InvalidInput, match=field):
            hm.Surroundings(kind="open air", **{field: value})
    for unknown in (hm.Surroundings(kind="cavity"), hm.Surroundings(kind="bed")):
        assert hm.conductor_temperature(wire, current_a=10, surroundings=unknown) is None


# 240 V and 1000 W are 57.6 ohm; measured ohms win, and at 20 °C they are what was measured.
def test_an_element_has_a_band_of_ohms(starter: hm.Catalog, minimal: Callable[..., Any]) -> None:
    rated = hm.element_resistance(minimal("element"), coil_temperature_c=600)
    assert rated.low_ohm < 57.6 < rated.high_ohm
    assert rated.typical_ohm == pytest.approx(57.6, rel=1e-12)
    assert (rated.basis, rated.fixed) == ("volts and watts", True)
    assert any("alloy" in text for text in rated.assumed)
    measured = minimal("element", measured_resistance_ohm=55)
    cold = hm.element_resistance(measured, coil_temperature_c=20)
    assert cold.typical_ohm == pytest.approx(55.0, rel=1e-12)
    assert cold.basis == "measured"
    hot = hm.element_resistance(measured, alloy=starter.alloys["fecral-21-4"])
    assert hot.low_ohm < hot.typical_ohm < hot.high_ohm
    assert not any("alloy" in text for text in hot.assumed)


# -0.347 %/K over the 57 K from 25 °C to -32 °C: 37.53 V x 1.19779.
def test_the_cold_morning_raises_the_volts(starter: hm.Catalog) -> None:
    panel = starter.panels["silicon-60-cell-245"]
    volts = hm.cold_voltage(panel, record_low_c=-32)
    assert type(volts) is float
    assert volts == pytest.approx(37.53 * (1 + 0.00347 * 57), rel=1e-12)


def test_a_part_where_a_dict_belongs_is_refused_with_its_remedy(demo: hm.Installation) -> None:
    plain = demo.to_dict()
    plain["parts"] = {"elements": [hm.Catalog.starter().elements["baseboard-1000-240"]]}
    with pytest.raises(hm.InvalidInput, match=r"write \.to_dict\(\) after the object"):
        hm.Installation.from_dict(plain)
