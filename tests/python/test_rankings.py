"""Rankings saved in files, and two of them compared: a danger is shown, bad files are one error."""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Callable
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch._library import comparison_table, shown_margin_name
from heatmatch.io import files
from heatmatch.io.rankings import KEY, Move, RankingComparison, SavedRanking

DEEP = {"top": 200, "keep_rejected": 2000}


@pytest.fixture(scope="module")
def deep(starter: hm.Catalog, demo: hm.Installation) -> hm.Ranking:
    """The demo, ranked deep."""
    return hm.rank(starter, demo, **DEEP)


@pytest.fixture(scope="module")
def whole(deep: hm.Ranking) -> SavedRanking:
    return SavedRanking.of(deep, "silicone")


@pytest.fixture(scope="module")
def melting(starter: hm.Catalog, demo: hm.Installation) -> SavedRanking:
    """The same with a hot tail whose insulation does not withstand the element's end."""
    plain = demo.to_dict()
    plain["runs"][2]["wire"] = "thhn-12-awg"
    return SavedRanking.of(hm.rank(starter, hm.Installation.from_dict(plain), **DEEP), "nylon")


@pytest.fixture
def saved(whole: SavedRanking, tmp_path: Path) -> Path:
    return hm.save_ranking(whole, tmp_path / "before.json")


def first_row(plain: dict[str, Any]) -> dict[str, Any]:
    row: dict[str, Any] = plain["rows"][0]
    return row


def test_what_was_rejected_is_kept_with_its_reason(
    whole: SavedRanking, saved: Path, deep: hm.Ranking
) -> None:
    loaded = hm.load_ranking(saved)
    assert loaded == whole
    rejected = deep.rejected
    assert len(loaded.rejected) == len(rejected) > 0
    for row, candidate in zip(loaded.rejected, rejected, strict=True):
        assert row["element"] == candidate.circuit.element.id
        assert row["worst_margin"] == candidate.worst.name
        assert row["season_kwh"] == candidate.season.kwh


KEPT_FILES = Path(__file__).parents[1] / "reference" / "rankings"


@pytest.mark.parametrize("name", ["version_1", "version_1_by_power"])
def test_a_kept_file_of_version_1_loads_under_the_names_of_today(
    name: str, starter: hm.Catalog, demo: hm.Installation, tmp_path: Path
) -> None:
    old = json.loads((KEPT_FILES / f"{name}.json").read_text(encoding="utf-8"))
    assert old["heatmatch_ranking"] == 1
    loaded = hm.load_ranking(KEPT_FILES / f"{name}.json")
    assert loaded.by_season == (name == "version_1")
    assert loaded.rejected == old.get("rejected", [])
    part = {"group": "barn pair", "element": "storage-rod-1000-240", "top": 2, "keep_rejected": 1}
    plain = demo.to_dict()
    if not loaded.by_season:
        del plain["weather"]
    today = hm.rank(starter, hm.Installation.from_dict(plain), **part)
    columns = set(today.to_frame().columns)
    for row, before in zip(loaded.rows, old["rows"], strict=True):
        assert set(row) <= columns
        assert list(row.values()) == list(before.values())
        assert row["stc_match_ohm"] == before["noon_match_ohm"]
        assert row.get("season_stc_match_kwh") == before.get("season_noon_kwh")
    again = hm.load_ranking(hm.save_ranking(loaded, tmp_path / "again.json"))
    assert again == loaded
    assert json.loads((tmp_path / "again.json").read_text())["heatmatch_ranking"] == 3
    assert hm.compare_rankings(loaded, today).moves


