"""Ranking and judging: options, order, margins, explanations, progress and stopping."""

from __future__ import annotations

import signal
import subprocess
from collections.abc import Callable
from typing import Any

import heatmatch as hm
import pytest
from heatmatch.text.units import told

SEVERITIES = ("none", "caution", "warning", "danger", "not assessed")


def names_of(candidates: list[hm.Candidate]) -> list[str]:
    return [candidate.circuit.title for candidate in candidates]


def test_a_ranking_is_a_sequence_of_candidates(demo_ranking: hm.Ranking) -> None:
    candidates = demo_ranking.candidates
    assert 0 < len(demo_ranking) == len(candidates) <= 200
    assert names_of(list(demo_ranking)) == names_of(candidates)
    assert isinstance(demo_ranking[0], hm.Candidate)
    assert demo_ranking[0].circuit.title == candidates[0].circuit.title
    assert demo_ranking[-1].circuit.title == candidates[-1].circuit.title
    assert demo_ranking.evaluated > len(demo_ranking)
    for index in (len(candidates), -len(candidates) - 1):
        with pytest.raises(IndexError):
            demo_ranking[index]


def test_a_candidate_outlives_its_ranking(starter: hm.Catalog, demo: hm.Installation) -> None:
    first = hm.rank(starter, demo, top=2)[0]
    assert first.margins[0].sentence()
    assert first.circuit.runs[0].run.surroundings.kind


def test_danger_is_rejected_and_counted_and_the_rest_is_in_order(demo_ranking: hm.Ranking) -> None:
    assert all(candidate.severity != "danger" for candidate in demo_ranking)
    assert demo_ranking.rejected
    assert all(candidate.severity == "danger" for candidate in demo_ranking.rejected)
    heats = [candidate.season.kwh for candidate in demo_ranking.rejected]
    assert heats == sorted(heats, reverse=True)
    for candidate in demo_ranking.rejected:
        dangers = {m.name for m in candidate.margins if m.severity == "danger"}
        assert dangers & set(demo_ranking.reasons)
    # Steps of 1 %: within one the order is by data, headroom and price.
    for better, worse in zip(demo_ranking, list(demo_ranking)[1:], strict=False):
        assert worse.objective == worse.season.kwh
        assert worse.objective <= (1.01 + 1e-4) * better.objective


def test_no_candidate_of_the_front_is_beaten_in_everything(demo_ranking: hm.Ranking) -> None:
    front = demo_ranking.pareto
    assert front
    infinity = float("inf")

    def trade(one: hm.Candidate) -> tuple[float, float, float]:
        price = infinity if one.price_to_buy is None else one.price_to_buy
        return (one.objective, int(100 * one.smallest_headroom), -price)

    trades = [trade(one) for one in demo_ranking.candidates]
    for one in front:
        mine = trade(one)
        for other in trades:
            # Powers of the quick screen and of the full evaluation agree to rounding only.
            beaten = all(o > m + 1e-6 * abs(m) for o, m in zip(other, mine, strict=True))
            assert not beaten, f"{one.circuit.title} is beaten by {other}"
    best = max(trades)
    assert any(trade(one)[0] == pytest.approx(best[0], rel=1e-9) for one in front)


def test_the_mean_is_that_of_the_conditions(
    starter: hm.Catalog, demo: hm.Installation, standing: hm.Candidate
) -> None:
    powers = [at.power_w for at in standing.delivered]
    assert standing.mean_power_w == pytest.approx(sum(powers) / len(powers), rel=1e-12)
    for conditions in ([(800, 30)], ((800, 30),), iter([(800.0, 30.0)])):
        one = hm.assess(starter, demo, conditions=conditions)
        (at,) = one.delivered
        assert (at.irradiance_w_m2, at.cell_temperature_c) == (800.0, 30.0)
        assert one.mean_power_w == at.power_w
    ranked = hm.rank(starter, demo, conditions=[(800, 30)], top=3)
    assert ranked.conditions == [(800.0, 30.0)]
    assert [len(candidate.delivered) for candidate in ranked] == [1, 1, 1]


def test_what_is_delivered_obeys_ohms_law(standing: hm.Candidate) -> None:
    circuit = standing.circuit
    for at in standing.delivered:
        assert at.voltage_v == pytest.approx(at.current_a * circuit.bank_ohm, rel=1e-12)
        assert at.power_w == pytest.approx(at.voltage_v * at.current_a, rel=1e-12)
        assert at.wire_w == pytest.approx(at.current_a**2 * circuit.wire_ohm, rel=1e-9)
        assert at.power_low_w < at.power_w < at.power_high_w
        assert at.harvest_fraction == pytest.approx(at.power_w / at.maximum_power_w, rel=1e-12)
        sun = {
            "irradiance_w_m2": at.irradiance_w_m2,
            "cell_temperature_c": at.cell_temperature_c,
        }
        point = circuit.array.at(**sun).into_resistance(circuit.bank_ohm + circuit.wire_ohm)
        assert at.current_a == pytest.approx(point.current_a, rel=1e-12)


