"""No verdict flatters an array of several groups: properties of random installations."""

from __future__ import annotations

import copy

import pytest
from case_yards import Yard
from dangerous_directions import ROWS, without
from hypothesis import given
from hypothesis import strategies as st
from random_yards import PANELS, numbers, part, yards
from test_never_kinder import changes, judged, kinder, short_or_long, values

_LAYOUTS = (
    "row + other",
    "row x2 + other",
    "row x2 | other x2",
    "row + other | row | other x3",
    "other x2 + row | row x3",
)
_FACTS = ("bifaciality", "max_system_voltage_v", "max_series_fuse_a", "bypass_diodes")


@st.composite
def unlike_yards(draw: st.DrawFn) -> Yard:
    """A random yard whose circuit has panels of two groups."""
    yard: Yard = draw(yards())
    own = yard["parts"]["panels"][0]
    own.setdefault("bypass_diodes", draw(st.integers(0, 3)))
    other = {"bifaciality": 0.0, **part("panels", draw(st.sampled_from(PANELS)), "other-panel")}
    other["bypass_diodes"] = draw(st.integers(0, 3))
    yard["parts"]["panels"].append(other)
    yard["panels"].append({"group": "other", "panel": "other-panel", "count": 64, "age_years": 0})
    circuit = yard["circuit"]
    yard["circuit"] = {
        "array": draw(st.sampled_from(_LAYOUTS)),
        "element": circuit["element"],
        "bank": circuit["bank"],
    }
    return yard


def of_either(field: str) -> tuple[str, ...]:
    return (f"parts/panels/panel/{field}", f"parts/panels/other-panel/{field}")


@short_or_long
@given(yard=unlike_yards())
def test_a_fact_left_out_is_never_kinder(yard: Yard) -> None:
    was = judged(yard)
    for field in _FACTS:
        for fact in of_either(field):
            left = without(yard, fact)
            if left is None:
                continue
            now = judged(left)
            wrong = [
                (fact, name, subject, how)
                for (name, subject), before in was.items()
                if (how := kinder(before, now.get((name, subject)), likely=False))
            ]
            assert wrong == []


_PANEL_ROWS = [row for row in ROWS if row.field.startswith("parts/panels/panel/")]


@pytest.mark.parametrize("which", ["panel", "other-panel"])
@short_or_long
@given(yard=unlike_yards(), share=numbers(0.02, 1))
def test_a_worse_panel_is_never_kinder(which: str, yard: Yard, share: float) -> None:
    if which == "other-panel":  # the rows name the first
        yard = copy.deepcopy(yard)
        one, other = yard["parts"]["panels"]
        one["id"], other["id"] = other["id"], one["id"]
        for group in yard["panels"]:
            swapped = {"panel": "other-panel", "other-panel": "panel"}
            group["panel"] = swapped[group["panel"]]
    was = judged(yard)
    for row in _PANEL_ROWS:
        moved = row.moved(yard, share) if not row.until and row.holds(values(was)) else None
        if moved is not None:
            assert (row.field, changes(row.margins, was, judged(moved))) == (row.field, [])


@short_or_long
@given(yard=unlike_yards())
def test_one_more_panel_in_every_string_has_no_fewer_volts(yard: Yard) -> None:
    was = judged(yard)
    longer = copy.deepcopy(yard)
    strings = [f"{string} + other" for string in yard["circuit"]["array"].split("|")]
    longer["circuit"]["array"] = " | ".join(strings)
    names = ("cold voltage", "touch voltage", "series arc", "sheath voltage")
    assert changes(names, was, judged(longer)) == []
