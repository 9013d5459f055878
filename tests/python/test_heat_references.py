"""The reference rows of heat against open libraries, integrals and measured walls.

A wrong expected number would pass on an error to every test that reads it, so the rows are
evaluated once more without heatmatch (heat_formulas.py). Sources: in each row.
"""

from __future__ import annotations

import math

import pytest
from heat_formulas import FORMULAS
from heat_rows import Row, reference_rows

OPEN = reference_rows("heat_open.csv")
MEASURED = reference_rows("heat_measured.csv")

# Printed values and the finite-volume solutions: nothing open evaluates them.
PRINTED = {"air_prandtl", "sand_conductivity", "dry_sand_range", "hottest_sheath"}

# What a measured quantity is computed by.
MODEL_OF = {
    "wall_mean_rise": "finite_line_mean",
    "fluid_mean_growth": "line_source_growth",
    "rod_in_still_air": "rod_in_still_air",
}


def case_of(row: Row) -> str:
    return row.case


@pytest.mark.parametrize("row", [r for r in OPEN if r.quantity not in PRINTED], ids=case_of)
def test_a_row_agrees_with_an_open_library(row: Row) -> None:
    assert FORMULAS[row.quantity](row.inputs) == pytest.approx(row.expected, abs=row.allowed)


@pytest.mark.parametrize("row", MEASURED, ids=case_of)
def test_conduction_and_convection_meet_the_measured_wall(row: Row) -> None:
    computed = FORMULAS[MODEL_OF[row.quantity]](row.inputs)
    assert computed == pytest.approx(row.expected, abs=row.allowed)


def test_the_computed_element_in_air_is_never_cooler_than_the_measured_one() -> None:
    rows = [row for row in MEASURED if row.quantity == "rod_in_still_air"]
    assert len(rows) == 5
    for row in rows:
        assert FORMULAS[row.quantity](row.inputs) > row.expected, row.case


# Source: Carslaw-Jaeger 13.5: for long times G tends to the line source (ln(4 Fo) - gamma)/(4 pi).
def test_the_cylinder_source_tends_to_the_line_source() -> None:
    late = 1e5
    limit = (math.log(4.0 * late) - 0.5772156649015329) / (4.0 * math.pi)
    assert FORMULAS["cylinder_source"]({"Fo": late}) == pytest.approx(limit, rel=1e-4)


# Source: the steady finite line in closed form, q'/(2 pi k) asinh(L/2r). Carslaw-Jaeger 10.3.
def test_the_middle_of_a_finite_line_has_a_closed_form() -> None:
    (row,) = [row for row in OPEN if row.quantity == "finite_line_middle"]
    given = row.inputs
    closed = given["q_W_m"] / (2.0 * math.pi * given["k"])
    closed *= math.asinh(0.5 * given["L_m"] / given["r_m"])
    assert closed == pytest.approx(row.expected, rel=1e-8)


def test_no_row_is_without_use_or_source() -> None:
    rows = OPEN + MEASURED
    assert len({row.case for row in rows}) == len(rows)
    for row in rows:
        assert row.quantity in FORMULAS or row.quantity in PRINTED or row.quantity in MODEL_OF
        assert row.source
        assert row.allowed > 0.0
