"""Sound installations, which must have no danger.

`reference/must_stay.jsonl` has one a line, with the practice or the code that accepts it. None may
have a danger, stated or careful, and the ranking must keep it.
"""

from __future__ import annotations

import case_yards
import pytest
from case_yards import grade, worst

CASES = case_yards.cases("must_stay.jsonl")
every_case = pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])


@every_case
def test_assess_finds_no_danger(case):
    candidate = case_yards.assess(case_yards.yard_of(case))
    assert [str(m) for m in candidate.margins if worst(m) == grade("danger")] == []


@every_case
def test_rank_keeps_it(case):
    ranking = case_yards.rank(case_yards.yard_of(case))
    assert (len(ranking), len(ranking.rejected)) == (1, 0), str(ranking)


def test_there_are_enough_of_them():
    assert len(CASES) >= 25
    assert len({case["name"] for case in CASES}) == len(CASES)
    assert all(case["why"] and case["source"] for case in CASES)
