"""Light on the backs of panels: twenty layouts beside two other programs, and every face.

pytest -s tests/python/test_bifacial.py prints the table of layouts. The rows of
reference/rear_light.csv were made with pvlib's ANTS-2D and solarfactors by rear_light.py.
"""

from __future__ import annotations

import csv
import importlib
import json
import pickle
import sqlite3
from itertools import groupby
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

LAYOUTS = Path(__file__).parent.parent / "reference" / "rear_light.csv"
COLUMNS = ("ants2d", "solarfactors", "sheds")


def layouts() -> list[list[dict[str, str]]]:
    with LAYOUTS.open(encoding="utf-8") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    return [list(group) for _, group in groupby(rows, key=lambda row: row["layout"])]


def site_of(row: dict[str, str]) -> hm.Site:
    return hm.Site(
        record_low_c=-20,
        latitude_deg=44,
        tilt_deg=float(row["tilt_deg"]),
        azimuth_deg=180,
        albedo=float(row["albedo"]),
        panel_height_m=float(row["height_m"]),
        row_slant_m=float(row["slant_m"]),
        row_pitch_m=float(row["pitch_m"]) if row["pitch_m"] else None,
    )


def test_twenty_layouts_beside_two_other_programs() -> None:
    """Sums over all moments of a layout within 10 % of both; the table is printed."""
    print("\ntilt  edge  slant  pitch  albedo   ours W/m2   of ANTS-2D  of solarfactors  of sheds")
    for rows in layouts():
        first = rows[0]
        column = {name: np.array([float(row[name]) for row in rows]) for name in COLUMNS}
        ours = site_of(first).rear_irradiance(
            apparent_zenith_deg=[float(row["zenith_deg"]) for row in rows],
            sun_azimuth_deg=[float(row["azimuth_deg"]) for row in rows],
            dni_w_m2=[float(row["dni_w_m2"]) for row in rows],
            dhi_w_m2=[float(row["dhi_w_m2"]) for row in rows],
            model="isotropic",
        )
        total = ours.total_w_m2.sum()
        ratio = {name: total / column[name].sum() for name in COLUMNS}
        print(
            f"{first['tilt_deg']:>4}{first['height_m']:>6}{first['slant_m']:>7}"
            f"{first['pitch_m'] or '-':>7}{first['albedo']:>8}{total / len(rows):12.1f}"
            f"{ratio['ants2d']:13.3f}{ratio['solarfactors']:17.3f}{ratio['sheds']:10.3f}"
        )
        assert ratio["ants2d"] == pytest.approx(1.0, abs=0.05)
        assert ratio["solarfactors"] == pytest.approx(1.0, abs=0.10)


def test_a_day_beside_ants_2d_with_a_bright_sky_about_the_sun() -> None:
    """The sky of Hay and Davies, which the rows of the file do not have."""
    if importlib.util.find_spec("pvlib.bifacial.ants2d") is None:
        pytest.skip("this pvlib has no ANTS-2D")
    ants2d = importlib.import_module("pvlib.bifacial.ants2d")
    zenith = np.array([80.0, 65.0, 50.0, 38.0, 50.0, 65.0, 80.0])
    azimuth = np.array([80.0, 100.0, 130.0, 180.0, 230.0, 260.0, 280.0])
    dni = np.array([300.0, 600.0, 750.0, 820.0, 750.0, 600.0, 300.0])
    dhi = np.array([60.0, 90.0, 110.0, 120.0, 110.0, 90.0, 60.0])
    ghi = dni * np.cos(np.radians(zenith)) + dhi
    tilt, edge, slant, pitch, albedo = 40.0, 0.8, 1.9, 5.0, 0.3
    theirs = ants2d.get_irradiance(
        np.full(7, tilt), 90, zenith, azimuth, slant / pitch,
        edge + slant / 2 * np.sin(np.radians(tilt)), pitch, ghi, dhi, dni, albedo,
        model="haydavies", dni_extra=1366.1, ground_segments=40,
    )["poa_back"]  # fmt: skip
    site = hm.Site(
        record_low_c=-20, latitude_deg=44, tilt_deg=tilt, azimuth_deg=180, albedo=albedo,
        panel_height_m=edge, row_slant_m=slant, row_pitch_m=pitch,
    )  # fmt: skip
    ours = site.rear_irradiance(
        apparent_zenith_deg=zenith, sun_azimuth_deg=azimuth, dni_w_m2=dni, dhi_w_m2=dhi,
        extraterrestrial_w_m2=1366.1,
    )  # fmt: skip
    assert ours.total_w_m2 == pytest.approx(theirs, rel=0.05, abs=2.0)
    behind = site.rear_irradiance(
        apparent_zenith_deg=zenith, sun_azimuth_deg=azimuth, dni_w_m2=dni, dhi_w_m2=dhi,
        extraterrestrial_w_m2=1366.1, behind_glass=True,
    )  # fmt: skip
    assert np.all(behind.total_w_m2 < ours.total_w_m2)
    one = site.rear_irradiance(
        apparent_zenith_deg=50, sun_azimuth_deg=130, dni_w_m2=750, dhi_w_m2=110,
        extraterrestrial_w_m2=1366.1,
    )  # fmt: skip
    assert one.total_w_m2 == ours.total_w_m2[2]


