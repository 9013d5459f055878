"""Signals: the command line ends with 130 or 143 without a traceback, and long calls stop."""

from __future__ import annotations

import os
import pickle
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import heatmatch as hm
import pandas as pd
import pytest
from day_runs import log_rows
from heatmatch import _stopping as stopping
from heatmatch import cli

pytestmark = pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")

CODES = {signal.SIGINT: 130, signal.SIGTERM: 143, signal.SIGHUP: 129}
# Sends a signal to its own process when a module is looked for.
AT_IMPORT = """
import os, signal, sys
class Finder:
    def find_spec(self, name, path=None, target=None):
        if name == os.environ["SIGNAL_AT"]:
            os.kill(os.getpid(), int(os.environ["SIGNAL"]))
        return None
sys.meta_path.insert(0, Finder())
"""
SCRIPT = "import sys\nfrom heatmatch.cli import main\nsys.exit(main())\n"


def usual_signals() -> None:
    """In a child: what a shell's own jobs have, whatever runs the tests ignores."""
    for signum in CODES:
        signal.signal(signum, signal.SIG_DFL)


@pytest.fixture
def child(tmp_path: Path) -> Iterator[Callable[..., subprocess.Popen[str]]]:
    """Starts the command line as a process, as a module or as the installed script."""
    script = tmp_path / "bin" / "heatmatch"
    script.parent.mkdir()
    script.write_text(SCRIPT)
    (tmp_path / "site").mkdir()
    started: list[subprocess.Popen[str]] = []

    def start(*words: object, by: str = "module", **env: object) -> subprocess.Popen[str]:
        packages = str(Path(hm.__file__).parents[1])
        beginning = ["-m", "heatmatch"] if by == "module" else [str(script)]
        paths = os.pathsep.join([str(tmp_path / "site"), packages])
        process = subprocess.Popen(
            [sys.executable, *beginning, *map(str, words)],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            env={**os.environ, "PYTHONPATH": paths, **{k: str(v) for k, v in env.items()}},
            preexec_fn=usual_signals,
        )
        started.append(process)
        return process

    yield start
    for process in started:
        process.kill()
        process.communicate()


@pytest.mark.parametrize(
    ("by", "signum", "module"),
    [
        ("module", signal.SIGINT, "heatmatch._core"),
        ("module", signal.SIGTERM, "heatmatch.plot"),
        ("script", signal.SIGINT, "heatmatch.cli"),
        pytest.param("script", signal.SIGTERM, "heatmatch._core", marks=pytest.mark.long),
        pytest.param("module", signal.SIGHUP, "heatmatch.cli", marks=pytest.mark.long),
        pytest.param("module", signal.SIGINT, "numpy", marks=pytest.mark.long),
    ],
)
def test_a_signal_while_modules_load_ends_quietly(
    by: str, signum: int, module: str, child: Callable[..., Any], tmp_path: Path
) -> None:
    (tmp_path / "site" / "sitecustomize.py").write_text(AT_IMPORT)
    process = child("catalog", "list", by=by, SIGNAL_AT=module, SIGNAL=int(signum))
    out, err = process.communicate(timeout=60)
    assert (process.returncode, out) == (CODES[signal.Signals(signum)], "")
    assert err == f"heatmatch: {stopping.WORDS[signum]}\n"


