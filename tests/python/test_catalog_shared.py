"""One catalog file, many hands: processes, threads, stale parts, interruption, strangers' files."""

from __future__ import annotations

import multiprocessing
import sqlite3
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest

# Numbers of a panel that nothing else bounds: each process edits one of its own.
FIELDS = (
    "price_high",
    "max_series_fuse_a",
    "area_m2",
    "max_system_voltage_v",
    "power_tolerance_pct",
    "noct_c",
    "bifaciality",
    "cells_in_series",
)
LOW = {"max_system_voltage_v": 50.0, "noct_c": 30.0, "cells_in_series": 1.0, "bifaciality": 0.1}


def value_of(field: str, step: int) -> float:
    """The value that the process of a field writes in a step, rising within its range."""
    if field == "cells_in_series":
        return float(step % 90 + 1)
    return round(LOW.get(field, 1.0) + 0.001 * step, 6)


def edit_field(path: str, field: str, edits: int, kept: Any) -> None:
    """Edits one field again and again and counts what was acknowledged."""
    catalog = hm.Catalog.open(path, wait_ms=120_000)
    for step in range(1, edits + 1):
        part = catalog.edit("panel", "my-panel", **{field: value_of(field, step)})
        if getattr(part, field) != value_of(field, step):
            return
        kept.value += 1


def read_again(path: str, stop: Any, bad: Any) -> None:
    """Read until stopped; no field may return to an older value."""
    catalog = hm.Catalog.open(path, wait_ms=120_000)
    seen = dict.fromkeys(FIELDS[:-1], 0.0)
    while not stop.is_set():
        panel = catalog.panels["my-panel"]
        for field, before in seen.items():
            now = getattr(panel, field) or 0.0
            bad.value += now < before
            seen[field] = now
        time.sleep(0.005)


@pytest.mark.parametrize("edits", [20, pytest.param(500, marks=pytest.mark.long)])
def test_no_edit_of_eight_processes_is_lost(edits: int, own: hm.Catalog, minimal: Any) -> None:
    own.add(minimal("panel"))
    path = own.path
    own.close()
    context = multiprocessing.get_context("fork")
    stop, bad = context.Event(), context.Value("i", 0)
    counts = [context.Value("i", 0) for _ in FIELDS]
    readers = [context.Process(target=read_again, args=(path, stop, bad)) for _ in range(2)]
    writers = [
        context.Process(target=edit_field, args=(path, field, edits, count))
        for field, count in zip(FIELDS, counts, strict=True)
    ]
    for process in readers + writers:
        process.start()
    for process in writers:
        process.join()
    stop.set()
    for process in readers:
        process.join()
    assert [process.exitcode for process in readers + writers] == [0] * 10
    assert [count.value for count in counts] == [edits] * 8
    assert bad.value == 0
    catalog = hm.Catalog.open(path)
    panel = catalog.panels["my-panel"]
    assert {f: getattr(panel, f) for f in FIELDS} == {f: value_of(f, edits) for f in FIELDS}
    assert len(catalog.history()) == 1 + 8 * edits
    with sqlite3.connect(path) as file:
        assert file.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    file.close()


def test_a_part_knows_what_it_was_read_as(own: hm.Catalog, minimal: Any) -> None:
    other = hm.Catalog.open(own.path)
    own.add(minimal("panel"))
    for read in (
        lambda: own.panels["my-panel"],
        lambda: own.panels.get("my-panel"),
        lambda: dict(own.panels.items())["my-panel"],
        lambda: next(part for part in own.panels.values() if part.id == "my-panel"),
    ):
        stale = read().replace(notes="mine").replace(technology="mono-Si")
        fuse = (other.panels["my-panel"].max_series_fuse_a or 10.0) + 5.0
        other.edit("panel", "my-panel", max_series_fuse_a=fuse)
        assert own.panels["my-panel"].max_series_fuse_a == fuse  # a later look changes nothing
        with pytest.raises(
            hm.CatalogError, match="another change set max_series_fuse_a from"
        ) as no:
            own.replace(stale)
        assert no.value.field == "max_series_fuse_a"
        assert other.panels["my-panel"].notes is None
    own.replace(own.panels["my-panel"].replace(notes="mine"))
    assert other.panels["my-panel"].notes == "mine"


def test_a_part_that_was_written_is_no_stale_one(own: hm.Catalog, minimal: Any) -> None:
    own.add(minimal("panel"))
    first = own.panels["my-panel"]
    changed = first.replace(v_oc=38)
    own.replace(changed)
    own.replace(changed.replace(notes="weighed"))
    with pytest.raises(hm.CatalogError, match=r"v_oc from 37\.5 V to 38 V"):
        own.replace(first.replace(notes="not weighed"))
    edited = own.edit("panel", "my-panel", v_oc="39 V", notes=None)
    assert (edited.v_oc, edited.notes) == (39.0, None)
    own.replace(edited.replace(notes="again"))
    # A part that was not read is compared with the stated one.
    own.replace(minimal("panel"))
    assert own.panels["my-panel"] == minimal("panel")


