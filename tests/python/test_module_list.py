"""The whole public module-rating list, as the pvlib wheel carries it.

Source: CEC module list in the format of the System Advisor Model, found in pvlib's data folder;
the counts printed here depend on its edition. Exact fits meet the label at 1e-6; split fits keep
Isc, Voc, power and beta and tell how far Vmp moved.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import heatmatch as hm
import numpy as np
import pvlib
import pytest


def list_path() -> Path:
    """The module list in the installed pvlib."""
    found = sorted((Path(pvlib.__file__).parent / "data").glob("sam-library-cec-modules-*.csv"))
    assert found, "pvlib carries no module list"
    return found[-1]


@pytest.fixture(scope="module")
def imported(tmp_path_factory: pytest.TempPathFactory) -> tuple[hm.Catalog, hm.ImportReport]:
    """The list in a separate catalog file."""
    catalog = hm.Catalog.open(tmp_path_factory.mktemp("list") / "modules.heatmatch")
    return catalog, catalog.import_module_csv(list_path(), keep_good=True)


def test_every_row_is_taken_or_refused_with_its_line_and_reason(
    imported: tuple[hm.Catalog, hm.ImportReport], capsys: pytest.CaptureFixture[str]
) -> None:
    catalog, report = imported
    with list_path().open(encoding="utf-8") as file:
        modules = sum(1 for _ in file) - 3
    assert report.added + len(report.refused) == modules
    assert len(report.refused) < 0.005 * modules
    for row in report.refused:
        assert row.line > 3
        assert "must be" in row.reason
    with capsys.disabled():
        print(f"\n{list_path().name}: {modules} modules, {len(report.refused)} refused on import")
    assert len(catalog.history()) == 1


def test_the_published_fit_is_kept_as_given(
    imported: tuple[hm.Catalog, hm.ImportReport],
) -> None:
    catalog, _ = imported
    table = pvlib.pvsystem.retrieve_sam("cecmod")
    by_label = {panel.label: panel for panel in catalog.panels.values() if panel.listed_fit}
    checked = 0
    for name in list(table.columns)[::997]:
        row = table[name]
        same = [p for p in by_label.values() if p.v_oc == row.V_oc_ref and p.i_sc == row.I_sc_ref]
        same = [p for p in same if p.listed_fit["light_current_a"] == row.I_L_ref]
        assert same, name
        fit = same[0].listed_fit
        assert fit["saturation_current_a"] == row.I_o_ref
        assert fit["series_resistance_ohm"] == row.R_s
        assert fit["shunt_resistance_ohm"] == row.R_sh_ref
        assert fit["modified_ideality_v"] == row.a_ref
        assert fit["adjust_pct"] == row.Adjust
        checked += 1
    assert checked >= 20


def slope_of_voc(fit: hm.DatasheetFit) -> float:
    """Relative change of the open-circuit voltage at 25 °C [1/K]."""
    step = 0.01
    volts = [
        fit.at(irradiance_w_m2=1000.0, cell_temperature_c=25.0 + sign * step).open_circuit_voltage_v
        for sign in (-1, 0, 1)
    ]
    return (volts[2] - volts[0]) / (2 * step) / volts[1]


def test_every_module_is_fitted_or_refused_with_a_reason(
    imported: tuple[hm.Catalog, hm.ImportReport], capsys: pytest.CaptureFixture[str]
) -> None:
    catalog, _ = imported
    modes: Counter[str] = Counter()
    reasons: list[str] = []
    shifts = []
    worst = dict.fromkeys(("i_sc", "v_oc", "p_mp", "v_mp", "i_mp", "beta"), 0.0)
    for number, panel in enumerate(catalog.panels.values()):
        if panel.listed_fit is None:
            continue
        try:
            fit = hm.fit_single_diode(panel)
        except hm.InvalidInput as error:
            reasons.append(str(error))
            continue
        modes[fit.fit_mode] += 1
        stc = fit.at(irradiance_w_m2=1000.0, cell_temperature_c=25.0)
        best = stc.maximum_power()
        errors = {
            "i_sc": stc.short_circuit_current_a / panel.i_sc - 1,
            "v_oc": stc.open_circuit_voltage_v / panel.v_oc - 1,
            "p_mp": best.power_w / (panel.v_mp * panel.i_mp) - 1,
        }
        if fit.fit_mode == "exact":
            # The top of the power curve is flat: its place is known to the root of its height.
            errors["v_mp"] = best.voltage_v / panel.v_mp - 1
            errors["i_mp"] = best.current_a / panel.i_mp - 1
            assert fit.vmp_shift == 0.0
        else:
            shifts.append(fit.vmp_shift)
            assert best.voltage_v == pytest.approx(panel.v_mp * (1 + fit.vmp_shift), rel=1e-6)
        if number % 10 == 0:
            errors["beta"] = slope_of_voc(fit) / (panel.beta_voc_pct_per_k / 100) - 1
        for name, error in errors.items():
            worst[name] = max(worst[name], abs(error))
    assert all(reason for reason in reasons)
    for name in ("i_sc", "v_oc", "p_mp", "v_mp", "i_mp"):
        assert worst[name] < 1e-6, (name, worst[name])
    assert worst["beta"] < 1e-5
    moved = np.abs(shifts)
    with capsys.disabled():
        print(f"\nfits: {dict(modes)}, refused {len(reasons)}; worst relative errors at STC:")
        print("  " + ", ".join(f"{name} {error:.1e}" for name, error in worst.items()))
        print(
            f"  Vmp moved in {len(shifts)}: median {100 * np.median(moved):.2f} %, "
            f"largest {100 * moved.max():.2f} %"
        )
    assert sum(modes.values()) > 0.99 * len(catalog.panels)