@pytest.mark.parametrize("signum", [signal.SIGINT, signal.SIGTERM])
def test_a_signal_in_long_work_ends_it_and_leaves_no_file(
    signum: int, child: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    out = tmp_path / "steps.csv"
    days = ("--rank", 1, "--days", 365, "--csv", out)
    process = child("day", demo_file, *days)
    time.sleep(3)  # modules are loaded, or not: both end alike
    process.send_signal(signum)
    said, err = process.communicate(timeout=60)
    assert (process.returncode, said) == (CODES[signal.Signals(signum)], "")
    assert err == f"heatmatch: {stopping.WORDS[signum]}\n"
    assert {path.name for path in tmp_path.iterdir()} == {"bin", "site", demo_file.name}


def test_a_signal_between_writes_leaves_whole_files(tmp_path: Path) -> None:
    folder = tmp_path / "outputs"
    folder.mkdir()
    writes = """
import sys
from heatmatch import cli
from heatmatch.io import files
def run(parsed):
    while True:
        for letter in "ab":
            files.write_text(sys.argv[1], letter * 300_000)
            print(letter, flush=True)
cli.catalog_list.run_list.__code__ = run.__code__
cli.catalog_list.sys, cli.catalog_list.files = sys, files
sys.exit(cli.main(["catalog", "list"]))
"""
    path = folder / "file"
    for signum in (signal.SIGINT, signal.SIGTERM):
        process = subprocess.Popen(
            [sys.executable, "-c", writes, str(path)],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            env={**os.environ, "PYTHONPATH": str(Path(hm.__file__).parents[1])},
            preexec_fn=usual_signals,
        )
        assert process.stdout is not None
        for _ in range(5):
            process.stdout.readline()
        process.send_signal(signum)
        _, err = process.communicate(timeout=60)
        assert (process.returncode, err) == (
            CODES[signum],
            f"heatmatch: {stopping.WORDS[signum]}\n",
        )
        text = path.read_text()
        assert text in ("a" * 300_000, "b" * 300_000)
        assert [each.name for each in folder.iterdir()] == ["file"]


def test_a_closed_pipe_is_quiet(child: Callable[..., Any]) -> None:
    for words in (("--help",), ("catalog", "export", "-", "--all")):
        process = child(*words)
        assert process.stdout is not None
        process.stdout.close()
        assert process.stderr is not None
        assert process.stderr.read() == ""
        assert process.wait(timeout=60) in (0, 1)


def test_streams_that_are_closed_are_no_traceback(child: Callable[..., Any]) -> None:
    words = [sys.executable, "-m", "heatmatch", "catalog", "list"]
    line = " ".join(words) + " >&-"
    done = subprocess.run(
        ["sh", "-c", line],
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(Path(hm.__file__).parents[1])},
    )
    assert (done.returncode, done.stderr) == (0, "")


def test_what_a_signal_raised_is_not_taken_for_another_error(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def work(*_: object, **__: object) -> None:
        try:
            signal.raise_signal(signal.SIGTERM)
        except stopping.Ended as error:
            raise ImportError("a module was broken off") from error

    before = [signal.getsignal(signum) for signum in CODES]
    monkeypatch.setattr("heatmatch.cli._run", work)
    assert cli.main(["demo"]) == 143
    assert capsys.readouterr().err == "heatmatch: ended\n"
    assert [signal.getsignal(signum) for signum in CODES] == before


def test_a_program_that_uses_the_package_keeps_its_signals() -> None:
    code = "import signal, heatmatch; print(signal.getsignal(signal.SIGTERM) is signal.SIG_DFL)"
    done = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(Path(hm.__file__).parents[1])},
    )
    assert (done.stdout, done.stderr) == ("True\n", "")


class Stopped(Exception):
    """Raised to stop a call."""


def long_calls(standing: hm.Candidate, demo: hm.Installation) -> dict[str, Callable[..., Any]]:
    """Every long call but rank()."""
    weather = hm.Weather.from_installation(demo)
    clear = hm.Weather.clear_days(demo.site)
    days = hm.simulate_day(
        standing, clear, month=4, days=1, warm_up_days=0, air_around_c=10.0, start_c=10.0
    )
    log = hm.StoreLog.from_frame(pd.DataFrame(log_rows(days, 10.0)))
    readings = hm.Readings.from_csv("bank_v,bank_a,irradiance_w_m2\n36.5,5.1,700\n30,4.2,500\n")
    return {
        "simulate_day": lambda **o: hm.simulate_day(standing, weather, month=1, days=3, **o),
        "simulate_stagnation": lambda **o: hm.simulate_stagnation(standing, **o),
        "calibrate": lambda **o: hm.calibrate(standing, log, **o),
        "diagnose": lambda **o: hm.diagnose(standing, readings, **o),
    }


@pytest.mark.parametrize("name", ["simulate_day", "simulate_stagnation", "calibrate", "diagnose"])
def test_long_calls_tell_progress_and_stop(
    name: str, standing: hm.Candidate, demo: hm.Installation
) -> None:
    call = long_calls(standing, demo)[name]
    shares: list[float] = []
    with_progress = call(progress=shares.append)
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    assert all(0.0 <= share <= 1.0 for share in shares)
    # To the bit: looking for a signal changes no result.
    assert pickle.dumps(call()) == pickle.dumps(with_progress)

    def stop(share: float) -> None:
        shares.append(share)
        raise Stopped

    shares.clear()
    with pytest.raises(Stopped):
        call(progress=stop)
    assert len(shares) == 1
    shares.clear()

    def interrupt(share: float) -> None:
        shares.append(share)
        signal.raise_signal(signal.SIGINT)

    # What starts tests in the background may have them ignore it.
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    try:
        with pytest.raises(KeyboardInterrupt):
            call(progress=interrupt)
    finally:
        signal.signal(signal.SIGINT, before)
    assert len(shares) == 1
    with pytest.raises(TypeError):
        call(progress=5)
