"""Heat of a candidate: sheath, advice, hot tail, wires."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import heatmatch as hm
import numpy as np
import pytest
from heatmatch.text.units import told


def test_a_candidate_knows_its_heat(standing: hm.Candidate) -> None:
    point, heat, sheath = standing.heat, standing.circuit.heat, standing.circuit.sheath
    assert point is not None
    assert heat is not None
    assert sheath is not None
    margins = {margin.name: margin for margin in standing.margins}
    assert margins["sheath temperature"].value == point.sheath_c
    assert margins["sheath temperature"].limit == sheath.verdict_limit_c
    assert margins["coil temperature"].value == point.coil_c
    watts = standing.bright.element_power_w
    again = heat.at(watts)
    assert again is not None
    assert again.sheath_c == point.sheath_c
    careful = heat.bed(conductivity="low").temperatures(watts * heat.elements)
    assert careful.sheath_c == point.sheath_band.high_c
    most_w = heat.largest_element_w()
    assert most_w is not None
    at_most = heat.at(most_w)
    assert at_most is not None
    assert at_most.stagnation_sheath_c == pytest.approx(sheath.verdict_limit_c, abs=0.1)
    advice = standing.advice()
    assert advice.within_limit == (advice.element_w <= advice.largest_element_w)
    assert advice.element_w == watts
    assert all(sentence.endswith(".") for sentence in advice.sentences)
    assert f"{advice.largest_w_per_cm:.3g} W/cm)" in advice.sentences[0]
    assert f"{2.54 * advice.largest_w_per_cm:.3g} W/in)" in told(advice.sentences[0], "us")


def test_without_a_store_nothing_is_made_up(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    bare = hm.assess(starter, changed_demo(lambda plain: plain.pop("store")))
    assert bare.circuit.heat is None
    assert bare.heat is None
    assert bare.tail is None
    assert bare.advice().sentences == ["No store is described."]
    assert "no store" not in str(bare).lower().replace("no store is described", "")


def test_elements_that_do_not_fit_say_so(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def shrink(plain: dict[str, Any]) -> None:
        plain["store"] |= {"diameter_m": 0.2, "height_m": 0.3}

    tight = hm.assess(starter, changed_demo(shrink))
    assert tight.circuit.heat is not None
    assert not tight.circuit.heat.known
    assert tight.circuit.heat.misfit
    assert tight.circuit.heat.at(100.0) is None
    assert tight.heat is None
    assert tight.circuit.heat.largest_element_w() == 0.0
    assert tight.advice().sentences[0].startswith("It does not fit")
    with pytest.raises(hm.InvalidInput, match="fit"):
        tight.circuit.heat.bed()


def test_a_tail_cools_along_its_wire(standing: hm.Candidate) -> None:
    tail = standing.tail
    assert tail is not None
    assert tail.terminals == "through wall"
    assert tail.heated_end_c > tail.terminal_c
    wire = tail.wire_c(np.linspace(0.0, 2.0, 50))
    assert wire[0] == pytest.approx(tail.terminal_c)
    assert wire[-1] == pytest.approx(tail.far_wire_c, abs=1.0)
    margins = {margin.name: margin for margin in standing.margins}
    assert margins["terminal temperature"].value == tail.terminal_c
    middle = 0.5 * (tail.terminal_c + tail.far_wire_c)
    where = tail.distance_for_limit_m(middle)
    assert where is not None
    assert tail.wire_c(where) == pytest.approx(middle, abs=0.1)
    with pytest.raises(hm.InvalidInput, match="from_terminal_m"):
        tail.wire_c(-1.0)


def test_every_run_is_checked_against_what_would_do(
    starter: hm.Catalog, standing: hm.Candidate, changed_demo: Callable[..., hm.Installation]
) -> None:
    checks = standing.check_wires()
    assert [check.run for check in checks] == [part.name for part in standing.circuit.runs]
    assert [check.at_element for check in checks] == [False, False, True]
    for check in checks:
        assert [limit.limit_c for limit in check.limits] == sorted(
            limit.limit_c for limit in check.limits
        )
        assert check.sentence.endswith(".")
    assert repr(standing.check_wires(starter)) == repr(checks)

    def bury(plain: dict[str, Any]) -> None:
        plain["store"]["terminals"] = "buried"
        plain["circuit"]["element"] = "oven-bake-2000-240"  # of a short cold end
        plain["runs"][-1]["wire"] = "thhn-12-awg"

    buried = hm.assess(starter, changed_demo(bury)).check_wires(starter)[-1]
    assert buried.severity == "danger"
    assert buried.conductor_c is not None
    assert buried.conductor_c > checks[-1].conductor_c
    assert buried.reach
