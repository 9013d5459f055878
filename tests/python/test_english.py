"""Plain technical English: short sentences, and no thing that acts like a person."""

from __future__ import annotations

import re

import pytest
import user_texts

MOST_WORDS = 30
# A word of British spelling, or an older word for a thing that has a term of the trade.
NOT_OURS = {
    r"centimetres?|metres?": "centimeter, meter",
    r"neighbours?|neighbouring": "neighbor",
    r"colours?|coloured": "color",
    r"oxidises?|utilisation|recognises?|minimises?": "-ize",
    r"labelled|modelled|ageing": "labeled, modeled, aging",
    r"hot tails?": "element lead",
    r"lagging": "insulation jacket",
    r"first fires?": "first heating",
    r"bright cold": "cold, bright weather",
    r"hooked otherwise": "wired differently",
    r"harvest fraction": "utilization",
    r"circuit that stands": "existing circuit",
    r"trades for": "trade-offs",
    r"alternating current|direct current": "AC, DC",
    r"over-temperature": "overtemperature",
    r"welded shut": "welded closed",
}
# Names of margins and of runs in an example are data; the glossary explains them.
DATA = ("hot tail insulation", "hot tail plating", "hot tail joint", "hot tail", "hot tail ")
TEXTS = user_texts.all_texts()
ROOMS = sorted({one.room for one in TEXTS})


def of(room: str) -> list[user_texts.Text]:
    return [one for one in TEXTS if one.room == room]


def is_data(one: user_texts.Text) -> bool:
    return one.text in DATA or one.name == "words.py" or '{"name":' in one.text


def test_texts_of_every_kind_are_read() -> None:
    assert {"answer", "match/margins", "fields", "python cli", "python plot"} <= set(ROOMS)
    assert len(TEXTS) > 2000


@pytest.mark.parametrize("room", ROOMS)
def test_no_sentence_is_long(room: str) -> None:
    long = {one.name: user_texts.over(one.text, MOST_WORDS) for one in of(room)}
    assert {name: said for name, said in long.items() if said} == {}


@pytest.mark.parametrize("room", ROOMS)
def test_things_do_not_act_like_people(room: str) -> None:
    assert {one.name: one.text for one in of(room) if user_texts.of_people(one.text)} == {}


@pytest.mark.parametrize("room", ROOMS)
def test_one_word_for_one_thing_in_american_spelling(room: str) -> None:
    for one in of(room):
        if is_data(one):
            continue
        for pattern, ours in NOT_OURS.items():
            found = re.search(rf"\b(?:{pattern})\b", one.text, re.IGNORECASE)
            assert found is None, f"{one.name}: {found and found[0]!r}: we write {ours}"


# Source: of the words below by hand; a place is one word of one syllable.
def test_sentences_words_and_syllables_are_counted() -> None:
    text = 'Bond the vessel. At {value} it melts (no "fuse").'
    assert [len(user_texts.words(one)) for one in user_texts.sentences(text)] == [3, 6]
    assert [user_texts.syllables(word) for word in ("fuse", "vessel", "element")] == [1, 2, 3]
    assert user_texts.over("One two three. Four five.", 2) == ["One two three."]
    assert user_texts.of_people("The log tells {told} nothing.") == ["tells"]


# Source: Kincaid et al. 1975, the formula: 2 sentences, 6 words, 6 syllables.
def test_the_grade_is_that_of_its_formula() -> None:
    found = user_texts.grade(["The sun heats sand. It melts."])
    assert found == pytest.approx(0.39 * 6 / 2 + 11.8 * 6 / 6 - 15.59)
