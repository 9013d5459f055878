"""What may lie on a disk after a power cut: what was synced, and any part of what was not."""

from __future__ import annotations

import random
import struct
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass, field
from pathlib import Path

_HEAD = struct.Struct("=qIIc7x")


@dataclass(frozen=True)
class Event:
    """One call that was recorded: what it did to which file."""

    what: str
    path: str
    offset: int
    data: bytes


def events(record: bytes) -> Iterator[Event]:
    """The calls of a record, in their order."""
    at = 0
    while at < len(record):
        offset, path_size, data_size, what = _HEAD.unpack_from(record, at)
        at += _HEAD.size
        path = record[at : at + path_size].decode()
        at += path_size
        yield Event(what.decode(), path, offset, record[at : at + data_size])
        at += data_size


@dataclass
class _File:
    """What is safe of a file, and what was done to it since."""

    safe: bytes = b""
    since: list[tuple[int, bytes | None]] = field(default_factory=list)

    def content(self, steps: list[tuple[int, bytes | None]]) -> bytes:
        """The safe bytes after some of the steps: a write, or a new length where it is None."""
        content = bytearray(self.safe)
        for offset, data in steps:
            if data is None:
                del content[offset:]
            content.extend(bytes(max(0, offset - len(content))))
            if data is not None:
                content[offset : offset + len(data)] = data
        return bytes(content)


# Names in a folder -> the number of the file that they lead to.
Names = dict[str, int]


class Disk:
    """A folder as the calls change it; only a sync makes something safe.

    Names are safe when their folder was synced, content when the file was. Of changed names the
    first few may be there, as file systems keep their order; of writes any, or a half.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = str(folder)
        self.files: list[_File] = []
        self.names: Names = {}
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                self.names[str(path)] = len(self.files)
                self.files.append(_File(path.read_bytes()))
        self.states: list[Names] = [dict(self.names)]  #: the safe names, then each later state

    def apply(self, event: Event) -> None:
        """Does what a call did."""
        number = self.names.get(event.path)
        if event.what == "c":
            self.names[event.path] = len(self.files)
            self.files.append(_File())
        elif event.what == "s" and number is None:
            self.states = []
        elif number is None:
            return
        elif event.what == "w":
            self.files[number].since.append((event.offset, event.data))
        elif event.what == "t":
            self.files[number].since.append((event.offset, None))
        elif event.what == "s":
            file = self.files[number]
            file.safe, file.since = file.content(file.since), []
        elif event.what in "rl":
            self.names[event.data.decode()] = number
        if event.what in "ru":
            self.names.pop(event.path)
        if not self.states or self.names != self.states[-1]:
            self.states.append(dict(self.names))

    def cut(self, dice: random.Random, names: str, writes: str) -> dict[str, bytes]:
        """Path -> content of one disk that a cut may leave: `none`, `all` or `some` is there."""
        last = {"none": 0, "all": len(self.states) - 1}
        shown = self.states[last.get(names, dice.randrange(len(self.states)))]
        return {path: self._content(self.files[n], dice, writes) for path, n in shown.items()}

    def _content(self, file: _File, dice: random.Random, writes: str) -> bytes:
        if writes == "none":
            return file.safe
        if writes == "all":
            return file.content(file.since)
        kept = [step for step in file.since if dice.random() < 0.6]
        if kept and dice.random() < 0.5:
            place = dice.randrange(len(kept))
            offset, data = kept[place]
            if data is not None:
                kept[place] = (offset, data[: len(data) // 2])
        return file.content(kept)


VARIANTS = (
    ("none", "none"), ("all", "none"), ("all", "all"), ("none", "all"), ("some", "some"),
    ("all", "some"),
)  # fmt: skip


@dataclass(frozen=True)
class Cut:
    """A power cut: after how many calls, what was marked by then, and what is on the disk."""

    after: int
    variant: str
    marks: frozenset[int]
    files: dict[str, bytes]


def cuts(disk: Disk, calls: list[Event], most: int) -> Iterator[Cut]:
    """Power cuts after every call, or after as many as there may be, evenly spread."""
    disk = deepcopy(disk)
    changing = [place for place, event in enumerate(calls) if event.what != "m"]
    stride = max(1.0, len(changing) * len(VARIANTS) / most)
    wanted = {int(i * stride) for i in range(int(len(changing) * len(VARIANTS) / stride))}
    marks: set[int] = set()
    number = 0
    for place, event in enumerate(calls):
        if event.what == "m":
            marks.add(event.offset)
            continue
        disk.apply(event)
        # What was marked before the next call was known when the power went.
        known = set(marks)
        for later in calls[place + 1 :]:
            if later.what != "m":
                break
            known.add(later.offset)
        for names, writes in VARIANTS:
            if number in wanted:
                dice = random.Random(number)
                files = disk.cut(dice, names, writes)
                yield Cut(place, f"{names} names, {writes} writes", frozenset(known), files)
            number += 1


def lay(cut: Cut, folder: Path) -> None:
    """Makes a folder what the cut left; what only lives in memory is gone."""
    for path in folder.rglob("*"):
        if path.is_file():
            path.unlink()
    for name, content in cut.files.items():
        if not name.endswith("-shm"):
            Path(name).write_bytes(content)