def test_a_pairing_that_became_a_danger_is_told(whole: SavedRanking, melting: SavedRanking) -> None:
    comparison = hm.compare_rankings(whole, melting)
    key = tuple(whole.rows[0][name] for name in KEY)
    lost = next(m for m in comparison.moves if (m.group, m.panels, m.element, m.bank) == key)
    assert (lost.before, lost.after, lost.severity_after) == (1, None, "danger")
    assert lost.worst_after == "hot tail insulation"
    assert lost.severity_before == whole.rows[0]["severity"]
    assert lost.price_before == whole.rows[0]["price_to_buy"]
    assert lost.heat_after is not None
    cells = comparison_table(comparison).rows[0]
    assert cells[:2] == ["danger: element lead insulation", "1"]
    text = str(comparison)
    assert max(len(line) for line in text.splitlines()) <= 80
    assert text.splitlines()[4].startswith("danger      1 ")
    assert "Now a danger: element lead insulation: porch four" in text
    assert "danger: element lead insulation" in comparison._repr_html_()
    back = " ".join(str(hm.compare_rankings(melting, whole)).split())
    assert "Before a danger: element lead insulation: porch four" in back
    assert comparison.to_dict()["moves"][0]["severity_after"] == "danger"


def test_reasons_are_told_where_they_differ(whole: SavedRanking, melting: SavedRanking) -> None:
    text = " ".join(str(hm.compare_rankings(whole, melting)).split())
    now, _, were = text.partition("Pairings rejected now: ")[2].partition("They were: ")
    for reasons, told in ((melting.reasons, now), (whole.reasons, were)):
        for name, count in reasons.items():
            assert f"{shown_margin_name(name)} {count}" in told
    assert "Pairings rejected" not in str(hm.compare_rankings(whole, whole))


def test_what_is_to_be_bought_is_a_column(whole: SavedRanking) -> None:
    text = str(hm.compare_rankings(whole, whole))
    assert max(len(line) for line in text.splitlines()) <= 80
    header, row = text.splitlines()[2], text.splitlines()[3]
    assert header.endswith(" USD")
    assert row.split()[-1] == f"{whole.rows[0]['price_to_buy']:.0f}"
    assert whole.rows[0]["element"] in row
    assert " in USD" in " ".join(text.split())


def test_no_change_has_no_sign_of_a_loss() -> None:
    move = Move("a", "1S1P", "e", "1S1P", 1, 1, 100.1, 100.0, 0.2, 0.2)
    comparison = RankingComparison("x", "y", "W", [move])
    assert comparison_table(comparison).rows[0][6] == "+0"
    assert "+0 W" in str(comparison)


BAD: dict[str, tuple[Callable[[dict[str, Any]], object], str]] = {
    "text": (lambda p: first_row(p).update(season_kwh="many"), "rows[1].season_kwh"),
    "null": (lambda p: first_row(p).update(mean_power_w=None), "rows[1].mean_power_w"),
    "flag": (lambda p: first_row(p).update(smallest_headroom=True), "rows[1].smallest_headroom"),
    "huge": (lambda p: first_row(p).update(season_kwh=10**400), "rows[1].season_kwh"),
    "price": (lambda p: first_row(p).update(price_to_buy="much"), "rows[1].price_to_buy"),
    "key": (lambda p: first_row(p).update(element=[1]), "rows[1].element"),
    "missing": (lambda p: first_row(p).pop("severity"), "without severity"),
    "no row": (lambda p: p["rows"].insert(0, 7), "rows[1] = 7"),
    "reasons": (lambda p: p.update(reasons={"budget": "all"}), "reasons"),
    "remarks": (lambda p: p.update(remarks=[1]), "remarks"),
    "evaluated": (lambda p: p.update(evaluated=True), "evaluated"),
    "rejected": (lambda p: p.update(rejected=5), "rejected = 5"),
    "its reason": (lambda p: p["rejected"][0].pop("worst_margin"), "rejected[1]"),
    "its heat": (lambda p: p["rejected"][0].update(season_kwh=None), "rejected[1].season_kwh"),
    "version": (lambda p: p.update(heatmatch_ranking=99), "a newer heatmatch"),
    "NaN": (lambda p: first_row(p).update(season_kwh=float("nan")), "rows[1].season_kwh"),
    "infinity": (lambda p: first_row(p).update(season_kwh=float("inf")), "rows[1].season_kwh"),
    "half a character": (lambda p: p.update(name="\ud800"), "text in UTF-8"),
}