# Vmp / Imp of the label, 30.09 V / 8.14 A, twice in series; cold volts 37.53 V x 1.19779 x 2.
def test_the_standing_circuit_is_the_one_of_the_demo(standing: hm.Candidate) -> None:
    circuit = standing.circuit
    assert circuit.title == "barn pair 2S1P into storage-rod-1000-240 1S2P"
    assert (circuit.panels, circuit.series, circuit.parallel) == ("2S1P", 2, 1)
    assert (circuit.bank, circuit.element_count, circuit.elements_owned) == ("1S2P", 2, 2)
    assert (circuit.panel.id, circuit.element.id) == (circuit.owned.panel, "storage-rod-1000-240")
    assert circuit.stc_match_ohm == pytest.approx(2 * 30.09 / 8.14, rel=1e-12)
    assert circuit.cold_voltage_v == pytest.approx(2 * 37.53 * (1 + 0.00347 * 57), rel=1e-9)
    assert circuit.bank_ohm == pytest.approx(circuit.element_resistance.typical_ohm / 2)
    assert circuit.wire_ohm == pytest.approx(sum(run.loop_ohm for run in circuit.runs), rel=1e-9)
    assert circuit.panel_filled.v_mp == circuit.panel.v_mp
    assert (circuit.array.series, circuit.array.parallel) == (2, 1)
    assert isinstance(circuit.diode_new, hm.DatasheetFit)
    assert circuit.diode_today.light_current_a < circuit.diode_new.light_current_a
    assert [run.name for run in circuit.runs] == ["home run", "along the wall", "hot tail"]
    chosen = circuit.runs[0]
    assert chosen.run.wire == "choose"
    assert isinstance(chosen.wire, hm.Wire)
    assert chosen.insulation.id == chosen.wire.insulation
    assert all(placed.control.id == placed.device.part for placed in circuit.devices)
    assert standing.severity == standing.worst.severity
    assert standing.not_assessed == sum(m.severity == "not assessed" for m in standing.margins)


def test_every_margin_is_named_and_says_its_numbers_in_both_unit_sets(
    demo_ranking: hm.Ranking, standing: hm.Candidate
) -> None:
    rejected = demo_ranking.rejected[:20]
    for candidate in [standing, *demo_ranking.candidates[:20], *rejected]:
        assert candidate.margins
        for margin in candidate.margins:
            about = repr(margin)
            assert margin.name, about
            assert margin.subject, about
            assert margin.severity in SEVERITIES, about
            assert margin.consequence in SEVERITIES, about
            for units in ("si", "us"):
                sentence = margin.sentence(units=units)
                assert sentence.endswith("."), about
                assert "{" not in sentence, about
                assert "nan" not in sentence.lower().split(), about
            if margin.severity == "not assessed":
                assert margin.missing, f"does not say what is missing: {about}"
                assert margin.headroom is None, about
            else:
                assert margin.source, f"has no source: {about}"
                # Assessed without it, by the worse of both: the deciding field is named.
                assert all(margin.missing), about
            if margin.headroom is not None and margin.limit is not None:
                assert (margin.headroom < 0) == (margin.value > margin.limit), about
                assert margin.unit, about
            elif margin.headroom is not None:  # a yes or no, or two numbers that are not one limit
                assert (margin.headroom < 0) == (margin.severity != "none"), about


def test_a_temperature_is_said_in_fahrenheit_where_asked(standing: hm.Candidate) -> None:
    (margin,) = [m for m in standing.margins if m.name == "insulation" and "home" in m.subject]
    assert margin.unit == "°C"
    assert hm.format_quantity(margin.value, "°C", digits=3) in margin.sentence()
    assert hm.format_quantity(margin.limit, "°C", units="us", digits=3) in margin.sentence(
        units="us"
    )
    with pytest.raises(hm.InvalidInput, match='"si" or "us"'):
        margin.sentence(units="metric")
    with pytest.raises(TypeError):
        margin.sentence("us")


def test_an_explanation_goes_from_the_nameplate_to_the_watts(standing: hm.Candidate) -> None:
    steps = standing.explain()
    named = {step.name: step for step in steps}
    volts = named["panel, open-circuit voltage"]
    assert (volts.value, volts.unit) == (37.53, "V")
    assert "cec-module-list" in volts.source
    assert named["element, rated power"].value == 1000.0
    assert named["mean power"].value == pytest.approx(standing.mean_power_w, rel=1e-12)
    assert named["cold voltage of the array"].value == standing.circuit.cold_voltage_v
    for step in steps:
        assert step.name
        assert step.formula
        assert step.value == step.value
        assert f"{step.name}: {step.formula}" in repr(step)
        assert repr(step) == step.description
        assert "°F" not in step.description
        # A coefficient per kelvin goes with °C.
        assert "°C" not in told(step.description, "us") or step.name == "cold voltage factor"
    numbered = [margin for margin in standing.margins if margin.headroom is not None]
    judged = [margin for margin in numbered if margin.limit is not None]
    assert 0 < len(numbered) - len(judged) < 5  # a yes or no has no formula
    headrooms = [step for step in steps if step.name.startswith("headroom of ")]
    assert [step.value for step in headrooms] == [margin.headroom for margin in judged]
    assert [step.source for step in headrooms] == [margin.source for margin in judged]


