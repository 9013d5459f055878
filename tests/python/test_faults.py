"""Files under faults: calls that fail, processes that die, power that goes, one call at a time."""

from __future__ import annotations

import os
import random
import subprocess
from collections.abc import Callable
from functools import partial
from pathlib import Path

import heatmatch as hm
import pytest
from power_cut import Disk, Event, cuts

ROOT = Path(__file__).parents[2]
FAULTS = ROOT / "tests" / "faults"
BUILT = ROOT / "build" / "release" / "tests" / "faults" / "heatmatch_faults.so"
Preloaded = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture
def preloaded(python: Preloaded) -> Preloaded:
    """Run a separate Python in which calls on files can be made to fail."""
    library = Path(os.environ.get("HEATMATCH_FAULTS_LIBRARY", BUILT))
    if not library.is_file():
        pytest.skip(
            f"{library} is not built: cmake --preset release && cmake --build --preset release"
        )
    folders = [str(Path(hm.__file__).resolve().parents[1]), str(FAULTS)]
    return partial(
        python, LD_PRELOAD=str(library), PYTHONPATH=os.pathsep.join(folders), COLUMNS="80"
    )


SECOND_WRITE = """
import errno, os, shim
from shim import Fate, Fault, Kind

os.mkdir("here")
shim.watch("here")
shim.plan(Fault(Kind.WRITE, 2, Fate.{fate}, errno.ENOSPC))
file = os.open("here/file", os.O_WRONLY | os.O_CREAT)
for _ in range(3):
    try:
        print(os.write(file, b"0123456789"), flush=True)
    except OSError as error:
        print(errno.errorcode[error.errno], flush=True)
elsewhere = os.open("elsewhere", os.O_WRONLY | os.O_CREAT)
os.write(elsewhere, b"0123456789")
os.fsync(file)
print(*shim.counts().values(), shim.failed())
"""


# Of three writes into the folder the second is to fail; one elsewhere is none of them.
@pytest.mark.parametrize(
    ("fate", "printed", "size"),
    [
        ("FAIL_ONCE", "10 ENOSPC 10 3 1 0 1 0 0 0 1", 20),
        ("FAIL_FOR_GOOD", "10 ENOSPC ENOSPC 3 1 0 1 0 0 0 2", 10),
        ("FALL_SHORT", "10 5 ENOSPC 3 1 0 1 0 0 0 2", 15),
        ("DIE", "10", 10),
        ("DIE_HALFWAY", "10", 15),
    ],
)
def test_the_call_that_was_named_fails(
    preloaded: Preloaded, tmp_path: Path, fate: str, printed: str, size: int
) -> None:
    result = preloaded("-c", SECOND_WRITE.format(fate=fate))
    assert result.stdout.split() == printed.split(), result.stderr
    assert (result.returncode != 0) == fate.startswith("DIE")
    assert (tmp_path / "here" / "file").stat().st_size == size


def tried(preloaded: Preloaded, record: Callable[[str, object], None], *arguments: str) -> None:
    """Run a trial, print its counts and check that every claim is true."""
    result = preloaded(str(FAULTS / "trial.py"), *arguments, timeout=3600)
    assert result.returncode in (0, 1), result.stdout + result.stderr
    counts = [line for line in result.stdout.splitlines() if "claims checked" in line]
    record("told", f"faults of {arguments[0]}: {counts[-1]}")
    print(result.stdout)
    assert result.returncode == 0, result.stdout


# Operation by operation: the rows acknowledged, the structure of the file and the claim of each
# message, after each of these faults. Few of each, spread over all calls.
@pytest.mark.parametrize(("what", "most"), [("catalog", 20), ("outputs", 6), ("power", 16)])
def test_no_claim_is_false(
    preloaded: Preloaded, record_property: Callable[[str, object], None], what: str, most: int
) -> None:
    tried(preloaded, record_property, what, "--most", str(most))


@pytest.mark.long
@pytest.mark.parametrize("what", ["catalog", "outputs", "power"])
def test_no_claim_is_false_whatever_call_fails(
    preloaded: Preloaded, record_property: Callable[[str, object], None], what: str
) -> None:
    tried(preloaded, record_property, what)


def left_by(folder: Path, *calls: Event) -> set[tuple[tuple[str, bytes], ...]]:
    """All that cuts after the last of some calls may leave, by name and content."""
    disk = Disk(folder)
    for call in calls:
        disk.apply(call)
    dice = random.Random(1)
    some = [disk.cut(dice, "some", "some") for _ in range(200)]
    ends = [
        disk.cut(dice, names, writes) for names in ("none", "all") for writes in ("none", "all")
    ]
    return {tuple(sorted((Path(p).name, c) for p, c in files.items())) for files in some + ends}


# What POSIX promises: fsync() of a file makes its content safe, of a folder its names, and a
# rename is there wholly or not at all.
def test_a_power_cut_keeps_what_was_synced_and_no_more(tmp_path: Path) -> None:
    old, new = tmp_path / "old", str(tmp_path / "new")
    old.write_bytes(b"old")
    made, written = Event("c", new, 0, b""), Event("w", new, 0, b"ab")
    synced, put = Event("s", new, 0, b""), Event("r", new, 0, str(old).encode())
    named = Event("s", str(tmp_path), 0, b"")
    was, is_new = (("old", b"old"),), (("old", b"ab"),)
    lost = {(("old", b"")), (("old", b"a"))}
    assert left_by(tmp_path, made, written, synced, put, named) == {is_new}
    assert left_by(tmp_path, made, written, synced, put) == {was, (("new", b"ab"), *was), is_new}
    assert {(entry,) for entry in lost} < left_by(tmp_path, made, written, put, named)
    marked = [made, written, Event("m", "", 7, b""), synced, put, named]
    after_mark = [cut.marks for cut in cuts(Disk(tmp_path), marked, 10**6)]
    assert after_mark == [frozenset()] * 6 + [frozenset({7})] * 24
