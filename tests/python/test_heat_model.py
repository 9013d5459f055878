"""Our heat model against the reference rows of heat; sources in each row."""

from __future__ import annotations

import math

import heatmatch as hm
import pytest
from heat_rows import Row, reference_rows

OPEN = reference_rows("heat_open.csv")
MEASURED = reference_rows("heat_measured.csv")
QUARTZ = hm.Catalog.starter().media["dry-sand"]
ABOUT = {"label": "x", "source": "reference row", "source_kind": "derived"}


def case_of(row: Row) -> str:
    return row.case


def rows_of(rows: list[Row], quantity: str) -> list[Row]:
    found = [row for row in rows if row.quantity == quantity]
    assert found, quantity
    return found


@pytest.mark.parametrize("row", rows_of(OPEN, "bed_conductivity"), ids=case_of)
def test_the_packed_bed_agrees_with_its_equations(row: Row) -> None:
    given = row.inputs
    ours = hm.packed_bed_conductivity(
        temperature_c=given["T_K"] - 273.15,
        porosity=given["porosity"],
        grain_mm=given["d_mm"],
        solid_w_mk=given["k_solid"],
        emissivity=given["eps"],
        shape=given["Cf"],
        contact=given["phi"],
    )
    assert ours == pytest.approx(row.expected, abs=row.allowed)


def bed_of(row: Row) -> hm.BedCharge:
    given = row.inputs
    sand = QUARTZ.replace(
        id="sand",
        k20_w_mk=given["k20"],
        k20_low_w_mk=None,
        k20_high_w_mk=None,
        grain_mm=given["grain_mm"],
        density_kg_m3=given["rho"],
    )
    element = hm.Element(
        id="rod",
        family="storage rod",
        resistance_ohm=10.0,
        sheath_diameter_mm=1000.0 * given["D_m"],
        heated_length_mm=1000.0 * given["legs"] * given["leg_L_m"],
        legs=int(given["legs"]),
        leg_spacing_mm=1000.0 * given.get("spacing_m", 0.05),
        **ABOUT,
    )
    store = hm.Store(
        medium="sand",
        shape="cylinder",
        diameter_m=given["bed_D_m"],
        height_m=given["bed_H_m"],
        wall_emissivity=given["eps_wall"],
        top_u_w_m2k=given["U_top"],
        bottom_u_w_m2k=given["U_bottom"],
    )
    return hm.BedCharge(
        element,
        store,
        hours=given["t_h"],
        air_c=given["Ta_C"],
        conductivity="typical",
        medium=sand,
    )


@pytest.mark.parametrize("row", rows_of(OPEN, "hottest_sheath"), ids=case_of)
def test_the_closed_form_meets_the_solution_in_three_dimensions(row: Row) -> None:
    ours = bed_of(row).temperatures(row.inputs["P_W"]).sheath_c
    assert ours == pytest.approx(row.expected, abs=row.allowed)


@pytest.mark.parametrize("row", rows_of(MEASURED, "rod_in_still_air"), ids=case_of)
def test_an_element_in_air_is_computed_no_cooler_than_measured(row: Row) -> None:
    given = row.inputs
    ours = hm.sheath_in_air_c(
        diameter_mm=1000.0 * given["D_m"],
        w_per_cm=given["flux_W_m2"] * math.pi * given["D_m"] / 100.0,
        emissivity=given["eps"],
        air_c=given["Ta_C"],
    )
    assert row.expected < ours <= row.expected + row.allowed


# The tank was large and its pipe lay near the surface: measured is the mean over the length below
# a surface, computed is the middle of a line in an endless bed of the same sand, which is hotter
# by 7 % at 1 h and 23 % at 168 h (header of the file). So computed must lie above, not far above.
@pytest.mark.parametrize("row", rows_of(MEASURED, "wall_mean_rise"), ids=case_of)
def test_the_middle_of_a_line_is_hotter_than_a_measured_mean(row: Row) -> None:
    given = row.inputs
    hours = given["t_s"] / 3600.0
    sand = hm.Medium(
        id="tank-sand",
        form="granular",
        grain_mm=0.5,  # sand; a grain that is not stated counts as stones, with a gap
        k20_w_mk=given["k"],
        conductivity_w_mk=[{"t_c": 20.0, "conductivity_w_mk": given["k"]}],
        density_kg_m3=given["rho"],
        heat_capacity_j_kgk=[{"t_c": 20.0, "heat_capacity_j_kgk": given["cp"]}],
        **ABOUT,
    )
    element = hm.Element(
        id="pipe",
        family="storage rod",
        resistance_ohm=10.0,
        sheath_diameter_mm=2000.0 * given["r_m"],
        heated_length_mm=1000.0 * given["L_m"],
        legs=1,
        **ABOUT,
    )
    # Wide enough that the bulk hardly warms.
    store = hm.Store(medium="tank-sand", shape="cylinder", diameter_m=3.0, height_m=3.0)
    power_w = given["q_W_m"] * given["L_m"]
    whole_days = max(1.0, round(hours / 24.0))
    bed = hm.BedCharge(
        element,
        store,
        hours=min(hours, 24.0),
        days=whole_days,
        air_c=20.0,
        conductivity="typical",
        medium=sand,
    )
    ours = bed.temperatures(power_w).sheath_c - 20.0
    assert row.expected < ours < 1.35 * row.expected
