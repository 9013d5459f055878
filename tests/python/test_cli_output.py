"""What the command line puts out: colour, control characters, progress, CSV, whole files."""

from __future__ import annotations

import csv
import io
import json
import math
import os
import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import cli
from heatmatch.cli import output as cli_output
from heatmatch.io import files
from heatmatch.text import columns as display_text

ESCAPE = "\x1b"
AC_SWITCH = {"part": "ac-toggle-switch", "run": "home run", "duty": "breaks dc"}


@pytest.fixture
def terminal(monkeypatch: pytest.MonkeyPatch) -> Callable[..., None]:
    """Makes streams look like a terminal, with variables of the environment."""

    def look(*streams: str, **variables: str) -> None:
        for name in ("NO_COLOR", "TERM", "WT_SESSION"):
            monkeypatch.delenv(name, raising=False)
        for name, value in ({"TERM": "xterm", "WT_SESSION": "1"} | variables).items():
            monkeypatch.setenv(name, value)
        for name in streams:
            monkeypatch.setattr(getattr(sys, name), "isatty", lambda: True)

    return look


@pytest.fixture
def dangerous(demo_file: Path) -> Path:
    """The demo with a switch that cannot break its direct current."""
    plain = json.loads(demo_file.read_text())
    plain["devices"] = [AC_SWITCH]
    demo_file.write_text(json.dumps(plain))
    return demo_file


def test_severities_are_coloured_on_a_terminal_and_keep_their_words(
    command: Callable[..., Any], dangerous: Path, terminal: Callable[..., None]
) -> None:
    bare = command("assess", dangerous)
    assert ESCAPE not in bare.out
    terminal("stdout")
    shown = command("assess", dangerous)
    assert re.search(rf"{ESCAPE}\[1;37;41m(danger|DANGER){ESCAPE}\[0m: ", shown.out)
    without = shown.out
    for code in ("1;37;41", "33", "36", "35", "0"):
        without = without.replace(f"{ESCAPE}[{code}m", "")
    assert without == bare.out
    assert ESCAPE not in command("assess", dangerous, "--json").out


@pytest.mark.parametrize(
    ("variables", "colour"),
    [
        # no-color.org: "when present and not an empty string (regardless of its value)".
        ({"NO_COLOR": "1"}, False),
        ({"NO_COLOR": "0"}, False),
        ({"NO_COLOR": ""}, True),
        ({"TERM": "dumb"}, False),
    ],
)
def test_colour_can_be_turned_off(
    variables: dict[str, str],
    colour: bool,
    command: Callable[..., Any],
    dangerous: Path,
    terminal: Callable[..., None],
) -> None:
    terminal("stdout", **variables)
    assert (ESCAPE in command("assess", dangerous).out) is colour


def test_only_severities_are_coloured(terminal: Callable[..., None]) -> None:
    terminal("stdout")
    text = "a danger, no warning\ncautions:\npart  warning       day 2\n"
    shown = cli_output.coloured(text, sys.stdout)
    assert shown.count(ESCAPE) == 2
    assert f"{ESCAPE}[33mwarning{ESCAPE}[0m       day" in shown


def test_control_characters_are_shown_not_obeyed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    nasty = "a\x1b[31mb\x9b2Jc\x07d\u202ee\u2066f\rg\x7f"
    for text in (display_text.clip(nasty, 40), display_text.wrap(nasty), str(nasty)):
        cli_output.say(text)
        out = capsys.readouterr().out
        assert not any(c in out for c in "\x1b\x9b\x07\u202e\u2066\r\x7f")
        assert out.startswith(r"a\x1b[31mb\x9b2Jc\x07d\u202ee\u2066f")
    assert display_text.plain("גן ☀️ é\tx\n") == "גן ☀️ é\tx\n"
    cli_output.print_json({"name": nasty})
    out = capsys.readouterr().out
    assert json.loads(out) == {"name": nasty}
    assert all(c.isprintable() or c == "\n" for c in out)
    cli_output.complain("one\nline \x1b[2J")
    assert capsys.readouterr().err == "heatmatch: one line \\x1b[2J\n"