@pytest.mark.parametrize(("spoil", "words"), BAD.values(), ids=BAD.keys())
def test_a_value_of_the_wrong_kind_is_one_error(
    spoil: Callable[[dict[str, Any]], object],
    words: str,
    saved: Path,
    command: Callable[..., Any],
    demo_file: Path,
) -> None:
    plain = json.loads(saved.read_text(encoding="utf-8"))
    spoil(plain)
    saved.write_text(json.dumps(plain))
    with pytest.raises(hm.InvalidInput) as caught:
        hm.load_ranking(saved)
    assert words in str(caught.value)
    done = command("rank", demo_file, "--compare", saved)
    assert (done.code, done.out, done.err.count("\n")) == (1, "", 1)
    assert words in done.err


@pytest.mark.parametrize(
    "text",
    ["[" * 100_000, '{"heatmatch_ranking": 1, "rows": ' + "[" * 900 + "]" * 900 + "}", "", "\x00"],
    ids=["deep", "nested", "empty", "nul"],
)
def test_what_is_no_ranking_is_one_error(text: str, tmp_path: Path) -> None:
    path = tmp_path / "deep.json"
    path.write_text(text)
    with pytest.raises(hm.InvalidInput, match="make one with save_ranking"):
        hm.load_ranking(path)


@pytest.mark.parametrize("name", ["a\0b", "a\ud800b"])
def test_a_path_that_no_file_can_have_is_one_error(
    name: str, whole: SavedRanking, tmp_path: Path, command: Callable[..., Any], demo_file: Path
) -> None:
    path = f"{tmp_path}/{name}"
    for call in (lambda: hm.load_ranking(path), lambda: hm.save_ranking(whole, path)):
        with pytest.raises(hm.FileError, match="no file can have that name"):
            call()
    for option in ("--save", "--compare", "--csv"):
        done = command("rank", demo_file, option, path)
        assert (done.code, done.out, done.err.count("\n")) == (1, "", 1)


def test_a_name_that_is_no_text_is_not_saved(whole: SavedRanking, tmp_path: Path) -> None:
    for odd in (replace(whole, name="\ud800"), replace(whole, rows=[{"element": float("nan")}])):
        with pytest.raises(hm.InvalidInput):
            hm.save_ranking(odd, tmp_path / "odd.json")
    rows = [{**whole.rows[0], "bank_ohm": float("nan")}]
    with pytest.raises(hm.InvalidInput):
        hm.save_ranking(replace(whole, rows=rows), tmp_path / "odd.json")
    assert list(tmp_path.iterdir()) == []


def test_moves_are_plain_data(whole: SavedRanking) -> None:
    comparison = hm.compare_rankings(whole, whole)
    data = json.loads(json.dumps(comparison.to_dict(), allow_nan=False))
    assert data["moves"][0] == asdict(comparison.moves[0])
    assert data["reasons_after"] == whole.reasons


@pytest.mark.skipif(os.name == "nt", reason="modes and links of POSIX")
def test_files_keep_their_mode_and_links_lead_to_them(tmp_path: Path, whole: SavedRanking) -> None:
    folder = tmp_path / "elsewhere"
    folder.mkdir()
    path, link = folder / "kept.json", tmp_path / "link.json"
    path.write_text("before")
    path.chmod(0o640)
    link.symlink_to(path)
    hm.save_ranking(whole, link, force=True)  # it is no ranking yet
    assert (link.is_symlink(), stat.S_IMODE(path.stat().st_mode)) == (True, 0o640)
    assert hm.load_ranking(link) == whole
    assert [p.name for p in folder.iterdir()] == ["kept.json"]
    new = files.write_text(tmp_path / "new.txt", "é\n")
    mask = os.umask(0)
    os.umask(mask)
    assert stat.S_IMODE(new.stat().st_mode) == 0o666 & ~mask
    # A foreign file at the likely name of a partial file is not changed.
    guess = tmp_path / f".heatmatch-{os.getpid()}.txt"
    guess.symlink_to(path)
    files.write_text(tmp_path / "new.txt", "again")
    assert hm.load_ranking(path) == whole
    with pytest.raises(hm.FileError, match="it is a folder"):
        files.write_text(folder, "x")
    with pytest.raises(hm.FileError, match="check the folder"):
        files.write_text(tmp_path / "none" / "x.txt", "x")
    with pytest.raises(hm.FileError, match="a device"):
        files.write_text(os.devnull, "nowhere")
    assert stat.S_ISCHR(os.stat(os.devnull).st_mode)
