"""The command line as a program: help, interruption, and text that a terminal cannot show."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest

COMMANDS = [
    "start",
    "rank",
    "assess",
    "wires",
    "day",
    "meter",
    "diagnose",
    "report",
    "demo",
    "catalog",
]
ACTIONS = ["list", "show", "add", "edit", "remove", "import", "export", "history", "undo"]


def widest(text: str) -> int:
    return max(len(line) for line in text.splitlines())


def test_an_interrupted_ranking_ends_with_130(
    command: Callable[..., Any], demo_file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(*arguments: object, **options: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("heatmatch.cli._core.rank", interrupted)
    done = command("rank", demo_file)
    assert (done.code, done.err) == (130, "heatmatch: interrupted\n")


def test_help_of_every_command(command: Callable[..., Any]) -> None:
    for words in [[], *[[name] for name in COMMANDS], *[["catalog", name] for name in ACTIONS]]:
        done = command(*words, "--help")
        assert (done.code, done.err) == (0, "")
        assert done.out.startswith(" ".join(["usage: heatmatch", *words]))
        assert widest(done.out) <= 80
    overview = command("--help").out
    assert all(f"  {name} " in overview for name in COMMANDS)
    assert "exit codes: 0 done, 1 the input cannot be used, 2 wrong command," in overview
    assert command("--version").out.strip() == hm.__version__


def test_the_module_runs_as_a_program(python: Callable[..., Any], demo_file: Path) -> None:
    done = python("-m", "heatmatch", "assess", str(demo_file))
    assert (done.returncode, done.stderr) == (0, "")
    assert "barn pair 2S1P" in done.stdout
    failed = python("-m", "heatmatch", "rank", "none.json")
    assert (failed.returncode, failed.stdout) == (1, "")
    assert failed.stderr.startswith("heatmatch: cannot read")


@pytest.mark.parametrize("encoding", ["ascii", "cp1252"])
def test_text_that_a_terminal_cannot_show_is_no_traceback(
    encoding: str, python: Callable[..., Any], demo_file: Path
) -> None:
    plain = json.loads(demo_file.read_text(encoding="utf-8"))
    demo_file.write_text(json.dumps({**plain, "name": "גן ☀️"}))
    done = python("-m", "heatmatch", "assess", str(demo_file), PYTHONIOENCODING=encoding)
    assert "Traceback" not in done.stderr
    assert done.returncode == 0
