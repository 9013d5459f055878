"""A new installation from plain answers: on the command line, and as a form in a notebook."""

from __future__ import annotations

import io
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import _library as _core
from heatmatch.cli import main

YARD = """\
north bench
44.1 N
-26 °F # in 2014, at the airport
60 deg, south
?
4 x 22.1 V 8.26 A 17.7 V 7.64 A, max 600 V, 11 years # labels of all four
2 x silicon-60-cell-245

2 x 1000 W 240 V storage rod

$150
dry sand in a steel drum, 22.5 in x 33.5 in
inside the greenhouse, on concrete
30 ft
no
28 m2 twin-wall-8mm, 16 m3
5 °C, Nov to Mar
yes
nec
"""


def started(
    typed: str, path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any, *options: str
) -> tuple[int, str]:
    monkeypatch.setattr("sys.stdin", io.StringIO(typed))
    code = main(["start", str(path), *options])
    return code, capsys.readouterr().out


def test_scripted_answers_give_a_file_that_rank_takes_as_it_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    path = tmp_path / "bench.json"
    code, out = started(YARD, path, monkeypatch, capsys)
    assert code == 0, out
    made = hm.Installation.from_json(path)
    assert made.name == "north bench"
    assert [(one.panel, one.count) for one in made.panels] == [
        ("own-panel-1", 4), ("silicon-60-cell-245", 2),
    ]  # fmt: skip
    assert made.panels[0].notes == "labels of all four"
    assert made.site.record_low_c == pytest.approx((-26 - 32) / 1.8)
    assert "in 2014, at the airport" in made.notes
    assert "typical sky" in made.notes
    assert made.goals.budget == 150
    assert f"heatmatch rank {path}" in out
    assert main(["rank", str(path), "--quiet"]) == 0
    ranked = capsys.readouterr().out
    assert "kWh a day, Nov to Mar" in ranked
    # What was assumed travels with the result.
    assert "typical sky of the latitude" in " ".join(ranked.split())
    page = tmp_path / "page.html"
    assert main(["report", str(path), "-o", str(page), "--quiet"]) == 0
    assert "typical sky of the latitude" in page.read_text(encoding="utf-8")


def test_with_every_question_open_the_file_is_ranked_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    path = tmp_path / "open.json"
    count = len(_core.questions())
    code, out = started("\n" * count, path, monkeypatch, capsys)
    assert code == 0, out
    made = hm.Installation.from_json(path)
    assert made.site.record_low_c == -40
    assert made.store is None
    assert out.count("\n- ") >= 10
    assert main(["rank", str(path), "--quiet"]) == 0


def test_a_bad_answer_gets_one_sentence_and_the_question_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    path = tmp_path / "again.json"
    typed = "bench\nVermont\n144\n44.1\n" + "\n" * (len(_core.questions()) - 2)
    code, out = started(typed, path, monkeypatch, capsys)
    assert code == 0, out
    assert out.count("At which latitude") == 3
    assert '"Vermont" holds no latitude: write it like 44.1.' in out
    assert "The latitude must be -90 deg to 90 deg, not 144 deg." in out
    assert hm.Installation.from_json(path).site.latitude_deg == 44.1


def test_back_returns_to_the_question_before(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    path = tmp_path / "back.json"
    typed = "bench\n44\nback\n45\n" + "\n" * (len(_core.questions()) - 2)
    code, _ = started(typed, path, monkeypatch, capsys)
    assert code == 0
    assert hm.Installation.from_json(path).site.latitude_deg == 45


def test_us_units_are_shown_and_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    path = tmp_path / "us.json"
    typed = "bench\n44\n-20\n\n\n\n\n\n\n\n30\n\n\n\n\n\n"
    code, out = started(typed, path, monkeypatch, capsys, "--units", "us")
    assert code == 0, out
    assert "Record low -20 °F (-28.9 °C)." in out
    assert "-20 °F" in out
    made = hm.Installation.from_json(path)
    assert made.site.record_low_c == pytest.approx((-20 - 32) / 1.8)
    assert made.runs[0].length_m == pytest.approx(30 * 0.3048)


def test_an_input_that_ends_early_writes_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    path = tmp_path / "early.json"
    monkeypatch.setattr("sys.stdin", io.StringIO("bench\n44\n"))
    assert main(["start", str(path)]) == 1
    assert "nothing was written" in capsys.readouterr().err
    assert not path.exists()


def test_an_existing_file_is_kept(tmp_path: Path, capsys: Any) -> None:
    path = tmp_path / "mine.json"
    path.write_text("{}", encoding="utf-8")
    assert main(["start", str(path)]) == 1
    assert path.read_text(encoding="utf-8") == "{}"


def test_the_form_of_a_notebook_checks_each_answer_and_makes_the_installation() -> None:
    pytest.importorskip("ipywidgets")
    form = hm.start()
    form.answer("latitude", "144")
    assert "must be -90 deg to 90 deg" in form.said("latitude")
    assert "alert" in form.said("latitude")
    assert form.installation.site.latitude_deg is None
    form.answer("latitude", "44.1 N")
    form.answer("panels", "4 x 22.1 V 8.26 A\n2 x silicon-60-cell-245")
    assert form.said("panels").count("<br>") == 1
    assert len(form.installation.panels) == 2
    assert form.accepted["latitude"] == ["44.1 N"]
    assert any("record low" in one for one in form.assumed)
    assert len(hm.rank(hm.Catalog.starter(), form.installation, top=3).reasons) > 0
    with pytest.raises(KeyError, match="no question"):
        form.answer("color", "green")


def test_the_form_speaks_us_units() -> None:
    pytest.importorskip("ipywidgets")
    form = hm.start(units="us")
    form.answer("record low", "-20")
    assert "-20 °F (-28.9 °C)" in form.said("record low")
    with pytest.raises(hm.InvalidInput, match="units"):
        hm.start(units="metric")