def test_json_has_no_number_that_is_none() -> None:
    class Thing:
        a, b, c = 1.5, math.nan, math.inf

    assert cli_output.picked(Thing(), "a", "b", "c") == {"a": 1.5, "b": None, "c": None}
    with pytest.raises(ValueError, match="JSON"):
        cli_output.print_json(math.nan)


@pytest.mark.parametrize(
    ("value", "cell"),
    [
        # The signs that start a formula in a spreadsheet: OWASP, "CSV Injection" (from memory).
        ('=HYPERLINK("x")', '\'=HYPERLINK("x")'),
        ("+1", "'+1"),
        ("-1", "'-1"),
        ("@sum", "'@sum"),
        ("\t=1", "'\t=1"),
        (" =1", "' =1"),
        ("\n\n@sum", "'\n\n@sum"),
        ("\u00a0\ufeff-1", "'\u00a0\ufeff-1"),
        ("\uff1d1", "'\uff1d1"),
        (" \uff0b1", "' \uff0b1"),
        ("\uff0d1", "'\uff0d1"),
        ("\uff20sum", "'\uff20sum"),
        ("barn = pair", "barn = pair"),
        ("", ""),
        (-1.5, "-1.5"),
        (2, "2"),
        (0.1 + 0.2, "0.3"),
        (math.nan, ""),
        (math.inf, ""),
        (None, ""),
    ],
)
def test_cells_are_numbers_or_texts_but_never_formulas(value: object, cell: str) -> None:
    assert cli_output.csv_cell(value) == cell


def test_the_table_of_a_ranking_is_written_for_spreadsheets(
    command: Callable[..., Any], demo: hm.Installation, tmp_path: Path
) -> None:
    plain = demo.to_dict()
    for owned in plain["panels"]:
        owned["group"] = "=" + owned["group"]
    plain["circuit"]["group"] = "=barn pair"
    path, out = tmp_path / "odd.json", tmp_path / "table.csv"
    path.write_text(json.dumps(plain))
    done = command("rank", path, "--top", 3, "--csv", out)
    assert (done.code, done.err) == (0, "")
    assert done.out.endswith(f"\nwrote {out}\n")
    rows = list(csv.DictReader(io.StringIO(out.read_text(encoding="utf-8"))))
    ranking = hm.rank(hm.Catalog.starter(), hm.Installation.from_dict(plain), top=3)
    assert [row["group"] for row in rows] == ["'" + c.circuit.owned.group for c in ranking]
    for row, candidate in zip(rows, ranking, strict=True):
        assert float(row["bank_ohm"]) == pytest.approx(candidate.circuit.bank_ohm, rel=1e-8)


def test_files_are_whole_or_as_they_were(tmp_path: Path) -> None:
    path = tmp_path / "out.csv"
    path.write_text("before")
    with pytest.raises(UnicodeEncodeError):
        files.write_text(path, "half a character: \ud800")
    assert path.read_text() == "before"
    files.write_text(str(path), "after\n")
    assert path.read_text() == "after\n"
    assert [p.name for p in tmp_path.iterdir()] == ["out.csv"]
    link = tmp_path / "link.csv"
    link.symlink_to(path)
    files.write_text(str(link), "through")
    assert (link.is_symlink(), path.read_text()) == (True, "through")
    # A device is no file to replace, nor one to keep.
    with pytest.raises(hm.FileError, match="a device"):
        files.write_text(os.devnull, "nowhere")
    assert not Path(os.devnull).is_file()


