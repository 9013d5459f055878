"""The command line's report, and the rankings it keeps and compares."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import heatmatch as hm
import pytest
from heatmatch._library import margin_sentence


@pytest.fixture
def pages(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Any, dict[str, Any]]]:
    """Arguments of the page's writer."""
    asked: list[tuple[Any, dict[str, Any]]] = []

    def report(what: Any, path: Path, **options: Any) -> Path:
        asked.append((what, options))
        path.write_text("<!doctype html>")
        return path

    monkeypatch.setitem(sys.modules, "heatmatch.report.page", SimpleNamespace(report=report))
    return asked


def test_the_standing_circuit_is_reported_else_the_ranking(
    command: Callable[..., Any],
    demo_file: Path,
    tmp_path: Path,
    pages: list[tuple[Any, dict[str, Any]]],
    standing: hm.Candidate,
    demo_ranking: hm.Ranking,
) -> None:
    out = tmp_path / "page.html"
    done = command("report", demo_file, "-o", out, "--units", "us")
    assert (done.code, done.out, done.err) == (0, f"wrote {out}\n", "")
    assert out.read_text() == "<!doctype html>"
    again = command("report", demo_file, "-o", out)
    assert (again.code, again.out) == (1, "")
    assert f'"{out}" exists' in again.err
    data = json.loads(command("report", demo_file, "-o", out, "--force", "--rank", 3, "--json").out)
    third = demo_ranking[2]
    told = {key: data[key] for key in ("wrote", "of", "severity")}
    assert told == {"wrote": str(out), "of": third.circuit.title, "severity": third.severity}
    assert data["checks"]["made"] == third.checks.made
    plain = json.loads(demo_file.read_text())
    del plain["circuit"], plain["weather"]
    demo_file.write_text(json.dumps(plain))
    assert command("report", demo_file, "--output", tmp_path / "all.html").code == 0
    titles = [getattr(what, "circuit", None) for what, _ in pages]
    assert titles[0].title == standing.circuit.title
    assert isinstance(pages[2][0], hm.Ranking)
    assert [options["units"] for _, options in pages] == ["us", "si", "si"]
    assert isinstance(pages[0][1]["weather"], hm.Weather)
    assert pages[2][1]["weather"] is None
    assert pages[2][1]["installation"] == hm.Installation.from_json(demo_file)


def test_a_danger_is_named_beside_the_page_and_ends_with_3(
    command: Callable[..., Any],
    demo_file: Path,
    tmp_path: Path,
    pages: list[tuple[Any, dict[str, Any]]],
) -> None:
    plain = json.loads(demo_file.read_text())
    plain["runs"][2]["wire"] = "thhn-12-awg"
    demo_file.write_text(json.dumps(plain))
    out = tmp_path / "page.html"
    done = command("report", demo_file, "-o", out)
    assert (done.code, done.err, len(pages)) == (3, "", 1)
    told = " ".join(done.out.split())
    candidate = hm.assess(hm.Catalog.starter(), hm.Installation.from_json(demo_file))
    assert margin_sentence(candidate) in told
    assert "DANGER: " in told
    assert done.out.endswith(f"wrote {out}\n")
    data = command("report", demo_file, "-o", out, "--force", "--json")
    assert (data.code, json.loads(data.out)["severity"]) == (3, "danger")
    # Without a circuit the page reports the strongest rejected one, if all have a danger.
    del plain["circuit"]
    demo_file.write_text(json.dumps(plain))
    rejected = command("report", demo_file, "-o", out, "--force")
    assert (rejected.code, "DANGER: " in rejected.out) == (3, True)
    assert "exit code is 3" in " ".join(command("report", "--help").out.split())


def test_a_page_that_fails_leaves_nothing(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def write_text(path: Path, text: str, **options: Any) -> Path:
        raise hm.FileError(f'cannot write "{path}": no space')

    page = pytest.importorskip("heatmatch.report.page")
    monkeypatch.setattr(page, "write_text", write_text)
    out = tmp_path / "page.html"
    done = command("report", demo_file, "-o", out)
    assert (done.code, done.out) == (1, "")
    assert done.err == f'heatmatch: cannot write "{out}": no space\n'
    assert [path.name for path in tmp_path.iterdir()] == [demo_file.name]


def test_the_page_itself_is_written(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    pytest.importorskip("heatmatch.report.page")
    out = tmp_path / "page.html"
    assert command("report", demo_file, "-o", out, "--units", "us").code == 0
    assert "barn pair" in out.read_text(encoding="utf-8")


def test_rankings_are_kept_and_compared(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    class Comparison:
        def to_dict(self) -> dict[str, Any]:
            return {"moved": 1}

        def __str__(self) -> str:
            return "one moved"

    def save(ranking: hm.Ranking, path: Path, *, name: str = "", force: bool) -> None:
        path.write_text(json.dumps({"name": name, "count": len(ranking)}))

    kept: list[Any] = []
    module = SimpleNamespace(
        save_ranking=save,
        load_ranking=lambda path: json.loads(Path(path).read_text()),
        compare_rankings=lambda before, after: (kept.append((before, after)), Comparison())[1],
    )
    monkeypatch.setitem(sys.modules, "heatmatch.io.rankings", module)
    before = tmp_path / "before.json"
    done = command("rank", demo_file, "--top", 2, "--save", before)
    assert (done.code, done.out.endswith(f"\nwrote {before}\n")) == (0, True)
    done = command("rank", demo_file, "--top", 2, "--compare", before)
    assert f"Compared with {before}:\n\none moved\n" in done.out
    assert kept[0][0] == {"name": "seedling house at Hollow Brook", "count": 200}
    data = json.loads(command("rank", demo_file, "--top", 2, "--compare", before, "--json").out)
    assert data["comparison"] == {"moved": 1}


def test_a_ranking_is_compared_with_itself(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    pytest.importorskip("heatmatch.io.rankings")
    before = tmp_path / "before.json"
    assert command("rank", demo_file, "--top", 3, "--save", before).code == 0
    done = command("rank", demo_file, "--top", 3, "--compare", before)
    assert (done.code, done.err) == (0, "")
    assert "best two hundred" in command("rank", "--help").out
    bad = command("rank", demo_file, "--compare", demo_file)
    assert (bad.code, bad.out, bad.err.count("\n")) == (1, "", 1)


def test_a_pairing_that_became_a_danger_is_told(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    before = tmp_path / "before.json"
    assert command("rank", demo_file, "--save", before).code == 0
    plain = json.loads(demo_file.read_text())
    plain["runs"][2]["wire"] = "thhn-12-awg"
    demo_file.write_text(json.dumps(plain))
    done = command("rank", demo_file, "--compare", before)
    told = done.out.partition("Compared with")[2].splitlines()[1:]  # behind the path
    assert any(line.startswith("danger      1 porch four") for line in told)
    assert max(map(len, told)) <= 80
    data = json.loads(command("rank", demo_file, "--compare", before, "--json").out)
    assert {move["severity_after"] for move in data["comparison"]["moves"]} == {"danger"}
