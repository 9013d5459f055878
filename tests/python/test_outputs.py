"""Files that are written: what may be replaced, what never is, and what stays of the old one."""

from __future__ import annotations

import json
import os
import socket
import stat
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch.io import files
from heatmatch.io.rankings_saved import SavedRanking
from heatmatch.report import pictures

pytestmark = pytest.mark.skipif(os.name == "nt", reason="modes, links and pipes of POSIX")

PANEL = {"v_oc": 37.5, "i_sc": 8.66, "source": "the label", "source_kind": "nameplate"}
# Every command that writes a file, up to the name of that file.
WRITING: dict[str, tuple[object, ...]] = {
    "rank --save": ("rank", "DEMO", "--top", 1, "--save"),
    "rank --csv": ("rank", "DEMO", "--top", 1, "--csv"),
    "day --csv": ("day", "DEMO", "--month", 1, "--days", 1, "--csv"),
    "meter --csv": ("meter", "DEMO", "--csv"),
    "report": ("report", "DEMO", "-o"),
    "catalog export": ("catalog", "export"),
}


@pytest.fixture
def mine(tmp_path: Path) -> hm.Catalog:
    """A catalog of the user's own with one change, open."""
    catalog = hm.Catalog.open(tmp_path / "mine.heatmatch")
    catalog.add(hm.Panel(id="own", label="Own", **PANEL))
    return catalog


def words_of(name: str, demo_file: Path, path: object) -> list[object]:
    """A command that writes to that path."""
    return [demo_file if word == "DEMO" else word for word in (*WRITING[name], path)]


def names_of(catalog: hm.Catalog, folder: Path) -> list[Path]:
    """A catalog and what belongs to it, by every name."""
    path = Path(catalog.path)
    hard, link, log = folder / "hard", folder / "link", folder / "log"
    os.link(path, hard)
    link.symlink_to(path)
    parts = [Path(f"{path}{end}") for end in ("-wal", "-shm", "-journal")]
    os.link(parts[0], log)
    return [path, *parts, hard, link, log]


@pytest.mark.parametrize("name", WRITING)
def test_no_command_writes_over_a_catalog(
    name: str, command: Callable[..., Any], demo_file: Path, mine: hm.Catalog, tmp_path: Path
) -> None:
    before = Path(mine.path).read_bytes()
    for path in names_of(mine, tmp_path):
        words = words_of(name, demo_file, path)
        for catalog in ([], ["--catalog", mine.path]):
            if not catalog and path.name == "log" and path.stat().st_size == 0:
                continue  # an empty log has no header, and a rename does not change it
            done = command(*words, "--force", *catalog)
            assert (done.code, done.out, done.err.count("\n")) == (1, "", 1), path
            assert str(path) in done.err
    assert Path(mine.path).read_bytes() == before
    assert len(mine.history()) == 1
    mine.undo()