def bifacial_demo(demo: hm.Installation, bifaciality: float | None, **site: Any) -> hm.Installation:
    """The demo with a pair of clear-backed panels in its circuit."""
    told = demo.to_dict()
    panel = json.loads(hm.Catalog.starter().panels["half-cut-144-cell-545"].to_json())
    panel |= {"id": "clear-back"}
    if bifaciality is not None:
        panel["bifaciality"] = bifaciality
    told.setdefault("parts", {})["panels"] = [panel]
    told["panels"] = [{"group": "clear pair", "panel": "clear-back", "count": 2}]
    told["circuit"] |= {"group": "clear pair", "panels": "1S1P"}
    told["site"] |= site
    return hm.Installation.from_dict(told)


def test_the_demo_with_a_bifacial_group_before_and_after(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    """Bifaciality 0 and 0.9 gave the same bytes; heat and amperes differ now."""
    none = hm.assess(starter, bifacial_demo(demo, 0.0))
    much = hm.assess(starter, bifacial_demo(demo, 0.9))
    snow = hm.assess(starter, bifacial_demo(demo, 0.9, albedo=0.7))
    low = hm.assess(starter, bifacial_demo(demo, 0.9, panel_height_m=0.1, row_pitch_m=2.0))
    assert none.season.rear_kwh == 0.0
    assert low.season.rear_kwh < much.season.rear_kwh < snow.season.rear_kwh
    assert much.season.kwh > 1.02 * none.season.kwh
    assert any("Rear irradiance adds" in remark for remark in much.season.remarks)
    assert any("panel_height_m" in line for line in much.season.assumed)
    assert not any("panel_height_m" in line for line in none.season.assumed)
    wire = [m for m in much.margins if m.name == "run current"][0]
    before = [m for m in none.margins if m.name == "run current"][0]
    assert wire.value == pytest.approx(1.27 * before.value)
    again = pickle.loads(pickle.dumps(much))
    assert again.season.rear_kwh == much.season.rear_kwh
    assert [m.value for m in again.margins] == [m.value for m in much.margins]


def test_an_unstated_back_is_told_as_assumed_and_judged_as_clear(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    untold = hm.assess(starter, bifacial_demo(demo, None))
    opaque = hm.assess(starter, bifacial_demo(demo, 0.0))
    clear = hm.assess(starter, bifacial_demo(demo, 1.0))
    assert any("bifaciality" in line for line in untold.assumed)
    assert untold.season.kwh == opaque.season.kwh
    order = ["none", "caution", "warning", "danger"]
    for own, bare in zip(untold.margins, clear.margins, strict=True):
        assert order.index(own.worst_severity) >= order.index(bare.worst_severity), own.name


def test_days_take_the_light_behind_as_well(starter: hm.Catalog, demo: hm.Installation) -> None:
    days = {}
    for bifaciality in (0.0, 0.9):
        installation = bifacial_demo(demo, bifaciality)
        weather = hm.Weather.from_installation(installation)
        run = hm.simulate_day(hm.assess(starter, installation), weather, month=1, days=2)
        days[bifaciality] = run.energy.available_kwh
    assert days[0.9] > 1.03 * days[0.0]


def test_weather_tells_the_light_behind_and_keeps_it(demo: hm.Installation) -> None:
    weather = hm.Weather.from_installation(demo)
    assert weather.rear_w_m2 is not None
    assert weather.rear_w_m2.max() > 30.0
    assert pickle.loads(pickle.dumps(weather)) == weather
    both = weather.with_rear_irradiance(0.8)
    assert both.plane_irradiance_w_m2 == pytest.approx(
        weather.plane_irradiance_w_m2 + 0.8 * weather.rear_w_m2
    )
    assert weather.split_by_cloud().rear_w_m2 is not None
    assert hm.Weather.from_plane([500.0], [20.0], 1.0).rear_w_m2 is None
    with pytest.raises(hm.InvalidInput, match="share"):
        weather.with_rear_irradiance(1.5)


def test_the_fields_go_through_json_and_the_catalog_file(
    tmp_path: Path, demo: hm.Installation
) -> None:
    panel = hm.Panel(
        id="clear", label="Clear back", v_oc=50, i_sc=13.9, technology="mono-Si", bifaciality=0.8,
        i_sc_bnpi="15.4 A", i_sc_bsi=17.236, source="label", source_kind="nameplate",
    )  # fmt: skip
    assert hm.Panel.from_json(panel.to_json()) == panel
    with hm.Catalog.open(tmp_path / "own.heatmatch") as catalog:
        catalog.add(panel)
        assert catalog.panels["clear"] == panel
    with sqlite3.connect(tmp_path / "own.heatmatch") as file:
        assert file.execute("SELECT i_sc_bnpi, i_sc_bsi FROM panels").fetchone() == (15.4, 17.236)
    told = demo.to_dict()
    told["site"] |= {"panel_height_m": "3 ft", "row_slant_m": 2.1, "row_pitch_m": 5}
    told["panels"][0]["rear_blocked"] = True
    installation = hm.Installation.from_dict(told)
    assert installation.site.panel_height_m == pytest.approx(0.9144)
    assert installation.panels[0].rear_blocked is True
    assert hm.Installation.from_json_text(installation.to_json_text()) == installation
    told["site"]["row_pitch_m"] = 0.5
    with pytest.raises(hm.InvalidInput, match="row_pitch_m"):
        hm.Installation.from_dict(told)
