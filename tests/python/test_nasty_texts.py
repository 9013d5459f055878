"""Texts of strangers: whatever a file holds, a reader takes it or says in one sentence why not.

The readers are tried with words that are no numbers, huge exponents, half characters, NUL, marks of
byte order, doubled keys, deep lists, long texts, and good files with something wrong in them.
"""

from __future__ import annotations

import json
import os
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pandas as pd
import pytest
from nasty_texts import WHOLE, WORDS, bytes_of, nasty_texts
from weather_years import GREENSBORO

LONG = os.environ.get("HEATMATCH_LONG_RUN") == "1"
PANELS = hm.Site(record_low_c=-20, tilt_deg=36, azimuth_deg=180, albedo=0.2)
LOG = "hours,power_w,air_c,wall_c\n0,100,20,20\n1,100,20,25\n2,100,20,31\n3,0,20,30\n"
READINGS = "irradiance_w_m2,open_v,short_a\n800,75,8\n900,74,9\n"
PVGIS = (
    "Latitude (decimal degrees): 45.0\nLongitude (decimal degrees): 8.0\nElevation (m): 250\n"
    "month,year\n" + "".join(f"{month},2010\n" for month in range(1, 13)) + "time(UTC),T2m,RH,G(h),"
    "Gb(n),Gd(h),IR(h),WS10m,WD10m,SP\n20100101:0000,1,80,0,0,0,300,1,0,97000\n"
)
EPW = (
    "LOCATION,A,B,C,TMY,1,36.1,-79.9,-5.0,273\n"
    + "H\n" * 7
    + ("".join(f"2003,6,1,{hour},60,?,20" + ",0" * 28 + "\n" for hour in range(1, 25)))
)


def tmy3_start() -> str:
    """Two days of a file."""
    with GREENSBORO.open(encoding="latin-1") as file:
        return "".join(file.readline() for _ in range(50))


def part_csv(demo: hm.Installation) -> str:
    del demo
    return "id,label,v_oc,i_sc,source,source_kind\nmine,Mine,37.5,8.66,label,nameplate\n"


def good_text(name: str, demo: hm.Installation, folder: Path) -> str:
    """Input of the reader of that name."""
    if name == "module list":
        from test_module_list import list_path

        return "".join(list_path().read_text(encoding="utf-8").splitlines(keepends=True)[:8])
    if name == "ranking":
        hm.save_ranking(hm.rank(hm.Catalog.starter(), demo, top=2), folder / "good.json")
        return (folder / "good.json").read_text(encoding="utf-8")
    texts: dict[str, Callable[[], str]] = {
        "installation": demo.to_json_text,
        "installation text": demo.to_json_text,
        "catalog": lambda: (
            '{"heatmatch_catalog": 1, "panels": ['
            + next(iter(hm.Catalog.starter().panels.values())).to_json()
            + '], "removed": {"panels": ["a"]}}'
        ),
        "part": lambda: next(iter(hm.Catalog.starter().elements.values())).to_json(),
        "parts in CSV": lambda: part_csv(demo),
        "log": lambda: LOG,
        "readings": lambda: READINGS,
        "sentence": lambda: hm.cautions()[0].to_json(),
        "TMY3": tmy3_start,
        "EPW": lambda: EPW,
        "PVGIS": lambda: PVGIS,
        "PVGIS in JSON": lambda: json.dumps({"inputs": {"location": {}}, "outputs": {}}),
    }
    return texts[name]()


def import_catalog(path: Path) -> object:
    catalog = hm.Catalog.open(path.with_suffix(".heatmatch"))
    try:
        return catalog.import_json(path, keep_good=True)
    finally:
        catalog.close()


def import_modules(path: Path) -> object:
    catalog = hm.Catalog.open(path.with_suffix(".heatmatch"))
    try:
        return catalog.import_module_csv(path, keep_good=True)
    finally:
        catalog.close()


BY_PATH: dict[str, tuple[str, Callable[[Path], object]]] = {
    "installation": (".json", hm.Installation.from_json),
    "catalog": (".json", import_catalog),
    "module list": (".csv", import_modules),
    "log": (".csv", hm.StoreLog.from_csv),
    "readings": (".csv", hm.Readings.from_csv),
    "ranking": (".json", hm.load_ranking),
    "TMY3": (".csv", lambda path: hm.weather.read_tmy3(path, PANELS)),
    "EPW": (".epw", lambda path: hm.weather.read_epw(path, PANELS)),
    "PVGIS": (".csv", lambda path: hm.weather.read_pvgis(path, PANELS)),
    "PVGIS in JSON": (".json", lambda path: hm.weather.read_file(path, PANELS)),
}
BY_TEXT: dict[str, Callable[[str], object]] = {
    "installation text": hm.Installation.from_json_text,
    "part": hm.Element.from_json,
    "parts in CSV": hm.Panel.from_json,  # of a separate catalog, below
    "sentence": lambda text: str(type(hm.cautions()[0]).from_json(text)),
}


