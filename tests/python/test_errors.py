"""Bad input through Python: the class of the error, and that it names what, where and a remedy."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

NAN = float("nan")
INFINITY = float("inf")
TABLE = "heat_capacity_j_kgk"
MEDIUM = [{"t_c": 100, TABLE: 800}, {"t_c": 20, TABLE: 800}]

# Kind of part, what is changed, the field that is named, and words of the message.
BAD_PARTS: list[tuple[str, dict[str, Any], str, str]] = [
    ("panel", {"v_oc": "11 in"}, "v_oc", '"in" is a length; write it in V'),
    ("panel", {"v_oc": "37,5 V"}, "v_oc", "an unambiguous number"),
    ("panel", {"v_oc": "5,5"}, "v_oc", "use a point for decimals"),
    ("panel", {"v_oc": "37.5 furlongs"}, "v_oc", '"furlongs" is not'),
    ("panel", {"v_oc": "high"}, "v_oc", "a number, with or without a unit"),
    ("panel", {"v_oc": "0x25"}, "v_oc", "must be"),
    ("panel", {"v_oc": "nan V"}, "v_oc", "must be"),
    ("panel", {"v_oc": "1e999 V"}, "v_oc", "a finite number"),
    ("panel", {"v_oc": NAN}, "v_oc", "nan V must be > 0 V and <= 2000 V"),
    ("panel", {"v_oc": INFINITY}, "v_oc", "must be > 0 V and <= 2000 V"),
    ("panel", {"v_oc": 1e308}, "v_oc", "1e+308 V must be > 0 V and <= 2000 V"),
    ("panel", {"v_oc": 10**400}, "v_oc", "must be"),
    ("panel", {"v_oc": -37.5}, "v_oc", "-37.5 V must be > 0 V"),
    ("panel", {"v_oc": 0}, "v_oc", "0 V must be > 0 V"),
    ("panel", {"v_oc": True}, "v_oc", "True"),
    ("panel", {"v_oc": np.True_}, "v_oc", "True"),
    ("panel", {"v_oc": [37.5]}, "v_oc", "[37.5]"),
    ("panel", {"v_oc": 37.5j}, "v_oc", "37.5j"),
    ("panel", {"v_oc": b"37.5"}, "v_oc", "37.5"),
    ("panel", {"v_oc": np.array([37.5, 38])}, "v_oc", "array"),
    ("panel", {"v_oc": None}, "v_oc", "(missing) must be given"),
    ("panel", {"label": ""}, "label", "(missing) must be given"),
    ("panel", {"label": 245}, "label", "a text"),
    ("panel", {"label": "a\x00b"}, "label", "without control characters"),
    ("panel", {"label": "\x1b[31mred"}, "label", "without control characters"),
    ("panel", {"label": "half \ud83d of a character"}, "label", "text in UTF-8"),
    ("panel", {"notes": "x" * 20_001}, "notes", "at most 20000 bytes"),
    ("panel", {"id": "Barn Pair"}, "id", "lowercase letters"),
    ("panel", {"id": "x" * 81}, "id", "1 to 80"),
    ("panel", {"technology": "monoSi"}, "technology", 'did you mean "mono-Si"'),
    ("panel", {"source_kind": "hearsay"}, "source_kind", "nameplate"),
    ("panel", {"v_mp": 38}, "v_mp", "below v_oc = 37.5 V; check whether the two are exchanged"),
    ("panel", {"i_mp": 9}, "i_mp", "below i_sc = 8.66 A"),
    ("panel", {"v_mp": 12}, "v_mp", "above half of v_oc"),
    ("panel", {"v_mp": 19, "i_mp": 4}, "v_mp/v_oc + i_mp/i_sc", "above 1"),
    ("panel", {"alpha_isc_pct_per_k": -0.32}, "alpha_isc_pct_per_k", "beta of v_oc (negative)"),
    (
        "panel",
        {"beta_voc_pct_per_k": 0.05},
        "beta_voc_pct_per_k",
        "alpha of i_sc (small, positive)",
    ),
    ("panel", {"beta_voc_pct_per_k": -120}, "beta_voc_pct_per_k", '"-120 mV/K"'),
    ("panel", {"cells_in_series": 60.5}, "cells_in_series", "a whole number"),
    ("panel", {"cells_in_series": False}, "cells_in_series", "False"),
    ("panel", {"price_low": 50, "price_high": 20}, "price_low", "price_high"),
    ("panel", {"price_low": -1}, "price_low", ">= 0"),
    ("panel", {"voc": 38}, "voc", 'did you mean "v_oc"'),
    ("panel", {"beta": -0.3}, "beta", "choices: beta_voc_pct_per_k"),
    ("panel", {"source_of": ["label"]}, "source_of", "a dict of texts"),
    ("panel", {"listed_fit": {"R_s": 0.3}}, "listed_fit.R_s", "a known key"),
    ("element", {"rated_w": "57 ohm"}, "rated_w", "is a resistance; write it in W"),
    ("element", {"rated_w": None}, "measured_resistance_ohm", "or rated_v and rated_w"),
    ("element", {"resistance_ohm": 100}, "resistance_ohm", "within 25%"),
    ("element", {"sheath_diameter": 8}, "sheath_diameter", "choices: sheath_diameter_mm"),
    ("wire", {"area_mm2": "14.5 AWG"}, "area_mm2", "4/0 to 40 AWG"),
    ("wire", {"sunlight_resistant": 1}, "sunlight_resistant", "True or False"),
    ("wire", {"conductor": "nickel"}, "plating", "bare for nickel"),
    ("wire", {"ampacity_a": 20}, "ampacity_a", "given together with"),
    ("control", {"sense_low_c": 90, "sense_high_c": 60}, "sense_low_c", "exchange the two"),
    ("control", {"dc_ratings": [{"v_dc": 600}]}, "dc_ratings.a_dc", "given"),
    ("control", {"dc_ratings": {"v_dc": 600}}, "dc_ratings", "a list of dicts"),
    ("medium", {TABLE: MEDIUM}, TABLE, "sort the table by t_c"),
    ("medium", {"k20_low_w_mk": 0.5}, "k20_w_mk", "between its low value"),
    ("sheath", {"hard_limit_c": 400}, "verdict_limit_c", "between its low value"),
    ("cover", {"u_w_m2k": "0 W/m2K"}, "u_w_m2k", ">= 0.05 W/m2K"),
]


@pytest.mark.parametrize(
    ("kind", "changes", "field", "words"),
    BAD_PARTS,
    ids=[f"{row[0]}-{row[2]}-{n}" for n, row in enumerate(BAD_PARTS)],
)
def test_a_part_that_cannot_be_is_refused_by_field(
    kind: str, changes: dict[str, Any], field: str, words: str, minimal: Callable[..., Any]
) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        minimal(kind, **changes)
    error = refused.value
    assert isinstance(error, ValueError)
    assert error.field == field
    assert error.part.startswith(kind)
    assert error.allowed
    assert error.remedy
    assert words in str(error)
    for piece in (error.part, error.field, error.value, error.allowed, error.remedy):
        assert piece in str(error)
    assert len(str(error)) < 600


def test_the_same_is_refused_from_json_and_by_replace(minimal: Callable[..., Any]) -> None:
    panel = minimal("panel")
    for change, field in ((b'"v_oc": true', "v_oc"), (b'"voc": 38', "voc")):
        text = panel.to_json().replace('"v_oc": 37.5', change.decode())
        with pytest.raises(hm.InvalidInput) as refused:
            hm.Panel.from_json(text)
        assert refused.value.field == field
        assert refused.value.part == 'panel "my-panel"'
    with pytest.raises(hm.InvalidInput) as refused:
        panel.replace(voc=38)
    assert (refused.value.field, "v_oc" in refused.value.remedy) == ("voc", True)


@pytest.mark.parametrize(
    "text", ["", "{", "[]", "5", '{"id": "a", "id": "b"}', '{"v_oc": NaN}', "[" * 100, "\x00"]
)
def test_json_that_cannot_be_read_says_so(text: str) -> None:
    for read in (hm.Panel.from_json, hm.Installation.from_json_text):
        with pytest.raises(hm.InvalidInput) as refused:
            read(text)
        assert str(refused.value)
        assert "Traceback" not in str(refused.value)


def test_positional_arguments_are_no_part() -> None:
    with pytest.raises(TypeError):
        hm.Panel("my-panel")  # type: ignore
    with pytest.raises(hm.InvalidInput, match=r"id = \(missing\) must be given"):
        hm.Panel()  # type: ignore


def diode(**changes: Any) -> hm.SingleDiode:
    """A diode of 60 cells, some of its parameters changed."""
    plain = {
        "light_current_a": 8.67,
        "saturation_current_a": 3e-10,
        "series_resistance_ohm": 0.3,
        "shunt_resistance_ohm": 250,
        "modified_ideality_v": 1.58,
    }
    return hm.SingleDiode(**plain | changes)


# What is called, and the name that the message has to hold.
BAD_CALLS: list[tuple[str, Callable[[hm.Catalog, hm.Installation], object]]] = [
    ("light_current_a", lambda c, i: diode(light_current_a=0)),
    ("saturation_current_a", lambda c, i: diode(saturation_current_a=-1e-9)),
    ("series_resistance_ohm", lambda c, i: diode(series_resistance_ohm=-0.1)),
    ("shunt_resistance_ohm", lambda c, i: diode(shunt_resistance_ohm=0)),
    ("modified_ideality_v", lambda c, i: diode(modified_ideality_v=NAN)),
    ("band_gap_ev", lambda c, i: diode(band_gap_ev=0)),
    ("alpha_isc_a_per_k", lambda c, i: diode(alpha_isc_a_per_k=INFINITY)),
    ("band_gap_per_k", lambda c, i: diode(band_gap_per_k=NAN)),
    ("irradiance_w_m2", lambda c, i: diode().at(irradiance_w_m2=NAN, cell_temperature_c=25)),
    ("cell_temperature_c", lambda c, i: diode().at(irradiance_w_m2=1, cell_temperature_c=-400)),
    ("current_factor", lambda c, i: diode().scaled(current_factor=-1)),
    ("voltage_factor", lambda c, i: diode().scaled(voltage_factor=NAN)),
    ("series", lambda c, i: hm.Array.uniform(diode(), series=0)),
    ("parallel", lambda c, i: hm.Array.uniform(c.panels["cdte-100"], parallel=-2)),
    ("record_low_c", lambda c, i: hm.cold_voltage(c.panels["cdte-100"], record_low_c=NAN)),
    ("record_low_c", lambda c, i: hm.cold_voltage(c.panels["cdte-100"], record_low_c=-500)),
    ("current_a", lambda c, i: warmed(c, NAN, 25)),
    ("air_c", lambda c, i: hm.Surroundings.open_air(NAN)),
    ("air_c", lambda c, i: hm.Surroundings.conduit(-500)),
    ("irradiance_w_m2", lambda c, i: hm.Surroundings.sunlit(25, irradiance_w_m2=-5)),
    ("coil_temperature_c", lambda c, i: ohms_at(c, NAN)),
    ("coil_temperature_c", lambda c, i: ohms_at(c, -500)),
    ("voltage_v", lambda c, i: isolator(c).breaking_current_a(voltage_v=NAN)),
    ("max_bank", lambda c, i: hm.rank(c, i, max_bank=0)),
    ("max_bank", lambda c, i: hm.rank(c, i, max_bank=1000)),
    ("conditions", lambda c, i: hm.rank(c, i, conditions=[])),
    ("conditions", lambda c, i: hm.rank(c, i, conditions=[1000, 45])),
    ("conditions", lambda c, i: hm.rank(c, i, conditions=[(1000, 45, 1)])),
    ("irradiance_w_m2", lambda c, i: hm.rank(c, i, conditions=[(NAN, 45)])),
    ("irradiance_w_m2", lambda c, i: hm.rank(c, i, conditions=[(0, 45)])),
    ("cell_temperature_c", lambda c, i: hm.rank(c, i, conditions=[(1000, 450)])),
    ("coil_temperature_c", lambda c, i: hm.rank(c, i, coil_temperature_c=NAN)),
    ("conditions", lambda c, i: hm.assess(c, i, conditions=[])),
    ("irradiance_w_m2", lambda c, i: hm.assess(c, i, conditions=[(NAN, 45)])),
    ("irradiance_w_m2", lambda c, i: hm.assess(c, i, conditions=[(-800, 45)])),
    ("cell_temperature_c", lambda c, i: hm.assess(c, i, conditions=[(1000, -500)])),
    ("coil_temperature_c", lambda c, i: hm.assess(c, i, coil_temperature_c=NAN)),
    ("coil_temperature_c", lambda c, i: hm.assess(c, i, coil_temperature_c=1e9)),
    ("units", lambda c, i: hm.format_quantity(1, "V", units="imperial")),
]


def warmed(catalog: hm.Catalog, current_a: float, air_c: float) -> Any:
    wire, around = catalog.wires["silicone-14-awg"], hm.Surroundings.open_air(air_c)
    return hm.conductor_temperature(wire, current_a=current_a, surroundings=around)


def ohms_at(catalog: hm.Catalog, coil_c: float) -> hm.ElementResistance:
    return hm.element_resistance(catalog.elements["tubular-1000-120"], coil_temperature_c=coil_c)


def isolator(catalog: hm.Catalog) -> hm.Control:
    return catalog.controls["pv-isolator-2-pole"]


@pytest.mark.parametrize(
    ("name", "call"), BAD_CALLS, ids=[f"{row[0]}-{n}" for n, row in enumerate(BAD_CALLS)]
)
def test_a_call_with_what_cannot_be_names_the_argument(
    name: str,
    call: Callable[[hm.Catalog, hm.Installation], object],
    starter: hm.Catalog,
    demo: hm.Installation,
) -> None:
    with pytest.raises(hm.InvalidInput) as refused:
        call(starter, demo)
    assert name in refused.value.field
    assert refused.value.allowed
    assert refused.value.remedy


@pytest.mark.parametrize(
    "call",
    [
        lambda c, i: hm.rank(i, c),
        lambda c, i: hm.rank(c, i.to_dict()),
        lambda c, i: hm.rank(c, i, threads=-1),
        lambda c, i: hm.rank(c, i, vector_width="wide"),
        lambda c, i: hm.EnergyCurve("cdte-100", hm.Weather.clear_days(i.site)),
        lambda c, i: hm.EnergyCurve(c.panels["cdte-100"], 5),
        lambda c, i: hm.rank(c, i, 5),
        lambda c, i: hm.rank(c, i, max_bank="4"),
        lambda c, i: hm.rank(c, i, progress=5),
        lambda c, i: hm.rank(c, i, top=-1),
        lambda c, i: hm.assess(c),
        lambda c, i: hm.fit_single_diode("cdte-100"),
        lambda c, i: hm.Array.uniform("cdte-100"),
        lambda c, i: hm.Array.uniform(diode(), series=1.5),
        lambda c, i: hm.element_resistance(c.panels["cdte-100"]),
        lambda c, i: diode().at(irradiance_w_m2="bright", cell_temperature_c=25),
        lambda c, i: hm.Panel.from_json({}),
        lambda c, i: hm.Installation.from_dict([]),
    ],
)
def test_wrong_types_are_refused(
    call: Callable[..., object], starter: hm.Catalog, demo: hm.Installation
) -> None:
    with pytest.raises((TypeError, hm.InvalidInput)):
        call(starter, demo)


@pytest.mark.parametrize(
    ("change", "error", "words"),
    [
        (lambda d: d["panels"][0].update(panel="cdte-10"), hm.NotFound, 'did you mean "cdte-100"'),
        (lambda d: d["panels"][1].update(group="barn pair"), hm.InvalidInput, "one group only"),
        (lambda d: d.update(panels=[]), hm.InvalidInput, "panels = (none)"),
        (lambda d: d.update(elements=[]), hm.InvalidInput, "elements = (none)"),
        (lambda d: d["runs"][2].update(wire="silicone-14"), hm.NotFound, "silicone-14-awg"),
        (lambda d: d["devices"][0].update(run="hom run"), hm.InvalidInput, "home run"),
        (lambda d: d["devices"][0].update(part="isolator"), hm.NotFound, "control"),
        (lambda d: d["store"].update(medium="dry-snad"), hm.NotFound, 'did you mean "dry-sand"'),
        (lambda d: d["circuit"].update(group="barn"), hm.NotFound, "barn pair"),
        (lambda d: d["circuit"].update(panels="2x1"), hm.InvalidInput, "such as 2S1P"),
        (lambda d: d["circuit"].update(panels="3S1P"), hm.InvalidInput, "at most the 2"),
        (lambda d: d["circuit"].update(bank="0S1P"), hm.InvalidInput, "such as 2S1P"),
        (lambda d: d["circuit"].update(element="rod"), hm.NotFound, "element"),
        (lambda d: d.pop("circuit"), hm.InvalidInput, "circuit = (missing)"),
    ],
)
def test_an_installation_that_does_not_fit_the_catalog_is_refused(
    change: Callable[[dict[str, Any]], Any],
    error: type[hm.Error],
    words: str,
    starter: hm.Catalog,
    changed_demo: Callable[..., hm.Installation],
) -> None:
    installation = changed_demo(change)

    def judge() -> None:
        hm.rank(starter, installation, top=1)
        hm.assess(starter, installation)

    with pytest.raises(error) as refused:
        judge()
    assert words in str(refused.value)


def test_errors_are_errors_of_python_too() -> None:
    kinds = {hm.InvalidInput: ValueError, hm.NotFound: KeyError, hm.FileError: OSError}
    for ours, theirs in kinds.items():
        assert issubclass(ours, hm.Error)
        assert issubclass(ours, theirs)
    assert issubclass(hm.CatalogError, hm.Error)
    # A KeyError shows its message in quotes; ours does not.
    assert str(hm.NotFound("no panel")) == "no panel"