@pytest.mark.parametrize("name", WRITING)
def test_no_command_replaces_a_file_unasked_or_what_it_reads(
    name: str, command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    taken = tmp_path / "taken"
    taken.write_text("mine")
    done = command(*words_of(name, demo_file, taken))
    assert (done.code, done.out, taken.read_text()) == (1, "", "mine")
    assert "exists; name another file, or overwrite it with --force" in done.err
    if name == "catalog export":
        return
    link = tmp_path / "link.json"
    link.symlink_to(demo_file)
    before = demo_file.read_bytes()
    for path in (demo_file, link):
        done = command(*words_of(name, demo_file, path), "--force")
        assert (done.code, done.out, demo_file.read_bytes()) == (1, "", before)
        assert "this command reads it; name another file" in done.err


@pytest.mark.parametrize("name", ["day --csv", "meter --csv", "catalog export"])
def test_what_is_replaced_keeps_link_and_mode(
    name: str, command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    path, link = tmp_path / "out", tmp_path / "link"
    path.write_text("before")
    path.chmod(0o600)
    link.symlink_to("out")
    assert command(*words_of(name, demo_file, link), "--force").code == 0
    assert (link.is_symlink(), stat.S_IMODE(path.stat().st_mode)) == (True, 0o600)
    assert path.read_text() != "before"
    assert {each.name for each in tmp_path.iterdir()} == {"out", "link", demo_file.name}


def test_what_is_no_regular_file_is_refused(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    pipe, bound = tmp_path / "pipe", tmp_path / "socket"
    os.mkfifo(pipe)
    listening = socket.socket(socket.AF_UNIX)
    listening.bind(str(bound))
    for path in (pipe, bound, Path(os.devnull), tmp_path):
        for name in ("catalog export", "meter --csv"):
            done = command(*words_of(name, demo_file, path), "--force")
            assert (done.code, done.out, done.err.count("\n")) == (1, "", 1)
            assert str(path) in done.err
        with pytest.raises(hm.FileError, match="it is a"):
            files.write_text(path, "x")
    listening.close()
    assert stat.S_ISFIFO(pipe.stat().st_mode)
    assert stat.S_ISCHR(os.stat(os.devnull).st_mode)


def test_functions_replace_what_they_wrote_and_nothing_else(
    demo: hm.Installation,
    demo_ranking: hm.Ranking,
    standing: hm.Candidate,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(pictures, "pictures", lambda *_: {})  # they take seconds
    saved = SavedRanking.of(demo_ranking)
    writers: dict[str, Callable[..., Any]] = {
        "ranking": lambda path, **o: hm.save_ranking(saved, path, **o),
        "installation": lambda path, **o: demo.to_json(path, **o),
        "report": lambda path, **o: hm.report(standing, path, **o),
    }
    for name, write in writers.items():
        path = tmp_path / name
        write(path)
        write(path)  # again, as a notebook does
    for name, write in writers.items():
        other = tmp_path / next(each for each in writers if each != name)
        before = other.read_bytes()
        with pytest.raises(hm.FileError, match="another kind of file"):
            write(other)
        assert other.read_bytes() == before
    demo.to_json(tmp_path / "ranking", force=True)
    assert hm.Installation.from_json(tmp_path / "ranking") == demo


def test_functions_write_over_no_catalog(
    mine: hm.Catalog, demo: hm.Installation, demo_ranking: hm.Ranking, tmp_path: Path
) -> None:
    saved = SavedRanking.of(demo_ranking)
    before = Path(mine.path).read_bytes()
    for path in names_of(mine, tmp_path):
        for call in (
            lambda path=path: mine.export_json(path, force=True),
            lambda path=path: mine.save_copy(path),
            lambda path=path: demo.to_json(path, force=True),
            lambda path=path: hm.save_ranking(saved, path, force=True),
            lambda path=path: files.write_text(path, "x"),
        ):
            with pytest.raises(hm.FileError, match="cannot write"):
                call()
    assert Path(mine.path).read_bytes() == before
    assert mine.panels["own"].v_oc == PANEL["v_oc"]
    mine.export_json(tmp_path / "parts.json")
    with pytest.raises(hm.FileError, match="it exists"):
        mine.export_json(tmp_path / "parts.json")
    mine.export_json(tmp_path / "parts.json", force=True)
    assert json.loads((tmp_path / "parts.json").read_text())["panels"][0]["id"] == "own"


def test_writers_at_once_do_not_fail_and_one_wins_whole(tmp_path: Path) -> None:
    path = tmp_path / "out"
    texts = [letter * 300_000 for letter in "abcd"]
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda text: files.write_text(path, text), texts * 5))
    assert path.read_text() in texts
    assert [each.name for each in tmp_path.iterdir()] == ["out"]


def test_a_file_that_appears_meanwhile_is_kept(tmp_path: Path) -> None:
    """Between the look at the start of a command and its output, which --force alone replaces."""
    path = tmp_path / "out"
    path.write_text("theirs")
    with pytest.raises(hm.FileError, match="it exists; name another file, or overwrite it"):
        files.write_text(path, "ours", force=False)
    assert path.read_text() == "theirs"
