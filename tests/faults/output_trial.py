"""Every output under faults: what stands afterwards is the old file or the new one, as was said."""

from __future__ import annotations

import contextlib
import io
import json
import os
import re
import shutil
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Any

import heatmatch as hm
import shim
from claims import Said, Tally, is_unknown
from heatmatch import cli
from heatmatch.io import files
from heatmatch.report import pictures as report_pictures
from shim import DEATHS, Fault, Kind

OLD = "what was there before\n" * 400


# A small one: what is tried is the writing.
INSTALLATION = {
    "heatmatch_installation": 1,
    "site": {"record_low_c": -20},
    "panels": [{"group": "roof", "panel": "cdte-100", "count": 2}],
    "elements": [{"any": {"family": ["oven lower"]}, "count": 1}],
}
SAVED_AT = re.compile(r'"saved_at_utc": "[^"]*"')  # the only thing that differs from run to run


@dataclass(frozen=True)
class Output:
    """A way to write a file: what it gives is an exit code where it is a command."""

    name: str
    write: Callable[..., object]  #: of a path, and of `force` where a file is to be replaced
    streams: bool = False  #: to a stream that stands open, which no writer can put in place whole


def _command(*words: str) -> Callable[..., object]:
    def run(path: Path, *, force: bool = False) -> object:
        named = [word.replace("OUT", str(path)) for word in words]
        return cli.main([*named, "--force"] if force else named)

    return run


def _json_to_stream(stream: int, *words: str) -> int:
    """A command that prints into an open file, as a shell leads its standard output."""
    kept, sys.stdout = sys.stdout, io.TextIOWrapper(io.FileIO(stream, "w", closefd=False), "utf-8")
    try:
        return cli.main(list(words))
    finally:
        with contextlib.suppress(OSError, ValueError):
            sys.stdout.close()
        sys.stdout = kept


def outputs(work: Path) -> Iterator[Output]:
    """All outputs; what they are of is made once."""
    starter, small = hm.Catalog.starter(), hm.Installation.from_dict(INSTALLATION)
    own = hm.Catalog.open(work / "own.heatmatch")
    rows = starter.panels
    for name in rows.keys()[:20]:
        own.add(rows[name].replace(id=f"my-{name}"))
    installation = str(work / "small.json")
    small.to_json(installation)
    kept = hm.rank(starter, small, top=5)
    hm.report(kept[0], work / "first.html")  # what it imports is there then for all that fork
    shown = ("--catalog", str(work / "own.heatmatch"))
    first = (installation, "--rank", "1")
    yield Output("catalog to JSON", own.export_json)
    yield Output("installation to JSON", small.to_json)
    yield Output("ranking, saved", partial(hm.save_ranking, kept))
    yield Output("report", partial(hm.report, kept[0], installation=small))
    yield Output("text", lambda path, **force: files.write_text(path, OLD[::-1], **force))
    yield Output("catalog export", _command("catalog", "export", "OUT", *shown))
    yield Output("rank --csv", _command("rank", installation, "--csv", "OUT"))
    yield Output("rank --save", _command("rank", installation, "--save", "OUT"))
    yield Output("meter --csv", _command("meter", *first, "--csv", "OUT"))
    yield Output("report -o", _command("report", *first, "-o", "OUT"))
    listing = ("catalog", "list", "panel", "--json")
    yield Output(
        "catalog list --json > file", lambda path: _json_to_stream(STREAM, *listing), streams=True
    )


STREAM = 90  #: the number of an open file


@dataclass
class _Place:
    """A folder with the file that an output replaces, or none."""

    folder: Path
    streams: bool = False
    has_old: bool = True
    linked: bool = False

    @property
    def path(self) -> Path:
        return self.folder / "out.json"

    @property
    def target(self) -> Path:
        return self.folder / "other" / "real.json" if self.linked else self.path

    @property
    def replaces(self) -> bool:
        return self.has_old and not self.streams

    def renew(self) -> None:
        """Makes it as it was before."""
        if self.streams:
            os.ftruncate(STREAM, 0)
            os.lseek(STREAM, 0, os.SEEK_SET)
            return
        shutil.rmtree(self.folder, ignore_errors=True)
        self.target.parent.mkdir(parents=True)
        if self.has_old:
            self.target.write_text(OLD, encoding="utf-8")
            self.target.chmod(0o600)
        if self.linked:
            self.path.symlink_to(self.target)

    def content(self) -> str | None:
        """What stands there now."""
        if not self.target.exists():
            return None
        return SAVED_AT.sub("", self.target.read_text(encoding="utf-8"))

    def strangers(self) -> list[str]:
        """What nobody asked for."""
        known = {self.path, self.target, self.target.parent}
        return [str(path.name) for path in self.folder.rglob("*") if path not in known]


