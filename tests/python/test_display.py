"""Rankings and candidates as text of 80 columns."""

from __future__ import annotations

from collections.abc import Callable

import heatmatch as hm
import pytest
from heatmatch._library import shown_margin_name
from heatmatch.text import results as display


def unwrapped(text: str) -> str:
    """The text without its spaces and line ends: lines may break at hyphens too."""
    return "".join(text.split())


def widest(text: str) -> int:
    return max(len(line) for line in text.splitlines())


@pytest.mark.parametrize("units", ["si", "us"])
def test_text_keeps_within_80_columns(
    units: str, demo_ranking: hm.Ranking, standing: hm.Candidate
) -> None:
    assert widest(str(demo_ranking)) <= 80
    assert widest(display.ranking_text(demo_ranking, 200)) <= 80
    for candidate in [standing, *demo_ranking.candidates[:30], *demo_ranking.rejected[:30]]:
        assert widest(display.candidate_text(candidate, units=units)) <= 80
        assert widest(display.margins_text(candidate, units=units, everything=True)) <= 80


def test_a_ranking_shows_its_first_ten_and_what_became_of_the_rest(
    demo_ranking: hm.Ranking,
) -> None:
    text = str(demo_ranking)
    assert repr(demo_ranking).startswith(f"<Ranking: {len(demo_ranking)} candidates, ")
    assert "\n" not in repr(demo_ranking)
    assert f"{demo_ranking.evaluated} pairings evaluated" in text
    for reason, count in demo_ranking.reasons.items():
        assert unwrapped(f"{shown_margin_name(reason)} {count}") in unwrapped(text)
    rows = display.ranking_table(demo_ranking.candidates[:10]).splitlines()[1:]
    # The recommended one is marked in the text.
    plain = [
        line.replace(">", "", 1) if line.startswith(">") else line for line in text.splitlines()
    ]
    unmarked = {" ".join(line.split()) for line in plain}
    assert all(" ".join(row.split()) in unmarked for row in rows)
    assert [int(row[:2]) for row in rows] == list(range(1, 11))
    for row, candidate in zip(rows, demo_ranking, strict=False):
        assert f" {candidate.season.mean_kwh_per_day:.2f} " in row
        assert candidate.circuit.panels in row
        assert candidate.circuit.bank in row
    for remark in demo_ranking.remarks:
        assert unwrapped(remark) in unwrapped(text)


def test_an_empty_ranking_says_so(starter: hm.Catalog, demo: hm.Installation) -> None:
    assert "No pairing was requested: top is 0." in str(hm.rank(starter, demo, top=0))
    plain = demo.to_dict()
    plain["goals"]["budget"] = 0.5
    poor = hm.rank(starter, hm.Installation.from_dict(plain))
    assert "No pairing fits: each has a danger or is over the budget" in str(poor)


def test_a_candidate_shows_power_margins_and_assumptions(standing: hm.Candidate) -> None:
    text = str(standing)
    flat = unwrapped(text)
    assert unwrapped(standing.circuit.title) in flat
    for at in standing.delivered:
        assert f"{at.irradiance_w_m2:.0f}" in text
        assert f"{at.power_low_w:.0f}-{at.power_high_w:.0f}" in text
    for margin in standing.margins:
        if margin.severity in ("danger", "warning", "caution"):
            name = shown_margin_name(margin.name)
            line = f"{margin.severity}: {name}, {margin.subject}: {margin.sentence()}"
            assert unwrapped(line) in flat
        if margin.severity == "not assessed":
            assert unwrapped(shown_margin_name(margin.name)) in flat
    for assumption in standing.assumed:
        assert unwrapped(assumption) in flat
    everything = unwrapped(display.margins_text(standing, everything=True))
    for margin in standing.margins:
        assert unwrapped(margin.sentence()) in everything
    assert repr(standing).startswith(f"<Candidate {standing.circuit.title}: ")


def test_severe_margins_come_first(standing: hm.Candidate) -> None:
    order = [line.split(":")[0] for line in display.margins_text(standing).splitlines()]
    order = [word for word in order if word in display.SEVERITIES]
    assert order == sorted(order, key=display.SEVERITIES.index)


def test_the_units_of_a_candidate_are_as_asked(demo_ranking: hm.Ranking) -> None:
    hot = next(c for c in demo_ranking.rejected if c.worst.unit == "°C")
    si, us = (display.margins_text(hot, units=units) for units in ("si", "us"))
    assert hm.format_quantity(hot.worst.value, "°C", digits=3) in si
    assert hm.format_quantity(hot.worst.value, "°C", units="us", digits=3) in us
    assert "°F" in us
    assert "°F" not in si
    with pytest.raises(hm.InvalidInput, match='"si" or "us"'):
        display.candidate_text(hot, units="metric")


# Four panels of 580 W give more than 1000 W: four digits and a band of two numbers.
def test_no_number_of_the_table_is_cut(ranked: Callable[..., hm.Ranking]) -> None:
    elements = [{"element": "oven-bake-2000-240", "count": 2}]
    large = ranked("roof", "half-cut-144-cell-580", 8, elements)
    table = display.ranking_table(large.candidates)
    for candidate, row in zip(large, table.splitlines()[1:], strict=True):
        band = f"{candidate.mean_power_low_w:.0f}-{candidate.mean_power_high_w:.0f}"
        assert band in row
        assert f" {candidate.mean_power_w:.0f} " in row


