"""One word for one thing: the glossary contains the words of tables, margins and the page."""

from __future__ import annotations

import re
from pathlib import Path

import heatmatch as hm
import pytest
from heatmatch._library import ranking_table, shown_margins
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


# Words of data that no table, sentence or plot shows; the term of the trade is in the glossary.
OLDER = r"hot tail (insulation|plating|joint)|survivor|hooked|fit in store|acts in time|lagging"


def test_people_read_the_terms_of_the_trade(
    standing: hm.Candidate, demo_ranking: hm.Ranking
) -> None:
    first = next(one for one in [*demo_ranking, *demo_ranking.rejected])
    shown = [str(one) for one in (demo_ranking, standing, first, *standing.margins)]
    shown += [one._repr_html_() for one in (demo_ranking, standing, first, *standing.margins)]
    shown += [str(step) for step in standing.explain()]
    for text in shown:
        found = re.search(OLDER, " ".join(text.split()))
        assert found is None, found and found.string[found.start() - 60 : found.end()]
    assert "element lead insulation" in str(standing)
    assert "overtemperature limit" in str(standing)


def test_every_margin_has_a_shown_name(standing: hm.Candidate, demo_ranking: hm.Ranking) -> None:
    known = shown_margins()
    everyone = [standing, *demo_ranking[:20], *demo_ranking.rejected]
    assert {margin.name for one in everyone for margin in one.margins} <= set(known)
    assert set(demo_ranking.reasons) <= set(known)
    assert not [shown for shown in known.values() if re.search(OLDER, shown)]


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
