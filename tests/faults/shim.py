"""The face of the library that makes calls on files fail; it has to be preloaded."""

from __future__ import annotations

import ctypes
import errno
import os
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum

_here = ctypes.CDLL(None)
_FIRST = ctypes.CFUNCTYPE(None)


class Kind(IntEnum):
    """What a call does to a file, as the library counts it."""

    WRITE = 0
    SYNC = 1
    TRUNCATE = 2
    OPEN = 3
    LOCK = 4
    RENAME = 5
    UNLINK = 6
    ANY = 7


class Fate(IntEnum):
    """What becomes of the call that a fault is for."""

    FAIL_ONCE = 0
    FAIL_FOR_GOOD = 1
    FALL_SHORT = 2
    DIE = 3
    DIE_HALFWAY = 4


DEATHS = (Fate.DIE, Fate.DIE_HALFWAY)
_FAILING = (Fate.FAIL_ONCE, Fate.FAIL_FOR_GOOD)
# Kind -> what such a call may fail with.
_ERRORS = {
    Kind.WRITE: (errno.ENOSPC, errno.EIO),
    Kind.SYNC: (errno.EIO,),
    Kind.TRUNCATE: (errno.EIO,),
    Kind.OPEN: (errno.EACCES, errno.ENOSPC),
    Kind.LOCK: (errno.EIO, errno.EAGAIN),
    Kind.RENAME: (errno.EIO, errno.ENOSPC),
    Kind.UNLINK: (errno.EIO,),
}


@dataclass(frozen=True)
class Fault:
    """Which call fails, and how."""

    kind: Kind
    nth: int
    fate: Fate
    error: int = 0

    def __str__(self) -> str:
        name = errno.errorcode.get(self.error, "")
        kind, fate = self.kind.name.lower(), self.fate.name.lower().replace("_", " ")
        return f"{kind} {self.nth}: {fate} {name}".rstrip()


def is_loaded() -> bool:
    """Whether the library stands before the C library in this process."""
    return hasattr(_here, "faults_watch")


def watch(folder: str) -> None:
    """Counts and fails what is done to the files of a folder; "" for none."""
    _here.faults_watch(os.fsencode(os.path.realpath(folder)) if folder else b"")


def plan(fault: Fault | None) -> None:
    """Lets a call fail from now on; without a fault all calls are only counted."""
    if fault is None:
        _here.faults_plan(int(Kind.ANY), ctypes.c_long(0), 0, 0)
    else:
        _here.faults_plan(int(fault.kind), ctypes.c_long(fault.nth), fault.error, int(fault.fate))


def counts() -> dict[Kind, int]:
    """How many calls of each kind were seen since the plan."""
    return {kind: int(_here.faults_seen(int(kind))) for kind in Kind if kind is not Kind.ANY}


def failed() -> int:
    """How many calls were made to fail since the plan."""
    return int(_here.faults_failed())


def before_first(call: Callable[[], None]) -> object:
    """Calls that function before the next call on a watched file; what it gives must be kept."""
    kept = _FIRST(call)
    _here.faults_before_first(kept)
    return kept


def record(file: int) -> None:
    """Records in an open file what is done to the watched ones; -1 for no more."""
    _here.faults_record(file)


def mark(number: int) -> None:
    """Marks a moment in the record."""
    _here.faults_mark(number)


def faults_for(seen: dict[Kind, int]) -> Iterator[Fault]:
    """All faults of an operation that makes so many calls of each kind."""
    for kind, count in seen.items():
        for nth in range(1, count + 1):
            for error in _ERRORS[kind]:
                yield from (Fault(kind, nth, fate, error) for fate in _FAILING)
            if kind is Kind.WRITE:
                yield Fault(kind, nth, Fate.FALL_SHORT, errno.ENOSPC)
                yield Fault(kind, nth, Fate.DIE_HALFWAY)
    for nth in range(1, sum(seen.values()) + 1):
        yield Fault(Kind.ANY, nth, Fate.DIE)


def spread(faults: Sequence[Fault], most: int) -> Iterator[Fault]:
    """So many of the faults at most, of each kind of call about as many, evenly spread."""
    kinds = sorted({fault.kind for fault in faults})
    left = most
    # The rarest first: what they leave, the others have.
    for number, kind in enumerate(sorted(kinds, key=[f.kind for f in faults].count)):
        of_kind = [fault for fault in faults if fault.kind == kind]
        share = min(len(of_kind), max(1, left // (len(kinds) - number)))
        left -= share
        yield from (of_kind[(2 * i + 1) * len(of_kind) // (2 * share)] for i in range(share))
