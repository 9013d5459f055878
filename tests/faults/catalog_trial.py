"""Lives of a catalog under faults: what it acknowledged is there, and what it said is true."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable, Sequence
from pathlib import Path

import heatmatch as hm
import shim
from catalog_lives import LIVES, NAME, Held, Life, held_after, held_by, prepare, read, subsets
from claims import Said, Tally, is_unknown
from shim import Fault

WAIT_MS = 20
_KNOWN = {NAME, f"{NAME}-wal", f"{NAME}-shm", "copy.heatmatch"}
_LEFT_OPEN: list[hm.Catalog] = []  # what a process leaves open when it ends
STATES = dict[tuple[bool, ...], Held]


def _told(out: int, **what: object) -> None:
    os.write(out, (json.dumps(what) + "\n").encode())


def _seen(catalog: hm.Catalog) -> list[object] | None:
    """What the same opening shows; nothing if it cannot."""
    try:
        held = held_by(catalog)
    except hm.Error:
        return None
    return [held.rows, held.history]


def _live(life: Life, path: Path, fault: Fault | None, out: int, *, ends: bool) -> None:
    """One life in a process of its own, which tells each step when it is over."""
    shim.watch(str(path.parent))
    shim.plan(fault)
    try:
        catalog = hm.Catalog.open(path, wait_ms=WAIT_MS)
    except hm.Error as error:
        _told(out, opened=str(error))
        return
    for number, step in enumerate(life.steps if ends else life.steps[:1]):
        for _ in range(2):
            said = None
            try:
                step(catalog)
            except hm.Error as error:
                said = str(error)
            _told(out, step=number, error=said, seen=_seen(catalog))
            if said is not None and is_unknown(said) and ends and number == 0 and life.again:
                shim.plan(None)
                catalog.close()
                catalog = hm.Catalog.open(path)
                _do_again(life, catalog, out)
                break
            # Who is told that nothing was changed tries again, and so does many a one who is not.
            if said is None or not ends:
                break
    if ends:
        catalog.close()
    else:
        _LEFT_OPEN.append(catalog)
    seen = shim.counts()
    _told(out, counts=[seen[kind] for kind in seen], failed=shim.failed())


def _do_again(life: Life, catalog: hm.Catalog, out: int) -> None:
    """Makes sure of a change of which it was not known whether it was made."""
    assert life.again is not None
    try:
        life.again(catalog)
        _told(out, step=0, error=None, seen=_seen(catalog))
    except hm.CatalogError as error:
        there = "is taken" in str(error) or "already" in str(error)
        _told(out, step=0, error=None if there else str(error), seen=_seen(catalog))


def in_child(work: Callable[[int], None]) -> tuple[list[dict[str, object]], int]:
    """What a process of its own told, and its exit status."""
    back, out = os.pipe()
    child = os.fork()
    if child == 0:
        code = 0
        os.close(back)
        try:
            work(out)
        except BaseException as error:
            _told(out, crash=f"{type(error).__name__}: {error}")
            code = 1
        finally:
            os._exit(code)
    os.close(out)
    with os.fdopen(back, encoding="utf-8") as lines:
        told = [json.loads(line) for line in lines]
    return told, os.waitpid(child, 0)[1]


def fresh(template: Path, folder: Path) -> Path:
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(template, folder)
    return folder / NAME


def states_of(life: Life, template: Path, folder: Path) -> STATES:
    made = {}
    for done in subsets(life):
        fresh(template, folder)
        made[done] = held_after(life, done, folder)
    return made


def _as_held(seen: Sequence[object]) -> Held:
    rows, history = seen
    return Held(str(rows), tuple(tuple(entry) for entry in history))  # type: ignore[attr-defined]


def _said(told: list[dict[str, object]], steps: int, *, died: bool) -> list[Said]:
    """What was said of each step in the end; of one that was not begun, that it was not done."""
    tries: list[list[str | None]] = [[] for _ in range(steps)]
    for line in told:
        if "step" in line:
            tries[int(line["step"])].append(line["error"])  # type: ignore[call-overload]
    said = []
    for number, errors in enumerate(tries):
        begun = number == 0 or bool(tries[number - 1])
        if errors and None in errors:
            said.append(Said())
        elif died and begun and len(errors) < 2:
            said.append(Said(told=False))
        elif errors:
            # A second try may be refused for what the first one made.
            telling = [text for text in errors if text and Said(text).may_be_done()]
            said.append(Said([*telling, errors[-1]][0]))
        else:
            said.append(Said("not begun"))
    return said


def _check(
    life: Life, path: Path, fault: Fault, told: list[dict[str, object]], status: int,
    states: STATES, case: str, tally: Tally,
) -> None:  # fmt: skip
    died = os.WIFSIGNALED(status)
    for line in told:
        if "crash" in line:
            tally.blame(case, f"no error of ours: {line['crash']}")
    said = _said(told, len(life.steps), died=died)
    possible = [
        done
        for done in states
        if all(
            one.may_be_done() if is_done else one.may_be_undone()
            for one, is_done in zip(said, done, strict=True)
        )
    ]
    messages = [line["error"] for line in told if line.get("error")]
    messages += [line["opened"] for line in told if "opened" in line]
    tally.claims += len([line for line in told if "step" in line or "opened" in line])
    tally.unknown += len([text for text in messages if is_unknown(str(text))])
    held = read(path)
    if all(states[done] != held for done in possible):
        what = next((done for done in states if states[done] == held), None)
        was = "steps in no order" if what is None else f"steps {what}"
        actions = [entry[1] for entry in held.history]
        tally.blame(case, f"there is {was} ({actions[-3:]}), but it was said: {messages or 'done'}")
    _check_seen(told, states, case, tally)
    _check_copy(life, path, said[0], case, tally)
    # What a dead process left may stay, and so may what could not be removed.
    if not died and fault.kind is not shim.Kind.UNLINK:
        left = {file.name for file in path.parent.iterdir()} - _KNOWN
        if left:
            tally.blame(case, f"a file is left: {sorted(left)}")


def _check_seen(told: list[dict[str, object]], states: STATES, case: str, tally: Tally) -> None:
    """The opening that made the changes shows what it said."""
    done = dict.fromkeys(range(len(next(iter(states)))), False)
    for line in told:
        if "step" not in line:
            continue
        done[int(line["step"])] |= line["error"] is None  # type: ignore[call-overload]
        if line["error"] and is_unknown(str(line["error"])):
            continue
        seen = line["seen"]
        if seen is not None and _as_held(seen) != states[tuple(done.values())]:  # type: ignore
            tally.blame(case, f"the same opening shows otherwise than said: {line['error']}")


def _check_copy(life: Life, path: Path, said: Said, case: str, tally: Tally) -> None:
    if not life.copies:
        return
    copy = path.with_name("copy.heatmatch")
    if copy.exists() and said.told and said.error is not None and not said.may_be_done():
        tally.blame(case, f"a copy is left that was not made: {said.error}")
    if said.told and said.error is None and not copy.exists():
        tally.blame(case, "the copy that was made is not there")
    if copy.exists() and said.error is None and said.told:
        read(copy)


def laid_out(life: Life, work: Path) -> tuple[Path, Path, STATES]:
    """The folder as a life finds it, the one it is lived in, and all that may be held after it."""
    template, folder = work / "template" / "folder", work / "now" / "folder"
    template.mkdir(parents=True)
    folder.parent.mkdir(parents=True)
    prepare(life, template)
    shutil.copy(template.parent / "modules.csv", folder.parent)
    return template, folder, states_of(life, template, folder)


def try_life(life: Life, work: Path, tally: Tally, most: int) -> None:
    """Tries faults of one life, spread evenly over all of them where there are more than that."""
    template, folder, states = laid_out(life, work)
    for ends in (True, False):
        path = fresh(template, folder)
        told, _ = in_child(lambda out, p=path, e=ends: _live(life, p, None, out, ends=e))  # type: ignore
        counts = dict(zip(shim.counts(), told[-1]["counts"], strict=True))  # type: ignore
        faults = list(shim.faults_for(counts))
        for fault in shim.spread(faults, max(1, most // 2)):
            name = f"{life.name}{'' if ends else ', no close'}, {fault}"
            tally.cases[life.name] += 1
            tally.faults += 1
            path = fresh(template, folder)
            try:
                told, status = in_child(
                    lambda out, p=path, f=fault, e=ends: _live(life, p, f, out, ends=e)  # type: ignore
                )
                _check(life, path, fault, told, status, states, name, tally)
            except Exception:
                tally.blame_error(name)


def try_all(work: Path, tally: Tally, most: int, only: str = "") -> None:
    """Tries faults of every life."""
    for life in LIVES:
        if only in life.name:
            try_life(life, work / life.name.replace(" ", "_"), tally, most)
