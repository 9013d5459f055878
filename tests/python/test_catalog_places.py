"""Catalog files as they may be: empty, from a stranger, read-only, replaced while they are open."""

from __future__ import annotations

import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest


def test_listing_an_empty_file_leaves_it_empty(command: Callable[..., Any], tmp_path: Path) -> None:
    path = tmp_path / "mine.heatmatch"
    path.touch()
    for words in (("list",), ("list", "panel"), ("history",), ("show", "panel", "cdte-100")):
        assert command("catalog", *words, "--catalog", path).code == 0
        assert path.stat().st_size == 0
    assert command("catalog", "undo", "--catalog", path).code == 1
    assert path.stat().st_size == 0
    assert [entry.name for entry in tmp_path.iterdir()] == ["mine.heatmatch"]


def test_a_strangers_file_runs_nothing(command: Callable[..., Any], own: hm.Catalog) -> None:
    own.edit("panel", "cdte-100", notes="mine")
    own.close()
    with sqlite3.connect(own.path) as file:
        file.execute("ALTER TABLE panels RENAME TO kept")
        file.execute(
            "CREATE VIEW panels AS WITH RECURSIVE r(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM r) "
            "SELECT kept.* FROM kept, r"
        )
    file.close()
    done = command("catalog", "list", "panel", "--catalog", own.path)
    assert done.code == 1
    assert "which heatmatch does not write" in " ".join(done.err.split())


@pytest.fixture
def readable_folder() -> Iterator[Path]:
    """A folder that every user may look into."""
    path = Path(tempfile.mkdtemp(prefix="heatmatch-"))
    path.chmod(0o755)
    yield path
    path.chmod(0o755)
    shutil.rmtree(path)


READ_ONLY = """
import os, sys
import heatmatch as hm

if os.geteuid() == 0:
    os.setgroups([])
    os.setgid(65534)
    os.setuid(65534)
catalog = hm.Catalog.open(sys.argv[1])
assert "my-panel" in catalog.panels
assert len(catalog.history()) == 1
for change in (
    lambda: catalog.edit("panel", "my-panel", notes="mine"),
    lambda: catalog.remove("panel", "my-panel"),
    catalog.undo,
):
    try:
        change()
    except hm.FileError as error:
        print(error)
"""


@pytest.mark.parametrize("old", [False, True])
@pytest.mark.parametrize("folder_too", [False, True])
def test_what_cannot_be_written_can_be_read(
    old: bool, folder_too: bool, readable_folder: Path, minimal: Any
) -> None:
    path = readable_folder / "mine % ?#.heatmatch"
    with hm.Catalog.open(path) as catalog:
        catalog.add(minimal("panel"))
    if old:
        with sqlite3.connect(path) as file:
            file.execute("ALTER TABLE panels DROP COLUMN bifaciality")
            file.execute("PRAGMA user_version = 1")
        file.close()
    before = path.read_bytes()
    path.chmod(0o444)
    if folder_too:
        readable_folder.chmod(0o555)
    done = subprocess.run(
        [sys.executable, "-c", READ_ONLY, path],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    said = f'cannot write "{path}": it is read-only; nothing was changed: copy it into a folder'
    assert [line.startswith(said) for line in done.stdout.splitlines()] == [True] * 3, done.stdout
    assert path.read_bytes() == before


def test_a_file_replaced_while_it_is_open_takes_no_change(own: hm.Catalog, minimal: Any) -> None:
    own.add(minimal("panel"))
    own.save_copy(Path(own.path).with_name("copy.heatmatch"))
    os.replace(Path(own.path).with_name("copy.heatmatch"), own.path)
    for change in (own.undo, lambda: own.edit("panel", "my-panel", notes="lost")):
        with pytest.raises(hm.FileError, match="was replaced or deleted since it was opened"):
            change()
    assert own.panels["my-panel"].notes is None