def test_rows_of_different_elements_differ(ranked: Callable[..., hm.Ranking]) -> None:
    ranking = ranked("g", "cdte-100", 1, [{"any": {}, "count": 1}])
    ids = [candidate.circuit.element.id for candidate in ranking]
    assert len(set(ids)) == len(ids)
    rows = display.ranking_table(ranking.candidates).splitlines()[1:]
    names = [row[22:49].split()[0] for row in rows]
    assert len(set(names)) == len(names)


def test_odd_group_names_do_no_harm(odd_group: str, ranked: Callable[..., hm.Ranking]) -> None:
    ranking = ranked(odd_group, "cdte-100", 2, [{"element": "tubular-1000-120", "count": 1}])
    assert ranking[0].circuit.owned.group == odd_group
    table = display.ranking_table(ranking.candidates)
    assert len(table.splitlines()) == 1 + len(ranking)
    assert widest(str(ranking)) <= 80
    assert widest(str(ranking[0])) <= 80


# 200 °C = 392 °F; 25.4 mm = 1 in; 1 m = 3.28084 ft; 14 AWG = 2.08 mm2 (ASTM B258).
@pytest.mark.parametrize(
    ("value", "unit", "si", "us"),
    [
        (200, "°C", "200 °C", "392 °F"),
        (25.4, "mm", "25.4 mm", "1 in"),
        (1, "m", "1 m", "3.281 ft"),
        (2.0809, "mm2", "2.081 mm2", "14 AWG"),
        (12.3456, "A", "12.35 A", "12.35 A"),
        (3, "%", "3%", "3%"),
        (0.5, "", "0.5", "0.5"),
        (7, "furlongs", "7 furlongs", "7 furlongs"),
    ],
)
def test_quantities_are_written_in_either_unit_set(
    value: float, unit: str, si: str, us: str
) -> None:
    assert hm.format_quantity(value, unit) == si
    assert hm.format_quantity(value, unit, units="us") == us


def test_digits_of_a_quantity_can_be_chosen() -> None:
    assert hm.format_quantity(12.3456, "A", digits=2) == "12 A"
    assert hm.format_quantity(value=12.3456, unit="A", digits=6) == "12.3456 A"
    with pytest.raises(hm.InvalidInput, match="units"):
        hm.format_quantity(1, "A", units="imperial")


def test_texts_are_clipped_and_wrapped() -> None:
    assert display.clip("barn pair", 20) == "barn pair"
    assert display.clip("barn pair", 5) == "barn…"
    assert widest(display.wrap("word " * 100)) <= 80
    assert widest(display.wrap("x" * 1000)) <= 80
    table = display.table(("a", "b"), [("1", "2"), ("3", "4")], (3, -3))
    assert table.splitlines() == ["a     b", "1     2", "3     4"]


def test_a_row_shows_the_sheath_beside_its_limit_in_the_units_asked_for(
    demo_ranking: hm.Ranking,
) -> None:
    hot = [c for c in demo_ranking.rejected if c.heat is not None and c.circuit.sheath is not None]
    shown = [*demo_ranking.candidates[:40], *hot[:20]]
    for units in ("si", "us"):
        table = display.ranking_table(shown, units=units)
        assert widest(table) <= 80
        header, *rows = table.splitlines()
        assert header.split()[-2:] == ["USD", "sheath"]
        for row, candidate in zip(rows, shown, strict=True):
            limit = candidate.circuit.sheath.verdict_limit_c
            ends = [candidate.heat.sheath_c, limit]
            if units == "us":  # °F = 9/5 °C + 32
                ends = [1.8 * celsius + 32.0 for celsius in ends]
            assert row.split()[-1] == "/".join(f"{end:.0f}" for end in ends)


def test_the_heat_of_a_candidate_is_told_with_its_limits_and_advice(
    standing: hm.Candidate,
) -> None:
    text = display.heat_text(standing)
    line = next(line for line in text.splitlines() if line.startswith("sheath  "))
    band = standing.heat.sheath_band
    shown = [band.low_c, band.typical_c, band.high_c, standing.heat.sheath_c]
    shown.append(standing.circuit.sheath.verdict_limit_c)
    assert line.split()[1:] == [f"{celsius:.0f}" for celsius in shown]
    coil = next(line for line in text.splitlines() if line.startswith("coil  "))
    assert coil.split()[-1] == "?"  # of its alloy
    for sentence in standing.advice().sentences:
        assert unwrapped(sentence) in unwrapped(text)
    assert unwrapped(text) in unwrapped(str(standing))
    us = display.heat_text(standing, units="us")
    assert "°F" in us
    assert "W/in" in us


def test_without_a_store_the_table_is_as_wide_as_its_heat(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    bare = hm.rank(starter, changed_demo(lambda plain: plain.pop("store")), top=5)
    header = display.ranking_table(bare.candidates).splitlines()[0]
    assert "max%" in header
    assert "sheath" not in header
    assert "sheath" not in display.legend(bare)
    assert widest(str(bare)) <= 80


def test_what_one_reason_hides_is_said_in_one_line(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    bare = hm.assess(starter, changed_demo(lambda plain: plain.pop("store")))
    lines = display.margins_text(bare)
    hidden = [m for m in bare.margins if m.severity == "not assessed"]
    for margin in hidden:
        assert unwrapped(shown_margin_name(margin.name)) in unwrapped(lines)
    shared = {(m.subject, m.sentence()) for m in hidden}
    assert lines.count("not assessed:") == len(shared) < len(hidden)
