"""Sentences of the library: each line of its tables is used by some source, and listed."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

SOURCES = Path(__file__).parents[2] / "libheatmatch" / "src"
ID = r'"([a-z_]+(?:\.[a-z0-9_]+)+)"'
LINE = re.compile(r"\{\s*" + ID + ",")
# say<"run.drop">, make_sentence<table, "run.drop", "value">, counted<"run.one", "run.many">
SAID = re.compile(r"<[^<>;(){}]*>")
TABLES = sorted({path.parent for path in SOURCES.rglob("sentences*.hpp")})


def text_of(paths: list[Path]) -> str:
    return "\n".join(path.read_text(encoding="utf-8") for path in paths)


@pytest.fixture(scope="module")
def said() -> set[str]:
    """The ids between angle brackets in the library."""
    brackets = SAID.findall(text_of(sorted(SOURCES.rglob("*.[ch]pp"))))
    return {one for inside in brackets for one in re.findall(ID, inside)}


def test_there_are_tables_of_sentences() -> None:
    assert SOURCES / "match" / "margins" in TABLES


@pytest.mark.parametrize("room", TABLES, ids=lambda room: room.relative_to(SOURCES).as_posix())
def test_each_line_of_a_room_is_said(room: Path, said: set[str]) -> None:
    lines = LINE.findall(text_of(sorted(room.glob("sentences*.hpp"))))
    assert lines
    assert len(lines) == len(set(lines))
    assert set(lines) <= said


@pytest.mark.parametrize("room", TABLES, ids=lambda room: room.relative_to(SOURCES).as_posix())
def test_the_answer_lists_each_table(room: Path) -> None:
    tables = sorted(room.glob("sentences*.hpp"))
    listing = text_of([SOURCES / "answer" / "sentence_tables.cpp", *tables])
    for path in tables:
        assert any(f'{name}"' in listing for name in (path.relative_to(SOURCES), path.name))