class OutputTrial:
    """One output, begun once; a process of its own goes on with each fault from its first call."""

    def __init__(self, output: Output, place: _Place, tally: Tally, most: int) -> None:
        self.output, self.place, self.tally, self.most = output, place, tally, most
        self.parent = os.getpid()
        self.out = -1
        self.new: str | None = None

    def run(self) -> None:
        """Runs the output; the faults are tried on the way."""
        self.place.folder.mkdir(parents=True, exist_ok=True)
        if self.output.streams:
            file = os.open(self.place.path, os.O_WRONLY | os.O_CREAT)
            os.dup2(file, STREAM)
            os.close(file)
        self.place.renew()
        shim.watch(str(self.place.folder))
        shim.plan(None)
        kept = shim.before_first(self._try_all)
        shown = io.StringIO()
        said = None
        try:
            with contextlib.redirect_stdout(shown), contextlib.redirect_stderr(shown):
                force = {"force": True} if self.place.replaces else {}
                code = self.output.write(self.place.path, **force)
            if isinstance(code, int) and code not in (0, 3):
                said = shown.getvalue() or f"nothing, with exit code {code}"
        except hm.Error as error:
            said = str(error)
        except BaseException as error:
            said = f"TRACEBACK {type(error).__name__}: {error}"
        if os.getpid() != self.parent:
            counts = list(shim.counts().values())
            os.write(self.out, json.dumps({"said": said, "counts": counts}).encode())
            os._exit(0)
        del kept
        shim.watch("")
        if said is not None:
            self.tally.blame(self.output.name, f"fails without a fault: {said}")
        elif self.new is None:
            self.tally.blame(self.output.name, "no call was seen")

    def _try_all(self) -> None:
        """Called before the first call on a file; comes back in every process."""
        try:
            self._try_faults()
        except Exception:
            self.tally.blame_error(self.output.name)

    def _try_faults(self) -> None:
        self.place.renew()
        told, _ = self._child(None)
        if told is None:
            return
        self.new = self.place.content()
        faults = list(shim.faults_for(dict(zip(shim.counts(), told["counts"], strict=True))))
        for fault in shim.spread(faults, self.most):
            self.place.renew()
            before = self.place.content()
            told, status = self._child(fault)
            if told is None:
                return
            self._check(fault, told, status, before)
            if fault.fate in DEATHS and not self.output.streams:
                before = self.place.content()
                told, status = self._child(None)
                if told is None:
                    return
                self._check(None, told, status, before)
        self.place.renew()

    def _child(self, fault: Fault | None) -> tuple[dict[str, Any] | None, int]:
        """What a process told that went on from here; nothing in that process."""
        back, out = os.pipe()
        child = os.fork()
        if child == 0:
            os.close(back)
            self.out = out
            shim.plan(fault)
            return None, 0
        os.close(out)
        with os.fdopen(back, encoding="utf-8") as lines:
            told = lines.read()
        status = os.waitpid(child, 0)[1]
        return (json.loads(told) if told else {}), status

    def _check(
        self, fault: Fault | None, told: dict[str, Any], status: int, before: str | None
    ) -> None:
        old = "old" if self.place.has_old else "no old"
        link = ", through a link" if self.place.linked else ""
        case = f"{self.output.name}, {old} file{link}, {fault or 'after a death'}"
        self.tally.cases[self.output.name] += 1
        self.tally.faults += fault is not None
        died = os.WIFSIGNALED(status)
        text = told.get("said")
        said = Said(told=False) if died else Said(text)
        if not died and not told:
            self.tally.blame(case, f"ended with {status} and said nothing")
        if text is not None and text.startswith("TRACEBACK"):
            self.tally.blame(case, f"no error of ours: {text}")
        self.tally.claims += not died
        self.tally.unknown += text is not None and is_unknown(text)
        now = self.place.content()
        if self.output.streams:
            if not died and text is None and now != self.new:
                self.tally.blame(case, "it said nothing, but the file is not whole")
            return
        self._check_place(fault, said, before, case)

    def _check_place(self, fault: Fault | None, said: Said, before: str | None, case: str) -> None:
        now = self.place.content()
        is_new, is_old = now == self.new, now == before
        if not is_new and not is_old:
            self.tally.blame(case, f"neither the old nor the new file: {len(now or '')} signs")
        elif not (is_new and said.may_be_done()) and not (is_old and said.may_be_undone()):
            self.tally.blame(case, f"there is the {'new' if is_new else 'old'} one: {said.error}")
        if self.place.has_old and self.place.target.stat().st_mode & 0o777 != 0o600:
            self.tally.blame(case, f"its mode is {self.place.target.stat().st_mode & 0o777:o}")
        if self.place.linked and not self.place.path.is_symlink():
            self.tally.blame(case, "the link is gone")
        # What a dead process left may stay, and so may what could not be removed.
        if fault is not None and said.told and fault.kind is not Kind.UNLINK:
            strangers = self.place.strangers()
            if strangers:
                self.tally.blame(case, f"a file is left: {strangers}")


def try_all(work: Path, tally: Tally, most: int, only: str = "") -> None:
    """Tries faults of every output."""
    # Pictures take seconds and write no file.
    report_pictures.pictures = lambda *_: {}
    for output in outputs(work):
        folder = work / output.name.replace(" ", "_")
        places = [_Place(folder, streams=output.streams)]
        if not output.streams:
            places += [_Place(folder, has_old=False), _Place(folder, linked=True)]
        for number, place in enumerate(places):
            if only in output.name:
                OutputTrial(output, place, tally, max(1, most // (2 if number == 0 else 4))).run()
