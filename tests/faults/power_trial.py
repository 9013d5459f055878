"""Power cuts in lives of a catalog and in outputs: what was acknowledged is there, and whole."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import heatmatch as hm
import shim
from catalog_lives import LIVES, Life, read
from catalog_trial import fresh, in_child, laid_out
from claims import Tally
from heatmatch.report import pictures as report_pictures
from output_trial import OLD, SAVED_AT, Output, outputs
from power_cut import Cut, Disk, Event, cuts, events, lay

DONE = 100  #: the mark of an output that came back without an error


def _recorded(folder: Path, work: object) -> list[Event]:
    """What a piece of work in a process of its own does to the files of a folder."""
    record = folder.parent / "record"
    file = os.open(record, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | os.O_APPEND)

    def run(_: int) -> None:
        shim.watch(str(folder))
        shim.plan(None)
        shim.record(file)
        work()  # type: ignore[operator]

    told, _ = in_child(run)
    os.close(file)
    if told:
        raise RuntimeError(f"the work failed without a fault: {told}")
    return list(events(record.read_bytes()))


def _live(life: Life, path: Path) -> None:
    catalog = hm.Catalog.open(path)
    for number, step in enumerate(life.steps):
        step(catalog)
        shim.mark(number)
    catalog.close()


def cut_life(life: Life, work: Path, tally: Tally, most: int) -> None:
    """Cuts the power in a life of a catalog."""
    template, folder, states = laid_out(life, work)
    path = fresh(template, folder)
    disk = Disk(folder)
    for cut in cuts(disk, _recorded(folder, lambda: _live(life, path)), most):
        case = f"power cut, {life.name}, after call {cut.after}, {cut.variant}"
        tally.cases[f"power cut, {life.name}"] += 1
        tally.claims += len(cut.marks)
        try:
            lay(cut, folder)
            held = read(path)
        except Exception:
            tally.blame_error(case)
            continue
        possible = [done for done in states if all(done[number] for number in cut.marks)]
        if all(states[done] != held for done in possible):
            actions = [entry[1] for entry in held.history]
            tally.blame(case, f"{len(cut.marks)} steps were acknowledged, there is {actions[-3:]}")
        copy = folder / "copy.heatmatch"
        if life.copies and 0 in cut.marks:
            try:
                if not copy.exists():
                    tally.blame(case, "the copy is gone")
                elif read(copy) != states[(False, False)]:
                    tally.blame(case, "the copy holds something else")
            except Exception:
                tally.blame_error(case)


def cut_output(output: Output, folder: Path, tally: Tally, most: int, *, has_old: bool) -> None:
    """Cuts the power while an output is written."""
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    path = folder / "out.json"
    if has_old:
        path.write_text(OLD, encoding="utf-8")
    disk = Disk(folder)

    def write() -> None:
        with open(os.devnull, "w") as nowhere:
            os.dup2(nowhere.fileno(), 1)
        output.write(path, **({"force": True} if has_old else {}))
        shim.mark(DONE)

    calls = _recorded(folder, write)
    new = SAVED_AT.sub("", path.read_text(encoding="utf-8"))
    for cut in cuts(disk, calls, most):
        case = f"power cut, {output.name}, after call {cut.after}, {cut.variant}"
        tally.cases[f"power cut, {output.name}"] += 1
        tally.claims += DONE in cut.marks
        _judge(cut, path, new, OLD if has_old else None, case, tally)


def _judge(cut: Cut, path: Path, new: str, old: str | None, case: str, tally: Tally) -> None:
    there = cut.files.get(str(path))
    text = None if there is None else SAVED_AT.sub("", there.decode("utf-8", "replace"))
    if text not in (new, old):
        tally.blame(case, f"neither the old nor the new file: {len(text or '')} signs")
    elif DONE in cut.marks and text != new:
        tally.blame(case, "it was said to be written, and is not")


def try_all(work: Path, tally: Tally, most: int, only: str = "") -> None:
    """Cuts the power in every life of a catalog and in every output that is put in place whole."""
    report_pictures.pictures = lambda *_: {}
    for life in LIVES:
        if only in life.name:
            cut_life(life, work / life.name.replace(" ", "_"), tally, most)
    for output in outputs(work):
        if only in output.name and not output.streams:
            folder = work / output.name.replace(" ", "_") / "now"
            for has_old in (True, False):
                try:
                    cut_output(output, folder, tally, max(1, most // 2), has_old=has_old)
                except Exception:
                    tally.blame_error(output.name)
