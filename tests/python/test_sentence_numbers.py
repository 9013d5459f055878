"""Every number inside every sentence of the margins, computed again from what it is of.

A text is matched with the line of its room's table by a reading of our own; the number at each
place is compared with value, limit, low or high of its margin, or with what `sentence_facts`
computes from the installation, after a conversion of our own, to the digits that are shown. What a
margin would be with unstated facts as bad as they may be is another margin, which nobody else sees:
its numbers are compared with the data of the sentence alone. The short run takes every sixth case,
the long run all and random installations.
"""

from __future__ import annotations

import functools
import os
import re
from collections.abc import Iterator

import case_yards
import heatmatch as hm
import pytest
import random_yards
from case_yards import ROOT, Yard
from hypothesis import HealthCheck, given, settings
from sentence_facts import FACTS, HIGHS, LIMITS, LOWS, VALUES, Told

NUMBER = r"-?\d+(?:\.\d+)?(?:e[+-]?\d+)?"
FOOT_M, INCH_CM, BTU = 0.3048, 2.54, 5.678263
US = {
    "°C": ("°F", lambda c: 1.8 * c + 32.0),
    "K": ("°F", lambda k: 1.8 * k),
    "mm": ("in", lambda mm: mm / (10.0 * INCH_CM)),
    "cm": ("in", lambda cm: cm / INCH_CM),
    "m": ("ft", lambda m: m / FOOT_M),
    "W/cm": ("W/in", lambda w: w * INCH_CM),
    "W/m": ("W/ft", lambda w: w * FOOT_M),
    "W/m2K": ("Btu/h·ft2·°F", lambda u: u / BTU),
}


@functools.cache
def lines() -> dict[str, str]:
    """The tables of sentences, id to text."""
    literal = r'"((?:[^"\\]|\\.)*)"'
    entry = re.compile(r'\{\s*"([a-z_.0-9]+)",\s*((?:' + literal + r"\s*)+)\}")
    found = {}
    for path in (ROOT / "libheatmatch/src").rglob("sentences*.hpp"):
        for match in entry.finditer(path.read_text(encoding="utf-8")):
            text = "".join(re.findall(literal, match[2]))
            found[match[1]] = text.replace('\\"', '"')
    return found


class Reading:
    """The text of a sentence as a pattern, with a group for each of its numbers."""

    def __init__(self, units: str) -> None:
        self.units = units
        self.numbers: list[tuple[str, str, float, str, bool]] = []

    def of(self, sentence: hm.sentence.Sentence, unstated: bool = False) -> str:
        pattern = ""
        unstated = unstated or sentence.id == "margin.unstated"
        for plain, place in re.findall(r"([^{]*)(?:\{([^}]*)\})?", lines()[sentence.id]):
            pattern += re.escape(plain)
            name, _, between = place.partition(":")
            if name in sentence.arguments:
                pattern += self.place(sentence, name, between or ", ", unstated)
        return pattern

    def place(self, sentence: hm.sentence.Sentence, name: str, between: str, unstated: bool) -> str:
        held = sentence.arguments[name]
        if isinstance(held, str):
            return re.escape(held)
        if isinstance(held, list):
            parts = [self.of(part, unstated) for part in held]
            return re.escape(between).join(part for part in parts if part)
        value, unit = held
        self.numbers.append((sentence.id, name, value, unit, unstated))
        shown = self.shown(unit)[0]
        gap = "" if shown in ("", "%") else " "
        return f"({NUMBER})" + re.escape(gap + shown)

    def shown(self, unit: str):
        return US.get(unit, (unit, float)) if self.units == "us" else (unit, float)

    def agrees(self, text: str, value: float, unit: str) -> bool:
        """Whether that is the value, rounded to the digits that are shown."""
        converted = self.shown(unit)[1](value)
        digits, _, power = text.partition("e")
        step = 10.0 ** (int(power or 0) - len(digits.partition(".")[2]))
        return abs(float(text) - converted) <= 0.5 * step + 1e-5 * abs(converted)


def near(value: float, expected: object) -> bool:
    """Whether it is the one number expected, or one of several; anything where nothing is."""
    if expected is None:
        return True
    several = expected if isinstance(expected, list) else [expected]
    return any(abs(value - one) <= 1e-6 * max(1.0, abs(one)) for one in several)


def expected_of(told: Told, line: str, name: str) -> object:
    own = {
        "value": told.margin.value,
        "limit": told.margin.limit,
        "low": told.margin.value_low,
        "high": told.margin.value_high,
    }
    return own[name] if (line, name) not in FACTS and name in own else FACTS[line, name](told)


