"""No verdict flatters: properties of random installations.

Moving a quantity in its dangerous direction never improves a margin that it feeds; taking a stated
fact away never does; and a device improves only what it can act on. 25 installations a property,
each tried with every row of its table; 10,000 in the long run (HEATMATCH_LONG_RUN).
"""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import case_yards
import dangerous_directions
import pytest
from case_yards import ROOT, SEVERITIES, Yard, grade
from dangerous_directions import FACTS, ROWS, Row, without
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from random_yards import device, numbers, yards

LONG = bool(os.environ.get("HEATMATCH_LONG_RUN"))
PLANTED = 400  # installations to find each planted error in
CLOSE = 1e-3  # of headroom: what the heat model's iterations leave

short_or_long = settings(
    max_examples=10_000 if LONG else 25,
    deadline=None,
    database=None,
    derandomize=not LONG,
    # What waits for the library fails: only the long run looks for its smallest case.
    phases=[phase for phase in Phase if LONG or phase not in (Phase.shrink, Phase.explain)],
    report_multiple_bugs=False,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


@dataclass(frozen=True)
class Judged:
    """What is compared of a margin: likely and careful severity, and headroom."""

    likely: int
    worst: int
    headroom: float | None
    unit: str
    value: float | None = None


def judged(yard: Yard) -> dict[tuple[str, str], Judged]:
    return {
        (margin.name, margin.subject): Judged(
            grade(margin.consequence if margin.severity == "not assessed" else margin.severity),
            case_yards.worst(margin),
            getattr(margin, "careful_headroom", margin.headroom),
            str(margin.unit),
            margin.value,
        )
        for margin in case_yards.assess(yard).margins
    }


def values(was: dict[tuple[str, str], Judged]) -> dangerous_directions.Values:
    return {name: margin.value for (name, _), margin in was.items()}


def clipped(headroom: float) -> float:
    """Above 1 lies what is colder than at rest; below -1 wires melt and tables end."""
    return min(1.0, max(-1.0, headroom))


def kinder(before: Judged, after: Judged | None, likely: bool) -> str:
    """How a margin improved; empty if it did not."""
    if after is None:
        return "is gone"
    if after.worst < before.worst:
        return f"{SEVERITIES[before.worst]} became {SEVERITIES[after.worst]}"
    if likely and after.likely < before.likely:
        return f"likely {SEVERITIES[before.likely]} became {SEVERITIES[after.likely]}"
    if before.headroom is None or after.headroom is None or after.unit != before.unit:
        return ""
    if clipped(after.headroom) > clipped(before.headroom) + CLOSE:
        return f"headroom {before.headroom:.4g} became {after.headroom:.4g}"
    return ""


def turned_over(margin: Judged) -> Judged:
    """The same with a sign error: good for bad, headroom turned over."""
    danger = len(SEVERITIES) - 1
    headroom = None if margin.headroom is None else -clipped(margin.headroom)
    return Judged(danger - margin.likely, danger - margin.worst, headroom, margin.unit)


def as_it_is(margin: Judged) -> Judged:
    return margin


def changes(
    names: tuple[str, ...],
    was: dict[tuple[str, str], Judged],
    now: dict[tuple[str, str], Judged],
    seen: Callable[[Judged], Judged] = as_it_is,
) -> list[str]:
    """Improvements of the margins named, as `seen` shows them."""
    told = []
    for (name, subject), before in was.items():
        after = now.get((name, subject))
        if name in names and (
            how := kinder(seen(before), None if after is None else seen(after), likely=True)
        ):
            told.append(f"{name} of {subject}: {how}")
    return told


MOVED: set[tuple[str, str, str]] = set()  # field, direction and margin that some yard moved


def moved_wrong(
    row: Row, yard: Yard, was: dict[tuple[str, str], Judged], share: float
) -> list[str]:
    """Improvements in a yard by moving a row's field."""
    moved = row.moved(yard, share) if row.holds(values(was)) else None
    if moved is None:
        return []
    now = judged(moved)
    for name in row.margins:
        if changes((name,), was, now, turned_over):
            MOVED.add((row.field, row.direction, name))
    return [f"{row.field}: {how}" for how in changes(row.margins, was, now)]


def left_out_wrong(fact: str, yard: Yard, was: dict[tuple[str, str], Judged]) -> list[str]:
    """Improvements in a yard by omitting a fact; only the careful verdict counts."""
    left = without(yard, fact)
    if left is None:
        return []
    now = judged(left)
    changes = [
        (name, subject, kinder(before, now.get((name, subject)), likely=False))
        for (name, subject), before in was.items()
    ]
    return [f"{fact}: {name} of {subject}: {how}" for name, subject, how in changes if how]


def split(rows: dict[Any, str]) -> list[object]:
    """The rows that hold in one, and each that waits for the library."""
    params = [pytest.param([row for row, until in rows.items() if not until], id="holds")]
    for row, until in rows.items():
        if until:
            mark = pytest.mark.xfail(strict=False, reason=until)
            name = getattr(row, "field", row)
            params.append(pytest.param([row], id=f"waits: {name}", marks=mark))
    return params


@pytest.mark.parametrize("rows", split({row: row.until for row in ROWS}))
@short_or_long
@given(yard=yards(), share=numbers(0.02, 1))
def test_a_worse_quantity_is_never_kinder(rows, yard, share):
    was = judged(yard)
    assert [wrong for row in rows for wrong in moved_wrong(row, yard, was, share)] == []


def is_row_known(row: Row) -> bool:
    """Whether the library has the field of a row; parts have all that are named."""
    return row.field.startswith("parts/") or case_yards.is_known(row.field)


@pytest.mark.long
def test_every_row_moved_a_margin():
    """What moves nothing checks nothing: a sign error in it would stay unseen."""
    if not MOVED:
        pytest.skip("reads what the test before it found")
    moved = {(field, direction) for field, direction, _ in MOVED}
    live = [row for row in ROWS if not row.until and is_row_known(row)]
    assert [row.field for row in live if (row.field, row.direction) not in moved] == []


@pytest.mark.long
def test_a_planted_sign_error_fails_every_pair():
    """Of each pair of the table: its margin turned over, the property must fail."""
    pairs = {
        (row.field, row.direction, name)
        for row in ROWS
        if not row.until and is_row_known(row)
        for name in row.margins
    }
    unseen = set(pairs)

    @settings(short_or_long, max_examples=PLANTED, phases=[Phase.generate])
    @given(yard=yards(), share=numbers(0.2, 1))
    def plant(yard, share):
        was = judged(yard)
        for row in ROWS:
            left = [name for name in row.margins if (row.field, row.direction, name) in unseen]
            moved = row.moved(yard, share) if left and row.holds(values(was)) else None
            if moved is None:
                continue
            now = judged(moved)
            for name in left:
                if changes((name,), was, now, turned_over):
                    unseen.discard((row.field, row.direction, name))

    plant()
    print(f"planted errors: {len(pairs) - len(unseen)} of {len(pairs)} pairs fail")
    blind = "\n".join(" | ".join(pair) for pair in sorted(unseen))
    assert not unseen, f"pairs that check nothing:\n{blind}"


@pytest.mark.parametrize("facts", split(FACTS))
@short_or_long
@given(yard=yards())
def test_less_is_never_kinder(facts, yard):
    was = judged(yard)
    assert [wrong for fact in facts for wrong in left_out_wrong(fact, yard, was)] == []


def breaks(yard: Yard, control: Yard, placed: Yard, volts: float) -> bool:
    """Whether a printed pair covers the cold volts and 1.25 times the amperes of the array."""
    parallel = case_yards.counts(yard["circuit"]["panels"])[1]
    sun = yard["site"]["bright_irradiance_w_m2"] / 1000
    amperes = 1.25 * yard["parts"]["panels"][0]["i_sc"] * parallel * sun
    if placed["duty"] == "protects a string":
        amperes = 0.0
    return not control.get("ac_only") and any(
        pair["v_dc"] >= volts
        and pair["a_dc"] >= amperes
        and pair["poles"] <= placed.get("poles_used", 1)
        for pair in control.get("dc_ratings", [])
    )


def may_improve(yard: Yard, control: Yard, placed: Yard, volts: float) -> set[str]:
    """The margins of a circuit that a device in this place may improve."""
    limit = {"independent limit", "limit acts in time", "limit supply", "stagnation"}
    limit |= set(dangerous_directions.MADE_OF)
    stays_open = control.get("reset") in ("manual", "replace", "latching")
    if placed["duty"] == "senses only":
        return limit if stays_open and placed.get("drives") else set()
    if placed["duty"] == "carries dc" or not breaks(yard, control, placed, volts):
        return set()
    if placed["duty"] == "protects a string":
        # The runs of a yard carry all strings together: a fuse there parts none from the others.
        return set() if placed["run"] else {"reverse current"}
    if control.get("reset") == "by hand":
        return {"disconnect"}
    return limit if stays_open and "sense_high_c" in control else set()


@short_or_long
@given(yard=yards(), data=st.data())
def test_a_device_improves_only_what_it_can(yard, data):
    placed = data.draw(device(yard["parts"], "added"))
    was = judged(yard)
    now = judged({**yard, "devices": [*yard["devices"], placed]})
    volts = next(m.value for m in case_yards.assess(yard).margins if m.name == "cold voltage")
    allowed = may_improve(yard, yard["parts"]["controls"][-1], placed, volts)
    improved = {
        f"{name} of {subject}: {how}"
        for (name, subject), before in was.items()
        if name not in allowed and (how := kinder(before, now.get((name, subject)), likely=True))
    }
    assert improved == set()


def test_the_table_of_directions_is_the_one_printed():
    assert len(dangerous_directions.pairs()) >= 40
    printed = (ROOT / "tests" / "README.md").read_text(encoding="utf-8")
    assert dangerous_directions.table() in printed, dangerous_directions.table()
