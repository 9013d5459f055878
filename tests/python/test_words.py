"""One word for one thing: the glossary contains the words of tables, margins and the page."""

from __future__ import annotations

import re
from pathlib import Path

import heatmatch as hm
import pytest
from heatmatch._library import ranking_table
from heatmatch.text.results import SEVERITIES, legend
from heatmatch.text.table import heads
from heatmatch.text.words import WORDS

ROOT = Path(__file__).parents[2]
# What readers of the trade would look for, and the word that we do not use for it.
NOT_OURS = {
    r"solar panels?": "panel",
    r"PV modules?": "panel",
    r"heating rods?": "element",
    r"heaters? element": "element",
    r"thermal battery": "heat store",
    r"sand battery": "heat store",
    r"safety margins? of": "headroom",
    r"wiring configuration": "hook-up",
}


def pages() -> list[Path]:
    """What is read: documents, notebooks, the texts of the package."""
    found = [ROOT / "README.md", ROOT / "libheatmatch" / "README.md"]
    found += sorted((ROOT / "notebooks").glob("*.ipynb"))
    return found + sorted((ROOT / "bindings" / "heatmatch").glob("*.py"))


def test_every_word_is_told_in_a_sentence() -> None:
    assert hm.words() == WORDS
    assert len(WORDS) > 30
    for word, told in WORDS.items():
        assert word == word.strip(), word
        assert told.endswith("."), word
        assert told[0].isupper(), word


def test_severities_are_words() -> None:
    for severity in SEVERITIES:
        assert severity in WORDS or severity == "none"


@pytest.mark.parametrize("path", pages(), ids=lambda path: path.name)
def test_no_second_word_for_the_same_thing(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    for pattern, ours in NOT_OURS.items():
        found = re.search(rf"\b{pattern}\b", text, re.IGNORECASE)
        assert found is None, f'{path.name}: "{found and found.group()}": we say {ours}'


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_legend_tells_every_column_of_the_ranking(demo_ranking: hm.Ranking, units: str) -> None:
    told = legend(demo_ranking, units=units)
    for column in heads(ranking_table(demo_ranking.candidates), units):
        if column in ("#", "panels", "elements"):
            continue
        assert f"{column}:" in told, column


def test_the_words_of_a_candidate_are_in_the_glossary(
    standing: hm.Candidate, demo_ranking: hm.Ranking
) -> None:
    everyone = [standing, *demo_ranking[:20], *demo_ranking.rejected[:20]]
    plain = {
        "live",
        "joints",
        "runs",
        "metal",
    }  # "live parts", "joints and switches", "metal parts"
    for subject in {margin.subject for one in everyone for margin in one.margins}:
        word = subject.split()[0]
        assert word in WORDS or f"heat {word}" in WORDS or word in plain, subject
