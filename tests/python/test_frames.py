"""Data frames: rankings, margins and parts as frames, and frames into the catalog."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch.io import frames

pd = pytest.importorskip("pandas")

KINDS = tuple(hm.glossary())
EXPECTED = """
group panel panels element bank bank_ohm stc_match_ohm mean_power_w mean_power_low_w
mean_power_high_w power_w_at_1000_w_m2_45_c harvest_fraction_at_1000_w_m2_45_c cold_voltage_v
severity worst_margin smallest_headroom not_assessed price_to_buy currency
"""
ODD_TEXTS = {
    "script": "<script>alert(1)</script>",
    "hebrew": "לוח שמש 245",
    "emoji": "☀️👩‍🔧🔥",
    "long": "x" * 10_000,
    "quotes": "a,b;\"c\",'d'",
    "lines": "two\nlines\tand a tab",
    "missing words": "NA",
    "nan": "nan",
    "formula": "=1+1",
    "edges": " spaces ",
}


@pytest.fixture
def frame() -> Callable[..., Any]:
    """A frame of two panels, with further columns."""

    def make(more: dict[Any, Any] | None = None, /, **columns: Any) -> Any:
        plain = {
            "id": ["one", "two"],
            "label": ["One", "Two"],
            "v_oc": [37.5, 38.0],
            "i_sc": [8.66, 9.0],
            "source": ["the label", "the label"],
            "source_kind": ["nameplate", "nameplate"],
        }
        return pd.DataFrame(plain | columns | (more or {}))

    return make


def test_a_ranking_becomes_a_frame_with_units_in_its_names(demo_ranking: hm.Ranking) -> None:
    table = demo_ranking.to_frame()
    assert len(table) == len(demo_ranking)
    expected = EXPECTED.split()
    assert set(expected) <= set(table.columns)
    assert table.columns.is_unique
    first, candidate = table.iloc[0], demo_ranking[0]
    assert first["element"] == candidate.circuit.element.id
    assert first["mean_power_w"] == candidate.mean_power_w
    assert first["power_w_at_1000_w_m2_45_c"] == candidate.delivered[0].power_w
    assert first["worst_margin"] == candidate.worst.name
    assert first["price_to_buy"] == candidate.price_to_buy
    assert first["season_kwh"] == candidate.season.kwh
    assert first["month_12_kwh_per_day"] == candidate.season.kwh_per_day[11]
    endings = ("_w", "_ohm", "_v", "_c", "_kwh", "_kwh_low", "_kwh_high", "_kwh_per_day")
    units = {"headroom", "assessed", "buy", "currency", "margin", "severity", "fraction", "share"}
    units |= {"cm", "it"}  # of w_per_cm, like_it
    for name in table.select_dtypes("number").columns:
        assert name.endswith(endings) or name.split("_")[-1] in units


def test_what_was_rejected_becomes_a_frame_too(demo_ranking: hm.Ranking) -> None:
    frame = demo_ranking.to_frame(rejected=True)
    assert list(frame.columns) == list(demo_ranking.to_frame().columns)
    assert list(frame["element"]) == [
        candidate.circuit.element.id for candidate in demo_ranking.rejected
    ]
    assert len(frame) > 0


def test_an_empty_ranking_is_an_empty_frame(starter: hm.Catalog, demo: hm.Installation) -> None:
    assert len(hm.rank(starter, demo, top=0).to_frame()) == 0


def test_the_margins_of_a_candidate_become_a_frame(standing: hm.Candidate) -> None:
    for units in ("si", "us"):
        table = standing.margins_frame(units=units)
        assert len(table) == len(standing.margins)
        for row, margin in zip(table.to_dict("records"), standing.margins, strict=True):
            for name in ("severity", "name", "subject", "unit", "source"):
                assert row[name] == getattr(margin, name)
            assert row["sentence"] == margin.sentence(units=units)
            assert row["assumed"] == "; ".join(margin.assumed)
            assert row["headroom"] == margin.headroom or (
                margin.headroom is None and pd.isna(row["headroom"])
            )
    with pytest.raises(TypeError):
        standing.margins_frame("us")  # type: ignore
    with pytest.raises(hm.InvalidInput, match='"si" or "us"'):
        standing.margins_frame(units="metric")


@pytest.mark.parametrize("kind", KINDS)
def test_the_parts_of_each_kind_become_a_frame_and_come_back(
    kind: str, starter: hm.Catalog, own: hm.Catalog, view_of: Callable[..., Any]
) -> None:
    view = view_of(starter, kind)
    table = view.to_frame()
    assert table.index.name == "id"
    assert list(table.index) == view.keys()
    fields = [field["name"] for field in hm.glossary()[kind]]
    assert set(table.columns) < set(fields)
    report = own.import_frame(kind, table)
    assert report.refused == []
    assert report.added + report.replaced + report.unchanged == len(view)
    assert view_of(own, kind).values() == view.values()


def test_a_kind_without_parts_is_an_empty_frame(own: hm.Catalog) -> None:
    for name in list(own.covers):
        own.remove("cover", name)
    table = own.covers.to_frame()
    assert (len(table), table.index.name) == (0, "id")


def test_good_rows_are_added_in_one_entry(own: hm.Catalog, frame: Callable[..., Any]) -> None:
    report = own.import_frame("panel", frame(noct_c=["116.6 °F", None], v_mp=[30, None]))
    assert (report.added, report.replaced, report.refused) == (2, 0, [])
    assert own.panels["one"].noct_c == pytest.approx(47.0, rel=1e-11)
    assert (own.panels["one"].v_mp, own.panels["two"].v_mp) == (30.0, None)
    (entry,) = own.history()
    assert (entry.rows, "data frame" in entry.action) == (2, True)
    again = own.import_frame("panel", frame(noct_c=["116.6 °F", None], v_mp=[31, None]))
    assert (again.added, again.replaced, again.unchanged) == (0, 1, 1)
    assert own.import_frame("panel", frame()[:0]).added == 0


def test_an_index_named_id_is_a_column(own: hm.Catalog, frame: Callable[..., Any]) -> None:
    indexed = frame().set_index("id")
    before = indexed.copy()
    assert own.import_frame("panel", indexed).added == 2
    pd.testing.assert_frame_equal(indexed, before)


@pytest.mark.parametrize(
    "nothing", [None, float("nan"), np.nan, pd.NA, pd.NaT, ""], ids=lambda value: repr(value)
)
def test_missing_values_are_unknown_fields(
    nothing: Any, own: hm.Catalog, frame: Callable[..., Any]
) -> None:
    columns = {name: [nothing, nothing] for name in ("v_mp", "technology", "notes")}
    columns["cells_in_series"] = pd.array([60, None], dtype="Int64")
    own.import_frame("panel", frame(**columns))
    panel = own.panels["two"]
    assert (panel.v_mp, panel.technology, panel.notes) == (None, None, None)
    assert (own.panels["one"].cells_in_series, panel.cells_in_series) == (60, None)


def test_numbers_keep_every_digit(own: hm.Catalog, frame: Callable[..., Any]) -> None:
    volts = [100 / 3, 37.123456789012345]
    own.import_frame("panel", frame(v_oc=volts))
    assert [own.panels["one"].v_oc, own.panels["two"].v_oc] == volts


def test_lists_dicts_and_flags_are_taken_as_they_are(own: hm.Catalog) -> None:
    table = [{"t_c": 20, "factor": 1.0}, {"t_c": 700, "factor": 1.04}]
    alloys = pd.DataFrame(
        {
            "id": ["mine", "other"],
            "label": ["Mine", "Other"],
            "source": ["a book", "a book"],
            "source_kind": ["datasheet", "datasheet"],
            "resistance_factor": [table, None],
            "source_of": [{"limit_c": "a meter ☀️"}, None],
            "fixed_resistance": [True, None],
        }
    )
    own.import_frame("alloy", alloys)
    mine, other = own.alloys["mine"], own.alloys["other"]
    assert mine.resistance_factor == table
    assert mine.source_of == {"limit_c": "a meter ☀️"}
    assert mine.fixed_resistance is True
    assert (other.resistance_factor, other.source_of) == (None, None)
    assert other.fixed_resistance is None


@pytest.mark.parametrize("text", ODD_TEXTS.values(), ids=ODD_TEXTS.keys())
def test_odd_texts_pass_through(text: str, own: hm.Catalog, frame: Callable[..., Any]) -> None:
    own.import_frame("panel", frame(label=[text, "Two"], notes=["x", text]))
    assert (own.panels["one"].label, own.panels["two"].notes) == (text, text)
    table = own.panels.to_frame()
    assert (table.loc["one", "label"], table.loc["two", "notes"]) == (text, text)


def test_bad_rows_are_named_by_line_and_refuse_all(
    own: hm.Catalog, frame: Callable[..., Any]
) -> None:
    with pytest.raises(hm.CatalogError, match='line 3: panel "two": v_oc = -3 V') as refused:
        own.import_frame("panel", frame(v_oc=[37.5, -3]))
    assert "nothing was changed" in str(refused.value)
    assert "one" not in own.panels
    assert own.history() == []
    report = own.import_frame("panel", frame(v_oc=[37.5, -3]), keep_good=True)
    (row,) = report.refused
    assert (report.added, row.line, row.id) == (1, 3, "two")
    assert "one" in own.panels


def test_lines_are_rows_also_where_a_cell_has_line_ends(
    own: hm.Catalog, frame: Callable[..., Any]
) -> None:
    bad = frame(v_oc=[37.5, -3], notes=["two\nlines", None])
    # The header is line 1, so the second row is line 3.
    assert own.import_frame("panel", bad, keep_good=True).refused[0].line == 3


@pytest.mark.parametrize(
    ("columns", "words"),
    [
        ({"voc": [1, 2]}, 'column "voc".*did you mean "v_oc"'),
        ({5: [1, 2]}, 'column "5"'),
        ({"v_mp": [30, float("inf")]}, 'line 3: panel "two": v_mp'),
        ({"v_mp": ["30,1", None]}, "must be an unambiguous number"),
        ({"id": ["one", "one"]}, "unique in the file"),
        ({"id": ["one", None]}, r"id = \(missing\)"),
        ({"source_kind": ["nameplate", "hearsay"]}, 'source_kind = "hearsay"'),
        ({"listed_fit": [{"R_s": 1}, None]}, "listed_fit"),
        ({"cells_in_series": [60, 60.5]}, "a whole number"),
    ],
)
def test_frames_that_cannot_be_used_change_nothing(
    columns: dict[Any, Any], words: str, own: hm.Catalog, frame: Callable[..., Any]
) -> None:
    with pytest.raises((hm.InvalidInput, hm.CatalogError), match=words):
        own.import_frame("panel", frame(columns))
    assert own.history() == []


def test_a_column_given_twice_is_refused(own: hm.Catalog, frame: Callable[..., Any]) -> None:
    twice = pd.concat([frame(), pd.DataFrame({"v_oc": [20.0, 20.0]})], axis=1)
    with pytest.raises((hm.InvalidInput, hm.CatalogError), match="v_oc"):
        own.import_frame("panel", twice)


def test_the_kind_the_catalog_and_the_frame_must_be_right(
    own: hm.Catalog, starter: hm.Catalog, frame: Callable[..., Any]
) -> None:
    with pytest.raises(hm.InvalidInput, match='did you mean "panel"'):
        own.import_frame("panal", frame())
    with pytest.raises(hm.CatalogError, match="read-only"):
        starter.import_frame("panel", frame())
    with pytest.raises(TypeError):
        own.import_frame("panel", frame(), True)  # type: ignore
    for wrong in ([{"id": "one"}], {"id": ["one"]}, "id,label", None):
        with pytest.raises((TypeError, hm.InvalidInput), match="frame"):
            own.import_frame("panel", wrong)  # type: ignore


def test_the_bibliography_is_a_dict_of_dicts(starter: hm.Catalog) -> None:
    sources = hm.sources()
    assert sources["cec-module-list"]["title"]
    assert all(entry["title"] for entry in sources.values())
    assert starter.panels["silicon-60-cell-245"].source in sources


def test_the_heat_of_a_candidate_is_in_its_row(standing: hm.Candidate) -> None:
    row = frames.candidate_row(standing)
    assert row["sheath_c"] == standing.heat.sheath_c
    assert row["sheath_low_c"] < row["sheath_typical_c"] < row["sheath_high_c"] < row["sheath_c"]
    assert row["sheath_limit_c"] == standing.circuit.sheath.verdict_limit_c
    assert row["w_per_cm"] == standing.heat.w_per_cm
    watts = row["element_power_w"] * standing.circuit.heat.elements
    assert watts == pytest.approx(100 * row["w_per_cm"] * standing.circuit.heat.heated_length_m)
