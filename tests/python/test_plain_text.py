"""Control characters and marks of direction: shown written out, in no text, table or page raw."""

from __future__ import annotations

import copy
import pickle
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import pytest
from heatmatch._missing_part import import_failure
from heatmatch.text import plain as plain_text

ODD = "a\x9b2J b\u202e c\u2066 d\u200f"
RAW = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]")


@pytest.fixture(scope="module")
def odd_place() -> hm.Installation:
    """The demo with names that a terminal or a page would obey."""
    plain = hm.demo().to_dict()
    plain["name"] = ODD
    for owned in plain["panels"]:
        owned["group"] += ODD
    for run in plain["runs"]:
        run["name"] = run.get("name", "") + ODD
    plain.pop("circuit", None)
    del plain["devices"]  # they name their run
    return hm.Installation.from_dict(plain)


def texts_of(place: hm.Installation) -> Iterator[str]:
    """Every text that a result shows."""
    ranking = hm.rank(hm.Catalog.starter(), place, top=3, keep_rejected=3)
    candidate = next(iter([*ranking, *ranking.rejected]))
    things: list[Any] = [
        place, *place.panels, *place.runs, *place.devices, place.site, ranking, candidate,
        candidate.circuit, *candidate.margins, candidate.circuit.owned, candidate.advice(),
        *candidate.explain(), *candidate.circuit.runs, hm.meter_sheet(candidate),
    ]  # fmt: skip
    for thing in things:
        yield str(thing)
        yield repr(thing)
        if hasattr(thing, "_repr_html_"):
            yield thing._repr_html_()
    for margin in candidate.margins:
        yield margin.sentence()
        yield margin.sentence(units="us")
    yield from map(str, ranking.remarks)


def test_names_are_shown_and_not_obeyed(odd_place: hm.Installation) -> None:
    texts = list(texts_of(odd_place))
    assert len(texts) > 100
    for text in texts:
        assert not RAW.search(text), ascii(text[:300])
    told = "".join(texts)
    assert r"\u202e" in told
    assert r"\x9b2J" in told
    # What was given stays as it was.
    assert odd_place.name == ODD
    assert hm.Installation.from_json_text(odd_place.to_json_text()) == odd_place


def test_a_report_shows_them_too(odd_place: hm.Installation, tmp_path: Any) -> None:
    pytest.importorskip("jinja2")
    ranking = hm.rank(hm.Catalog.starter(), odd_place, top=2)
    path = hm.report(ranking, tmp_path / "r.html", installation=odd_place)
    page = (path or tmp_path / "r.html").read_text(encoding="utf-8")
    page = re.sub(r"data:[a-z+/;0-9]*,[A-Za-z0-9+/=%]*|<svg.*?</svg>", "", page, flags=re.DOTALL)
    assert not RAW.search(page), ascii(page[max(0, RAW.search(page).start() - 80) :][:200])  # type: ignore[union-attr]


@pytest.mark.parametrize(
    "fails",
    [
        lambda odd: hm.Catalog.starter().panels[odd],
        lambda odd: hm.Installation.from_json(f"/nowhere/{odd}"),
        lambda odd: hm.load_ranking(f"/nowhere/{odd}"),
        lambda odd: hm.weather.read_epw(f"/nowhere/{odd}", hm.demo().site),
        lambda odd: hm.Panel(id="a", label="A", **{odd: 1}),
        lambda odd: hm.Site(record_low_c=odd),
        lambda odd: hm.rank(hm.Catalog.starter(), hm.demo(), group=odd),
        lambda odd: hm.Installation.from_json_text(f'{{"heatmatch_installation": 1, "{odd}": 1}}'),
        lambda odd: hm.StoreLog.from_csv(f"hours,power_w,air_c,{odd}\n0,0,0,0\n"),
        lambda odd: hm.Readings.from_csv(f"{odd}\n1\n"),
        lambda odd: hm.Panel.from_json(f'{{"{odd}": 1}}'),
    ],
)
def test_errors_show_them(fails: Callable[[str], object]) -> None:
    with pytest.raises(hm.Error) as caught:
        fails(ODD)
    error = caught.value
    for text in (str(error), error.part, error.field, error.value, error.allowed, error.remedy):
        assert not RAW.search(text), ascii(text)
    assert r"\x9b" in str(error)
    again = pickle.loads(pickle.dumps(copy.copy(error)))
    assert (str(again), again.field) == (str(error), error.field)


def test_plain_text_is_plain_in_both_languages() -> None:
    for text in (ODD, "15 Ω ☀️ גן 漢字", "\x1b[31mred", "\ufeff\u061c"):
        held = hm.InvalidInput(text)
        assert str(held) == plain_text.plain(text)
        with pytest.raises(hm.NotFound) as caught:
            hm.Catalog.starter().panels[text]
        assert plain_text.plain_line(text) in str(caught.value)
    assert plain_text.plain("half \udc80") == r"half \udc80"
    assert plain_text.plain_line("a\nb\tc") == r"a\x0ab\x09c"
    assert plain_text.escape("<b>\x1b") == r"&lt;b&gt;\x1b"


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (ModuleNotFoundError("No module named 'numpy'", name="numpy"), "heatmatch needs numpy,"),
        (
            ImportError("libsqlite3.so.0: cannot open shared object file: No such file"),
            "a shared library that is not found: libsqlite3.so.0",
        ),
        (
            ImportError("DLL load failed while importing _core"),
            "a shared library that is not found",
        ),
        (ImportError("x.so: undefined symbol: sqlite3_open"), "was built for other libraries"),
        (
            ImportError("cannot import name '_core' from 'heatmatch' (x)", name="heatmatch"),
            "without its compiled part",
        ),
        (
            ModuleNotFoundError("No module named 'heatmatch._core'", name="heatmatch._core"),
            "without its compiled part",
        ),
        (ImportError("something else"), "cannot be imported: something else"),
    ],
)
def test_what_is_missing_is_named(error: ImportError, words: str) -> None:
    assert words in str(import_failure(error))
    assert ("without its compiled part" in str(import_failure(error))) == (
        words == "without its compiled part"
    )


def test_without_numpy_that_is_what_is_said() -> None:
    code = "import sys; sys.modules['numpy'] = None; import heatmatch"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, timeout=60
    )
    assert done.returncode == 1
    last = done.stderr.strip().splitlines()[-1]
    assert "heatmatch needs numpy, which is not installed" in last
    assert "compiled part" not in last