def wrong_numbers(told: Told, units: str, of_data: bool = False) -> Iterator[str]:
    """What a sentence shows that is not so; by its data alone, where nothing else is known."""
    margin = told.margin
    text = margin.sentence(units=units)
    reading = Reading(units)
    said = said_of(margin)
    match = re.fullmatch(reading.of(said), text)
    if match is None:
        yield f"{margin.name}: not as its line: {text}"
        return
    for shown, (line, name, value, unit, unstated) in zip(
        match.groups(), reading.numbers, strict=True
    ):
        alone = unstated or (of_data and (line, name) in FACTS)
        expected = value if alone else expected_of(told, line, name)
        if not near(value, expected):
            yield f"{margin.name}: {line} has {name} {value}, which is {expected}: {text}"
        if not reading.agrees(shown, value, unit):
            yield f"{margin.name}: {line} shows {name} {value} {unit} as {shown}: {text}"


def of_parts(told: Told) -> Iterator[str]:
    """Values and limits that occur elsewhere too, compared with those."""
    margin = told.margin
    all_facts = (
        (VALUES, margin.value),
        (LIMITS, margin.limit),
        (LOWS, margin.value_low),
        (HIGHS, margin.value_high),
    )
    for facts, found in all_facts:
        if found is None or margin.name not in facts:
            continue
        expected = facts[margin.name](told)
        if not near(found, expected):
            yield f"{margin.name} of {margin.subject}: {found} is {expected}"


def told_of(yard: Yard) -> list[Told]:
    assessed = case_yards.assess(yard)
    candidates = getattr(assessed, "candidates", [assessed])
    return [
        Told(yard, candidate, margin) for candidate in candidates for margin in candidate.margins
    ]


LONG = bool(os.environ.get("HEATMATCH_LONG_RUN"))
CASES = [*case_yards.cases("must_never_pass.jsonl"), *case_yards.cases("must_stay.jsonl")]


@functools.cache
def everything() -> list[Told]:
    cases = CASES[:: 1 if LONG else 6]
    bases = [case_yards.base(name) for name in case_yards.bases()]
    return [told for yard in [*bases, *map(case_yards.yard_of, cases)] for told in told_of(yard)]


@functools.cache
def of_each_kind() -> list[Told]:
    """Of every margin one with each line that shows value and limit."""
    found = {}
    for told in everything():
        if has_two_numbers(told):
            found[told.margin.name, said_of(told.margin).id] = told
    return list(found.values())


def said_of(margin: hm.Margin) -> hm.sentence.Sentence:
    return hm._library.margin_reason(margin).arguments["says"][0]


@pytest.mark.parametrize("units", ["si", "us"])
def test_each_number_of_each_sentence_is_what_it_is_of(units):
    assert [wrong for told in everything() for wrong in wrong_numbers(told, units)] == []


def test_values_and_limits_are_those_of_parts_and_candidate():
    assert [wrong for told in everything() for wrong in of_parts(told)] == []


def test_no_line_has_a_digit_of_its_own():
    for line, text in lines().items():
        assert not re.search(r"\d", re.sub(r"\{[^}]*\}", "", text)), line


def test_each_fact_is_of_a_line_that_has_it():
    for line, name in FACTS:
        assert re.search(r"\{" + name + r"\b", lines()[line]), (line, name)


@pytest.mark.long
@given(yard=random_yards.yards())
@settings(max_examples=300, deadline=None, suppress_health_check=list(HealthCheck))
def test_numbers_of_random_installations_are_those_of_their_data(yard):
    for told in told_of(yard):
        for units in ("si", "us"):
            assert [*wrong_numbers(told, units, of_data=True)] == []


@pytest.mark.parametrize("units", ["si", "us"])
def test_two_numbers_that_changed_places_are_found(units, monkeypatch):
    """The fault is planted in what is expected: the text of every such sentence is wrong by it."""
    other = {"value": "limit", "limit": "value", "low": "high", "high": "low"}
    assert len(of_each_kind()) > 25
    sound = expected_of
    monkeypatch.setitem(
        globals(), "expected_of", lambda told, line, name: sound(told, line, other.get(name, name))
    )
    for told in of_each_kind():
        assert [*wrong_numbers(told, units)] != [], told.margin.sentence(units=units)


def has_two_numbers(told: Told) -> bool:
    """Whether a sentence shows value and limit, and they differ."""
    margin = told.margin
    if margin.value is None or margin.limit is None or near(margin.value, margin.limit):
        return False
    reading = Reading("si")
    reading.of(said_of(margin))
    own = {name for _, name, _, _, unstated in reading.numbers if not unstated}
    return {"value", "limit"} <= own