def test_options_narrow_the_ranking(
    starter: hm.Catalog, demo: hm.Installation, demo_ranking: hm.Ranking
) -> None:
    short = hm.rank(starter, demo, top=5, keep_rejected=3)
    assert (len(short), len(short.rejected)) == (5, 3)
    assert names_of(short.candidates) == names_of(demo_ranking.candidates[:5])
    assert (short.evaluated, short.reasons) == (demo_ranking.evaluated, demo_ranking.reasons)
    nothing = hm.rank(starter, demo, top=0, keep_rejected=0)
    assert (len(nothing), nothing.rejected) == (0, [])
    single = hm.rank(starter, demo, max_bank=1)
    assert {candidate.circuit.bank for candidate in single} == {"1S1P"}
    assert single.evaluated < demo_ranking.evaluated
    hot, cold = (hm.assess(starter, demo, coil_temperature_c=t) for t in (700, 20))
    assert hot.circuit.bank_ohm > cold.circuit.bank_ohm


def test_progress_rises_to_one(starter: hm.Catalog, demo: hm.Installation) -> None:
    shares: list[float] = []
    hm.rank(starter, demo, top=5, keep_rejected=5, progress=shares.append)
    assert shares
    assert shares == sorted(set(shares))
    assert 0 < shares[0] < shares[-1] == 1.0


@pytest.mark.parametrize("late", [False, True])
def test_an_exception_of_the_progress_function_goes_through_unchanged(
    late: bool, starter: hm.Catalog, demo: hm.Installation
) -> None:
    class Stop(Exception):
        pass

    mine = Stop("enough")

    def progress(share: float) -> None:
        if share == 1.0 or not late:
            raise mine

    with pytest.raises(Stop) as raised:
        hm.rank(starter, demo, progress=progress)
    assert raised.value is mine
    assert len(hm.rank(starter, demo, top=1)) == 1


# Minutes of work in many groups, or in one: without a look at signals it goes on.
LONG_RANKING = """
import os, signal, sys, threading
import heatmatch as hm
groups, count, suns = (int(text) for text in sys.argv[1:])
panels = [{"group": f"g{n}", "panel": "cdte-100", "count": count} for n in range(groups)]
bare = {"heatmatch_installation": 1, "site": {"record_low_c": -20}, "panels": panels}
many = hm.Installation.from_dict({**bare, "elements": [{"any": {}, "count": 16}]})
conditions = [(200 + n % 800, 20 + n % 30) for n in range(suns)]
signal.signal(signal.SIGINT, signal.default_int_handler)  # test runners may ignore it
threading.Timer(0.5, os.kill, (os.getpid(), signal.SIGINT)).start()
hm.rank(hm.Catalog.starter(), many, conditions=conditions, top=1, keep_rejected=0, max_bank=16)
print("finished")
"""


@pytest.mark.parametrize(("groups", "count", "suns"), [(60, 1, 2_000), (1, 64, 2_000)])
def test_a_signal_stops_a_long_ranking(
    groups: int, count: int, suns: int, python: Callable[..., Any]
) -> None:
    try:
        done = python("-c", LONG_RANKING, str(groups), str(count), str(suns), timeout=60)
    except subprocess.TimeoutExpired:
        pytest.fail("the ranking went on after the signal")
    assert done.stderr.splitlines()[-1] == "KeyboardInterrupt"
    assert done.returncode in (-signal.SIGINT, 130, 1)
    assert done.stdout == ""


def test_the_cautions_belong_to_every_result() -> None:
    sentences = hm.cautions()
    assert all(sentence.endswith(".") for sentence in sentences)
    for word in ("60 V", "rated for AC", "steam", "smoke alarm", "approve nothing"):
        assert any(word in sentence for sentence in sentences)


def test_a_ranking_of_one_owned_pair(starter: hm.Catalog, demo: hm.Installation) -> None:
    def rank(changes: dict[str, Any]) -> hm.Ranking:
        return hm.rank(starter, hm.Installation.from_dict({**demo.to_dict(), **changes}))

    own = {"elements": [{"element": "tubular-1000-120", "count": 1}]}
    runs = demo.to_dict()["runs"]
    runs[0] |= {"wire": "pv-wire-10-awg", "owned_m": 18}
    free = rank({**own, "runs": runs})
    assert {candidate.price_to_buy for candidate in free} == {0.0}
    # Without devices a disconnect, a limit and a contactor are needed.
    bare = rank({**own, "runs": [], "devices": []})
    assert all(candidate.price_to_buy > 0 for candidate in bare)
    assert rank({**own, "goals": {"budget": 0}}).reasons["budget"] > 0