def test_two_outputs_of_one_name_are_refused_before_the_work(
    command: Callable[..., Any], demo_file: Path, tmp_path: Path
) -> None:
    out, link = tmp_path / "out.csv", tmp_path / "link.csv"
    link.symlink_to(out)
    for save in (out, link, tmp_path / "." / "out.csv"):
        done = command("rank", demo_file, "--save", save, "--csv", out)
        assert (done.code, done.out, done.err.count("\n")) == (1, "", 1)
        assert "name two files" in done.err
    assert not out.exists()
    assert command("rank", demo_file, "--save", tmp_path / "a.json", "--csv", out).code == 0


ODD = "a\x9b2J b\u202e c\u2066 d\x7f e\u200f 90 °C ☀ \U0001f525"


@pytest.mark.parametrize("encoding", ["utf-8", "ascii", "cp1252"])
@pytest.mark.parametrize("what", ["demo", "export"])
def test_data_on_standard_output_loses_no_character(
    what: str, encoding: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    panel = dict(hm.Catalog.starter().panels["cdte-100"].to_dict(), notes=ODD)
    text = json.dumps({"heatmatch_catalog": 1, "panels": [panel]}, ensure_ascii=False) + "\n"

    class Thing:
        path = ""

        def to_json_text(self) -> str:
            return text

        export_json_text = to_json_text

    raw = io.BytesIO()
    stream = io.TextIOWrapper(raw, encoding=encoding, errors="strict", newline="\n")
    monkeypatch.setattr(sys, "stdout", stream)
    monkeypatch.setattr("heatmatch.cli.rank._core.demo", Thing)
    monkeypatch.setattr("heatmatch.cli.catalog.open_catalog", lambda path: Thing())
    assert cli.main(["demo"] if what == "demo" else ["catalog", "export", "-"]) == 0
    stream.flush()
    shown = raw.getvalue().decode(encoding)
    assert json.loads(shown) == json.loads(text)
    assert not any(c in shown for c in "\x9b\u202e\u2066\x7f\u200f")


@pytest.mark.parametrize("options", [("--csv",), ("--save",)])
def test_what_cannot_be_written_is_told_before_the_work(
    options: tuple[str, ...],
    command: Callable[..., Any],
    demo_file: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def never(*arguments: object, **named: object) -> None:
        pytest.fail("the work was done")

    monkeypatch.setattr("heatmatch.cli._core.rank", never)
    taken = tmp_path / "taken.csv"
    taken.write_text("mine")
    for path, words in (
        (tmp_path, "it is not a file"),
        ("-", "it is not a file"),
        (tmp_path / "none" / "x.csv", "its folder does not exist"),
        (demo_file, "this command reads it; name another file"),
        (taken, "exists; name another file, or overwrite it with --force"),
    ):
        done = command("rank", demo_file, *options, path)
        assert (done.code, done.out, done.err.count("\n")) == (1, "", 1)
        assert words in done.err
        assert str(path) in done.err


def test_progress_is_shown_to_somebody_who_looks(
    command: Callable[..., Any],
    demo_file: Path,
    terminal: Callable[..., None],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(cli_output, "_BAR_AFTER_S", -1.0)
    shares: list[float] = []
    monkeypatch.setattr("heatmatch._progress.bar", lambda: shares.append)
    day = ("day", demo_file, "--month", 1, "--days", 1)
    assert command("rank", demo_file).err == ""
    assert (command(*day).err, shares) == ("", [])
    terminal("stderr")
    for silent in ("--quiet", "--json"):
        assert command("rank", demo_file, silent).err == ""
        assert command(*day, silent).err == ""
    assert shares == []
    assert command("rank", demo_file).code == 0
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    shares.clear()
    assert command(*day).code == 0
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    terminal("stderr", TERM="dumb")
    assert command(*day).err == ""


def test_short_work_has_no_bar(
    terminal: Callable[..., None], capsys: pytest.CaptureFixture[str]
) -> None:
    terminal("stderr")
    move = cli_output.bar(wanted=True)
    assert move is not None
    for share in (0.0, 0.5, 1.0):
        move(share)
    assert capsys.readouterr().err == ""