def test_a_part_is_not_changed_in_place(starter: hm.Catalog) -> None:
    for panel in (starter.panels["cdte-100"], starter.parts().panels[0]):
        for name in ("v_oc", "voc", "_read_as"):
            with pytest.raises(
                AttributeError, match=rf"make a changed copy.*replace\({name}=\.\.\.\)"
            ):
                setattr(panel, name, 38.0)


def test_an_edit_that_cannot_be_made_says_why(own: hm.Catalog, minimal: Any) -> None:
    own.add(minimal("panel"))
    refusals: list[tuple[type[Exception], str, tuple[str, str], dict[str, Any]]] = [
        (hm.InvalidInput, 'did you mean "v_oc"', ("panel", "my-panel"), {"voc": 3}),
        (hm.InvalidInput, "must be > 0 V", ("panel", "my-panel"), {"v_oc": -3}),
        (hm.InvalidInput, "a number, or a text", ("panel", "my-panel"), {"v_oc": [3]}),
        (hm.InvalidInput, "id cannot be edited", ("panel", "my-panel"), {"id": "new"}),
        (hm.InvalidInput, 'did you mean "panel"', ("panal", "my-panel"), {"v_oc": 3}),
        (hm.NotFound, 'did you mean "my-panel"', ("panel", "my-panell"), {"v_oc": 3}),
    ]
    for error, words, names, changes in refusals:
        with pytest.raises(error, match=words):
            own.edit(*names, **changes)
    assert len(own.history()) == 1


def test_threads_and_closing_do_not_disturb_an_import(own: hm.Catalog, minimal: Any) -> None:
    rows = ", ".join(minimal("panel", id=f"p-{n}").to_json() for n in range(60))
    text = f'{{"heatmatch_catalog": 1, "panels": [{rows}]}}'
    odd: list[str] = []
    done: list[int] = []

    def call(work: Callable[[], object]) -> None:
        while not done:
            try:
                work()
            except hm.CatalogError as error:
                if str(error) != f'the catalog "{own.path}" is closed; open it again':
                    odd.append(str(error))
                return

    def bring_in() -> None:
        own.import_json_text(text)
        own.import_json_text('{"heatmatch_catalog": 1, "removed": {"panels": ["cdte-100"]}}')

    calls: list[Callable[[], object]] = [
        bring_in,
        own.history,
        lambda: own.panels["silicon-60-cell-245"],
        lambda: own.edit("panel", "silicon-60-cell-245", notes="seen"),
        own.export_json_text,
    ]
    threads = [threading.Thread(target=call, args=(work,)) for work in calls]
    for thread in threads:
        thread.start()
    time.sleep(0.3)
    own.close()
    done.append(1)
    for thread in threads:
        thread.join()
    assert odd == []
    with sqlite3.connect(own.path) as file:
        assert file.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    file.close()
    assert len(hm.Catalog.open(own.path).history()) >= 1


INTERRUPTED = """
import os, signal, sqlite3, sys, threading, time
import heatmatch as hm
from heatmatch import cli

signal.signal(signal.SIGINT, signal.default_int_handler)
path, rows = sys.argv[1:]
hm.Catalog.open(path).close()
lock = sqlite3.connect(path, check_same_thread=False)
lock.execute("BEGIN IMMEDIATE")

def interrupt():
    seen = 0  # looks in a row at which the import waits for the lock
    while seen < 10:
        time.sleep(0.02)
        frame = sys._current_frames()[threading.main_thread().ident]
        names = [frame.f_code.co_name]
        while (frame := frame.f_back) is not None:
            names.append(frame.f_code.co_name)
        seen = seen + 1 if names[0] == "compiled_call" and "_imported" in names else 0
    os.kill(os.getpid(), signal.SIGINT)
    lock.rollback()

threading.Thread(target=interrupt).start()
sys.exit(cli.main(["catalog", "import", rows, "--catalog", path]))
"""


def test_an_interrupted_import_says_what_was_kept(tmp_path: Path, minimal: Any) -> None:
    source = hm.Catalog.open(tmp_path / "source.heatmatch")
    source.add(minimal("panel"))
    source.export_json(tmp_path / "rows.json")
    path = tmp_path / "mine.heatmatch"
    done = subprocess.run(
        [sys.executable, "-c", INTERRUPTED, path, tmp_path / "rows.json"],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 130, done.stderr
    assert "Traceback" not in done.stderr
    text = " ".join(done.stderr.split())
    assert "the import was done already and is kept whole, as entry 1 of the history" in text
    catalog = hm.Catalog.open(path)
    assert "my-panel" in catalog.panels
    assert catalog.undo(1).undoes == 1


def test_the_command_line_undoes_an_entry_once(
    command: Callable[..., Any], own: hm.Catalog, minimal: Any
) -> None:
    own.add(minimal("panel"))
    own.add(minimal("panel", id="second"))
    assert command("catalog", "undo", 2, "--catalog", own.path).code == 0
    again = command("catalog", "undo", 2, "--catalog", own.path)
    assert again.code == 1
    assert "was already undone, by entry 3; nothing was changed" in " ".join(again.err.split())
    assert list(own.panels) == sorted([*hm.Catalog.starter().panels, "my-panel"])


def test_the_unknown_outcome_is_no_refusal() -> None:
    assert issubclass(hm.OutcomeUnknown, hm.Error)
    assert not issubclass(hm.OutcomeUnknown, hm.CatalogError)
