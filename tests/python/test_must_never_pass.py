"""Dangerous installations: whatever else is said of them, each one's danger must be found.

`reference/must_never_pass.jsonl` has one a line: why it is dangerous and who says so, the base it
changes, and which margin must be at least how severe. Half were written from the trade and the code
before any margin's source was read (`blind`). A case with `until` waits for what is missing; how
many do is printed at the end of the run.
"""

from __future__ import annotations

from collections import Counter

import case_yards
import heatmatch as hm
import pytest
from case_yards import Yard, grade, worst

CASES = case_yards.cases("must_never_pass.jsonl")


def marked(case: Yard) -> object:
    waits = case.get("until")
    marks = [pytest.mark.xfail(strict=False, reason=waits)] if waits else []
    return pytest.param(case, id=case["name"], marks=marks)


def not_found(case: Yard, candidate: hm.Candidate) -> list[str]:
    """What a case expects and a candidate does not have."""
    return [
        f"{expected['margin']} of {expected['subject'] or 'anything'}"
        for expected in case["expect"]
        if case_yards.found(candidate, expected) < grade(expected["severity"])
    ]


def wants_danger(case: Yard) -> bool:
    return any(expected["severity"] == "danger" for expected in case["expect"])


@pytest.mark.parametrize("case", [marked(case) for case in CASES])
def test_assess_finds_it(case):
    assert not_found(case, case_yards.assess(case_yards.yard_of(case))) == []


@pytest.mark.parametrize("case", [marked(case) for case in CASES])
def test_rank_finds_it(case):
    """Ranked or rejected, a row shows it; and a stated danger is never ranked."""
    if "circuits" in case.get("set", {}):
        return  # a ranking judges each pairing alone in the store
    ranking = case_yards.rank(case_yards.yard_of(case))
    if ranking.evaluated == 0:
        return  # nothing of the kind is ranked
    rows = [*ranking, *ranking.rejected]
    assert len(rows) == 1
    assert not_found(case, rows[0]) == []
    if wants_danger(case) and not case.get("unstated"):
        assert len(ranking) == 0


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_the_danger_is_the_case_s_own(case):
    """A base must not have what a case of it is about, or the case would prove nothing."""
    if case.get("unstated") or "until" in case:
        return
    base = case_yards.assess(case_yards.base(case["base"]))
    had = [e for e in case["expect"] if case_yards.found(base, e) >= grade(e["severity"])]
    assert len(had) < len(case["expect"]), had


@pytest.mark.parametrize("name", ["demo", "box", "gravel", "water", "brick"])
def test_a_base_is_no_danger(name):
    base = case_yards.assess(case_yards.base(name))
    assert [str(margin) for margin in base.margins if worst(margin) == grade("danger")] == []


def test_there_are_enough_of_them():
    names = Counter(
        name
        for case in CASES
        for expected in case["expect"]
        for name in ([expected["margin"]] if isinstance(expected["margin"], str) else [])
    )
    assert len(CASES) >= 80
    assert len({case["name"] for case in CASES}) == len(CASES)
    assert 3 * sum(case["blind"] for case in CASES) >= len(CASES)
    assert len(names) >= 25
    assert len({case["base"] for case in CASES}) >= 6
    assert sum(case.get("faults", 1) >= 2 for case in CASES) >= 10
    assert all(case["why"] and case["source"] for case in CASES)
