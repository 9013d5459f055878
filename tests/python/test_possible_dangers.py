"""A check that may be a danger is named in the verdict, not only the first fact that decides."""

from __future__ import annotations

import case_yards
import heatmatch as hm
import pytest
from heatmatch import _library as _core

NAMES = ("wet hands not ruled out", "wood beside the bucket not ruled out")
CASES = {case["name"]: case for case in case_yards.cases("must_never_pass.jsonl")}


def candidate_of(name: str) -> hm.Candidate:
    if name == "demo":
        return hm.assess(hm.Catalog.starter(), hm.demo())
    return case_yards.assess(case_yards.yard_of(CASES[name]))


# Source: the definition of `worst_severity`: each unstated fact at its careful end.
@pytest.mark.parametrize("name", ["demo", *NAMES])
def test_no_possible_danger_is_left_out(name: str) -> None:
    candidate = candidate_of(name)
    told = " ".join(each.text("si") for each in _core.verdict(candidate))
    head, _, listed = told.partition("these may be a danger: ")
    assert head.startswith("DANGER") == (candidate.severity == "danger")
    wanted = {
        _core.shown_margin_name(margin.name)
        for margin in candidate.margins
        if margin.worst_severity == "danger" and margin.severity != "danger"
    }
    assert len(wanted) > 1
    assert {each for each in wanted if each not in listed} == set()


@pytest.mark.parametrize("name", NAMES)
def test_the_danger_of_a_case_is_in_the_list(name: str) -> None:
    candidate = candidate_of(name)
    told = " ".join(each.text("si") for each in _core.verdict(candidate))
    for expected in CASES[name]["expect"]:
        assert _core.shown_margin_name(expected["margin"]) in told
