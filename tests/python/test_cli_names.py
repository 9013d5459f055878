"""Odd names through every command, the text of every help, and the guide."""

from __future__ import annotations

import json
import shlex
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import cli
from heatmatch.text.plain import plain_line

READINGS = "bank_v,bank_a\n67.5,2.31\n"
COMMANDS: dict[str, tuple[str, ...]] = {
    "rank": ("--top", "2"),
    "assess": (),
    "wires": (),
    "day": ("--month", "1", "--days", "1"),
    "meter": ("--sun", "800"),
    "diagnose": (),
}


def arguments_of(name: str, path: Path) -> list[object]:
    """A call of that command; diagnose takes readings as well."""
    readings = path.with_name("readings.csv")
    readings.write_text(READINGS)
    return [name, path, *([readings] if name == "diagnose" else []), *COMMANDS[name]]


def odd_file(path: Path, demo: hm.Installation, name: str) -> Path:
    """The demo with that name for its group of panels, its home run, and itself."""
    plain = demo.to_dict()
    plain["panels"] = plain["panels"][:1]
    plain["name"] = plain["panels"][0]["group"] = plain["circuit"]["group"] = name
    plain["runs"][0]["name"] = plain["devices"][0]["run"] = name
    path.write_text(json.dumps(plain), encoding="utf-8")
    return path


@pytest.mark.parametrize("name", COMMANDS)
def test_odd_names_pass_through_text_and_data(
    name: str, odd_group: str, command: Callable[..., Any], demo: hm.Installation, tmp_path: Path
) -> None:
    path = odd_file(tmp_path / "odd.json", demo, odd_group)
    words = arguments_of(name, path)
    done = command(*words)
    assert (done.code, done.err) == (0, "")
    assert max(len(line) for line in done.out.splitlines()) <= 80
    data = command(*words, "--json")
    assert (data.code, data.err) == (0, "")
    plain = json.loads(data.out, parse_constant=pytest.fail)
    group = hm.Installation.from_json(path).panels[0].group
    if name in ("rank", "assess"):
        row = plain["candidates"][0] if name == "rank" else plain
        assert row["group"] == group
    else:
        assert plain["title"].startswith((group, plain_line(group)))


@pytest.mark.parametrize("name", COMMANDS)
def test_names_with_control_characters_are_refused_or_shown(
    name: str, command: Callable[..., Any], demo: hm.Installation, tmp_path: Path
) -> None:
    for odd in ("red \x1b[31m pair", "clear \x9b2J pair", "back \u202e pair", "bell \x07"):
        path = odd_file(tmp_path / "odd.json", demo, odd)
        for options in ((), ("--json",)):
            done = command(*arguments_of(name, path), *options)
            for text in (done.out, done.err):
                assert all(c.isprintable() or c in "\n☀️" for c in text)
            assert done.code == 0 or done.err.count("\n") == 1


@pytest.mark.parametrize("name", [*COMMANDS, "report", "catalog", "demo"])
def test_help_tells_purpose_examples_and_exit_codes(name: str, command: Callable[..., Any]) -> None:
    text = command(name, "--help").out
    overview = " ".join(command("--help").out.split())
    purpose = text.split("\n\n")[1].replace("\n", " ").rstrip(".")
    assert purpose[0].lower() + purpose[1:] in overview
    assert "Prints " in text or "Writes " in text or name == "catalog"
    assert f"\n  heatmatch {name} " in text.partition("examples:")[2]
    assert "exit codes: 0 done, 1 the input cannot be used, 2 wrong command," in text
    assert ("3 something is a danger" in text) == (name in ("assess", "wires", "day", "report"))
    units = name in (*COMMANDS, "report")
    assert ("--units" in text) == units


def test_examples_of_the_help_are_commands(command: Callable[..., Any]) -> None:
    parser = cli.make_parser()
    names = [*COMMANDS, "report", "demo"]
    texts = [command(name, "--help").out.partition("examples:\n")[2] for name in names]
    lines = [line for text in texts for line in text.splitlines() if line.startswith("  heatmatch")]
    assert len(lines) > len(names)
    for line in lines:
        for part in line.partition(">")[0].split("|"):
            parser.parse_args(shlex.split(part)[1:])


def test_without_a_command_a_guide_is_printed(command: Callable[..., Any]) -> None:
    done = command()
    assert (done.code, done.out) == (2, "")
    for name in [*COMMANDS, "report", "catalog", "demo"]:
        assert f" heatmatch {name} " in done.err
    assert max(len(line) for line in done.err.splitlines()) <= 80
