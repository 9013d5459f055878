"""Parts: how they are made, what they refuse, and that they come back from JSON as they were."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from decimal import Decimal
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

KINDS = tuple(hm.glossary())
# A label of 10,000 characters, right to left, beyond the basic plane, and what a page would run.
LONG = "panel " * 1666 + "last"
ODD_LABELS = {
    "script": "<script>alert(1)</script>",
    "entities": "a & b \"c\" 'd' </td>",
    "hebrew": "לוח שמש 245",
    "arabic": "لوح شمسي",
    "override": "\u202epanel\u202c",
    "emoji": "☀️👩‍🔧🔥",
    "combining": "e\u0301" * 20,
    "lines": "two\nlines\tand a tab",
    "formula": "=1+1",
    "commas": "a,b;\"c\",'d'",
    "long": LONG,
}


@pytest.mark.parametrize("kind", KINDS)
def test_the_fewest_fields_make_a_part(kind: str, minimal: Callable[..., Any]) -> None:
    part = minimal(kind)
    assert part.kind == type(part).kind == kind
    assert (part.id, part.label) == (f"my-{kind}", f"My {kind}")
    assert (part.source, part.source_kind, part.notes) == ("the label", "nameplate", None)
    assert repr(part) == f"{kind.capitalize()}(id='my-{kind}', label='My {kind}')"


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_of_the_glossary_is_a_property(kind: str, minimal: Callable[..., Any]) -> None:
    part = minimal(kind)
    for field in hm.glossary()[kind]:
        value = getattr(part, field["name"])
        assert (value is None) == (field["name"] not in part.to_dict())
        assert not field["required"] or value is not None
        assert field["meaning"]
        with pytest.raises(AttributeError):
            setattr(part, field["name"], value)


@pytest.mark.parametrize("kind", KINDS)
def test_every_starter_part_comes_back_as_it_was(
    kind: str, starter: hm.Catalog, view_of: Callable[..., Any], class_of: Callable[[str], Any]
) -> None:
    cls = class_of(kind)
    for part in view_of(starter, kind).values():
        assert cls.from_json(part.to_json()) == part
        assert cls(**part.to_dict()) == part
        assert json.loads(part.to_json()) == part.to_dict()
        assert part.replace() == part
        assert part.id in repr(part)
        assert part._repr_html_().count("<tr>") == 1 + len(part.to_dict())


# 11 in = 279.4 mm; AWG by ASTM B258: pi/4 (0.127 mm x 92^((36 - n)/39))^2; 392 °F = 200 °C;
# -120 mV/K of 37.5 V = -0.32 %/K; 4.33 mA/K of 8.66 A = 0.05 %/K; 116.6 °F = 47 °C.
@pytest.mark.parametrize(
    ("kind", "field", "text", "value"),
    [
        ("element", "heated_length_mm", "11 in", 279.4),
        ("element", "heated_length_mm", '11 "', 279.4),
        ("element", "heated_length_mm", "11 1/2 in", None),
        ("element", "rated_w", "1.5 kW", 1500.0),
        ("element", "rated_v", "0.24 kV", 240.0),
        ("element", "resistance_ohm", "57.6 Ω", 57.6),
        ("wire", "area_mm2", "14 AWG", math.pi / 4 * (0.127 * 92 ** (22 / 39)) ** 2),
        ("wire", "area_mm2", "2/0 AWG", math.pi / 4 * (0.127 * 92 ** (37 / 39)) ** 2),
        ("wire", "area_mm2", "2.5 mm²", 2.5),
        ("wire", "area_mm2", "2.5", 2.5),
        ("insulation", "limit_c", "392 °F", 200.0),
        ("insulation", "limit_c", "473.15 K", 200.0),
        ("panel", "noct_c", "116.6 °F", 47.0),
        ("panel", "beta_voc_pct_per_k", "-120 mV/K", -0.32),
        ("panel", "beta_voc_pct_per_k", "\u2212120 mV/°C", -0.32),
        ("panel", "alpha_isc_pct_per_k", "4.33 mA/K", 0.05),
        ("panel", "v_oc", " 37.5 V ", 37.5),
        ("panel", "v_oc", "3.75e1 V", 37.5),
        ("panel", "cells_in_series", "60", 60),
    ],
)
def test_a_number_may_be_text_with_a_unit(
    kind: str, field: str, text: str, value: float | None, minimal: Callable[..., Any]
) -> None:
    if value is None:
        with pytest.raises(hm.InvalidInput, match=field):
            minimal(kind, **{field: text})
        return
    assert getattr(minimal(kind, **{field: text}), field) == pytest.approx(value, rel=1e-11)


@pytest.mark.parametrize(
    "number",
    [40, 40.0, np.float64(40), np.float32(40), np.int64(40), np.uint8(40), Decimal(40), "40 V"],
    ids=lambda number: type(number).__name__,
)
def test_numbers_of_every_kind_are_numbers(number: Any, minimal: Callable[..., Any]) -> None:
    panel = minimal("panel", v_oc=number)
    assert type(panel.v_oc) is float
    assert panel.v_oc == 40.0


def test_counts_are_whole_and_flags_are_flags(minimal: Callable[..., Any]) -> None:
    panel = minimal("panel", cells_in_series=np.int64(60), bypass_diodes=3.0)
    assert (panel.cells_in_series, panel.bypass_diodes) == (60, 3)
    assert type(panel.cells_in_series) is int
    assert minimal("wire", sunlight_resistant=True).sunlight_resistant is True
    assert minimal("wire", sunlight_resistant=False).sunlight_resistant is False
    assert minimal("wire").sunlight_resistant is None


def test_replace_gives_a_changed_copy_and_none_makes_a_field_unknown(
    minimal: Callable[..., Any],
) -> None:
    panel = minimal("panel", v_mp=30.1, i_mp=8.1, notes="on the barn")
    changed = panel.replace(v_mp="31 V", notes=None)
    assert (changed.v_mp, changed.notes, changed.i_mp) == (31.0, None, 8.1)
    assert (panel.v_mp, panel.notes) == (30.1, "on the barn")
    assert panel.replace(v_mp=None).v_mp is None
    assert panel.replace(id="other").id == "other"
    with pytest.raises(hm.InvalidInput, match=r'"my-panel": v_oc = \(missing\) must be given'):
        panel.replace(v_oc=None)
    with pytest.raises(hm.InvalidInput, match="v_mp = 38 V must be below v_oc"):
        panel.replace(v_mp=38)


def test_parts_are_equal_by_content(minimal: Callable[..., Any]) -> None:
    assert minimal("panel") == minimal("panel")
    assert minimal("panel") != minimal("panel", v_oc=37.6)
    assert minimal("panel") != minimal("sheath")
    assert minimal("panel") != "my-panel"
    assert minimal("panel") is not None


def test_lists_and_dicts_are_tables(minimal: Callable[..., Any]) -> None:
    table = [{"t_c": 20, "factor": 1}, {"t_c": "1292 °F", "factor": 1.04}]
    alloy = minimal("alloy", resistance_factor=table, source_of={"resistance_factor": "a book"})
    # 1292 °F = 700 °C.
    assert alloy.resistance_factor == [{"t_c": 20, "factor": 1}, {"t_c": 700, "factor": 1.04}]
    assert alloy.source_of == {"resistance_factor": "a book"}
    assert minimal("alloy", resistance_factor=tuple(table)) == minimal(
        "alloy", resistance_factor=table
    )
    assert minimal("alloy", resistance_factor=[], source_of={}) == minimal("alloy")
    ratings = [{"v_dc": 600, "a_dc": 16, "poles": 2}]
    assert minimal("control", dc_ratings=ratings).dc_ratings[0]["poles"] == 2


@pytest.mark.parametrize("label", ODD_LABELS.values(), ids=ODD_LABELS.keys())
def test_odd_labels_pass_through_and_never_become_markup(
    label: str, own: hm.Catalog, minimal: Callable[..., Any], command: Callable[..., Any]
) -> None:
    panel = minimal("panel", label=label)
    assert panel.label == label
    assert hm.Panel.from_json(panel.to_json()).label == label
    own.add(panel)
    assert hm.Catalog.open(own.path).panels["my-panel"].label == label
    page = panel._repr_html_()
    assert "<script" not in page
    assert page.count("<td ") == 3 * len(panel.to_dict())
    shown = command("catalog", "show", "panel", "my-panel", "--catalog", own.path)
    assert (shown.code, shown.err) == (0, "")
    assert max(len(line) for line in shown.out.splitlines()) <= 80
    data = command("catalog", "show", "panel", "my-panel", "--json", "--catalog", own.path)
    assert json.loads(data.out)["label"] == label


def test_the_html_of_a_part_shows_values_with_their_meaning(minimal: Callable[..., Any]) -> None:
    page = minimal("panel")._repr_html_()
    assert page.startswith("<table>")
    for piece in ("v_oc", "37.5 V", "open-circuit voltage at STC", "panel my-panel"):
        assert piece in page


def test_an_element_computes_its_watt_density(minimal: Callable[..., Any]) -> None:
    assert minimal("element").watt_density_w_cm2 is None
    element = minimal("element", sheath_diameter_mm=8, heated_length_mm=450)
    assert element.watt_density_w_cm2 == pytest.approx(1000 / (math.pi * 0.8 * 45), rel=1e-12)


# 1/58 ohm mm2/m at 20 °C and 0.00393 per kelvin, IEC 60028; ceilings of the platings as in the
# design: bare and tin 150 °C, silver 200, nickel 260, nickel-clad copper 450.
def test_a_wire_computes_its_resistance_and_names_the_ceiling_of_its_metal(
    minimal: Callable[..., Any],
) -> None:
    wire = minimal("wire", area_mm2=2.5)
    assert wire.resistance_ohm_per_m() == pytest.approx(1 / 58 / 2.5, rel=1e-12)
    hot = wire.resistance_ohm_per_m(temperature_c=100)
    assert hot == pytest.approx(1 / 58 / 2.5 * (1 + 0.00393 * 80), rel=1e-12)
    ceilings = {"bare": 150.0, "tin": 150.0, "silver": 200.0, "nickel": 260.0}
    for plating, ceiling in ceilings.items():
        assert minimal("wire", plating=plating).conductor_limit_c == ceiling
    clad = minimal("wire", conductor="nickel-clad copper", plating="bare")
    assert clad.conductor_limit_c == 450.0


def test_a_control_breaks_what_a_printed_pair_allows(minimal: Callable[..., Any]) -> None:
    pairs = [{"v_dc": 300, "a_dc": 25, "poles": 1}, {"v_dc": 600, "a_dc": 16, "poles": 2}]
    control = minimal("control", dc_ratings=pairs)
    assert control.breaking_current_a(voltage_v=90) == 25.0
    assert control.breaking_current_a(voltage_v=90, poles=2) == 25.0
    assert control.breaking_current_a(voltage_v=400, poles=2) == 16.0
    assert control.breaking_current_a(voltage_v=400) is None
    assert minimal("control").breaking_current_a(voltage_v=12) is None


def test_a_listed_diode_has_the_listed_values(minimal: Callable[..., Any]) -> None:
    listed = {
        "light_current_a": 8.67,
        "saturation_current_a": 3e-10,
        "series_resistance_ohm": 0.3,
        "shunt_resistance_ohm": 250,
        "modified_ideality_v": 1.58,
        "adjust_pct": 5.5,
        "band_gap_ev": 1.121,
        "band_gap_per_k": -0.0002677,
    }
    diode = minimal("panel", listed_fit=listed, alpha_isc_pct_per_k=0.068).listed_diode()
    assert isinstance(diode, hm.SingleDiode)
    assert (diode.light_current_a, diode.series_resistance_ohm) == (8.67, 0.3)
    assert diode.shunt_conductance_s == pytest.approx(1 / 250, rel=1e-15)
    with pytest.raises(hm.InvalidInput, match=r"listed_fit = \(missing\)"):
        minimal("panel").listed_diode()