def try_it(read: Callable[[Any], object], given: Any) -> int:
    """1 where it is refused; whatever else but an answer or a refusal fails."""
    try:
        repr(read(given))
        return 0
    except hm.Error as error:
        text = str(error)
        assert 10 < len(text) < 2000, ascii(text[:300])
        assert all(c.isprintable() or c == "\n" for c in text), ascii(text)
        for piece in (error.part, error.field, error.value, error.allowed, error.remedy):
            assert all(c.isprintable() or c == "\n" for c in piece), ascii(piece)
        return 1


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("name", BY_PATH)
def test_a_file_is_read_or_refused(name: str, demo: hm.Installation, tmp_path: Path) -> None:
    ending, read = BY_PATH[name]
    good = good_text(name, demo, tmp_path)
    dice = random.Random(7)
    refused = tried = 0
    slow = name in ("TMY3", "EPW", "PVGIS", "PVGIS in JSON")
    for number, text in enumerate(nasty_texts(good, 11, 2000 if LONG else 20 if slow else 60)):
        path = tmp_path / f"{number}{ending}"
        path.write_bytes(bytes_of(text, dice))
        try:
            refused += try_it(read, path)
        except BaseException as error:
            raise AssertionError(f"{name} {number}: {ascii(text[:200])}") from error
        tried += 1
        path.unlink()
    assert refused > tried / 4
    for path in (tmp_path, tmp_path / "nowhere", tmp_path / f"nul\0{ending}"):
        assert try_it(read, path) == 1


@pytest.mark.parametrize("name", BY_TEXT)
def test_a_text_is_read_or_refused(name: str, demo: hm.Installation, tmp_path: Path) -> None:
    read = BY_TEXT[name]
    if name == "parts in CSV":
        catalog = hm.Catalog.open(tmp_path / "own.heatmatch")
        read = lambda text: catalog.import_csv_text("panel", text, keep_good=True)  # noqa: E731
    refused = tried = 0
    for text in nasty_texts(good_text(name, demo, tmp_path), 13, 2000 if LONG else 60):
        try:
            refused += try_it(read, text)
        except BaseException as error:
            raise AssertionError(f"{name}: {ascii(text[:200])}") from error
        tried += 1
    assert refused > (0 if name == "parts in CSV" else tried / 4)


def deep(levels: int) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for _ in range(levels):
        made = {"a": made}
    return made


def test_plain_data_without_end_is_refused(demo: hm.Installation) -> None:
    ring: list[Any] = []
    ring.append(ring)
    plain = demo.to_dict()
    site = plain["site"]
    read = hm.Installation.from_dict
    for odd in (
        deep(100_000),
        {"a": ring},
        plain | {"site": site | {"tilt_deg": 10**5000}},
        plain | {"site": site | {"tilt_deg": 10**4000}},
        plain | {"site": site | {"tilt_deg": float("nan")}},
        plain | {"name": "\ud800"},
        plain | {"name": b"bytes"},
    ):
        assert try_it(read, odd) == 1
    for word in WORDS:
        try_it(read, plain | {"name": word})
        try_it(read, plain | {"site": site | {"tilt_deg": word}})
        try_it(lambda given: hm.Site(**site | {"tilt_deg": given}), word)
    for odd in (10**5000, ring, "\ud800", b"\xff"):
        for field in ("tilt_deg", "snow_cover_pct", "source_of", "label"):
            given = {field: odd}
            assert try_it(lambda given: hm.Panel(**given), given) == 1
    assert try_it(lambda key: hm.Site(**{key: 1}), "\ud800") == 1


def test_two_hundred_thousand_unknown_keys_are_answered(
    demo: hm.Installation, tmp_path: Path
) -> None:
    """Work that grows with the square of their number would not end within the run's limit."""
    many = {f"k{i}": 1 for i in range(200_000)}
    plain = demo.to_dict()
    for read, given in (
        (hm.Installation.from_dict, plain | many),
        (hm.Installation.from_dict, plain | {"site": plain["site"] | many}),
        (hm.Panel.from_json, json.dumps(many)),
        (lambda keys: hm.Panel(**keys), many),
    ):
        with pytest.raises(hm.InvalidInput) as caught:
            read(given)  # type: ignore[operator]
        assert len(str(caught.value)) < 500
    gone = {"heatmatch_catalog": 1, "removed": {"panels": [f"p{i}" for i in range(10_000)]}}
    own = hm.Catalog.open(tmp_path / "own.heatmatch")
    try_it(lambda text: own.import_json_text(text, keep_good=True), json.dumps(gone))


def test_tiny_numbers_give_finite_answers_or_a_refusal() -> None:
    base = {"id": "a", "label": "A", "source": "x", "source_kind": "nameplate"}
    for tiny in (1e-308, 5e-324, 1e-300, 1e-30, "1e-308 V"):
        for volts, amperes in ((tiny, 9.0), (37.0, 1e-308), (tiny, 1e-308)):
            given = base | {"v_oc": volts, "i_sc": amperes}
            try_it(lambda plain: hm.fit_single_diode(hm.Panel(**plain)), given)
    wire = next(iter(hm.Catalog.starter().wires.values()))
    air = hm.Surroundings.open_air(20.0)
    for current in (0.0, 5e-324, 1e-308, 1e-30):
        at = hm.conductor_temperature(wire, current_a=current, surroundings=air)
        assert at is not None
        assert at.conductor_c == pytest.approx(20.0)


def test_frames_of_nonsense_are_refused() -> None:
    index = pd.date_range("2025-06-10", periods=48, freq="h", tz="UTC")
    for odd in ("\ud800", "\x1b[31m", "", 5, None, ("ghi", "x"), "ghi" * 10_000):
        frame = pd.DataFrame({odd: 1.0, "temp_air": 20.0}, index=index)
        assert try_it(lambda given: hm.Weather.from_frame(given, PANELS), frame) == 1
    assert WHOLE
