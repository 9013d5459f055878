"""The drawing of circuits: every run, device and part, in the words of a shop."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import plot

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
plt = pytest.importorskip("matplotlib.pyplot")


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


def words(ax: Any) -> list[str]:
    return [text.get_text() for text in ax.texts]


def drawn_text(ax: Any) -> str:
    return " ".join(" ".join(words(ax)).split())


def test_the_diagram_tells_every_run_device_and_part(standing: hm.Candidate) -> None:
    ax = plot.hookup_diagram(standing)
    text = drawn_text(ax)
    for run in standing.circuit.runs:
        assert run.name in text
        assert f"{run.run.length_m:g} m one way" in text
    for device in standing.circuit.devices:
        assert device.control.label in text
    volts = f"{standing.circuit.cold_voltage_v:.3g} V at the record low"
    amps = f"{standing.circuit.short_circuit_current_a:.3g} A in short circuit"
    for word in ("AWG", "bond:", "Dry quartz sand", "2 × Night-storage-heater rod", volts, amps,
                 "barn pair: 2 panels in series", "0.57 m across", "120 mm apart"):  # fmt: skip
        assert word in text
    # Two panels, two elements, the isolator's two poles and the contactor's one, the store.
    assert len(ax.patches) == 2 + 2 + 3 + 1
    assert words(ax).count("+") == 1
    american = drawn_text(plot.hookup_diagram(standing, units="us"))
    assert "29.5 ft one way" in american
    assert "°C" not in american


def test_all_circuits_of_a_store_are_drawn(starter: hm.Catalog, demo: hm.Installation) -> None:
    house = demo.replace(
        {
            "circuit": None,
            "circuits": [
                {
                    "name": "crystalline",
                    "array": "barn pair x2 + porch four x4",
                    "element": "storage-rod-1000-240",
                    "bank": "1S2P",
                },
                {
                    "name": "thin",
                    "group": "thin pair",
                    "panels": "1S2P",
                    "element": "tubular-1000-120",
                    "bank": "1S1P",
                },
            ],
        }
    )
    circuits = hm.assess_circuits(starter, house)
    ax = plot.hookup_diagram(circuits)
    text = drawn_text(ax)
    for word in (
        "crystalline",
        "a: barn pair",
        "b: porch four",
        "thin pair: 2 panels",
        "2 circuits",
    ):
        assert word in text + ax.get_title()
    assert words(ax).count("+") == 2
    stores = [patch for patch in ax.patches if patch.get_linewidth() == 2.0]
    assert len(stores) == 1
    ax.figure.canvas.draw()
    with pytest.raises(hm.InvalidInput, match="circuits = 0 circuits must be 1 to 8"):
        plot.hookup_diagram([])


def test_only_what_a_run_goes_through_is_drawn_on_it(
    starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def change(plain: dict[str, Any]) -> None:
        del plain["devices"][0]["run"]
        plain["devices"][2] |= {"run": "home run", "senses": "lid"}

    ax = plot.hookup_diagram(hm.assess(starter, changed_demo(change)))
    poles = [p for p in ax.patches if (p.get_width(), p.get_height()) == (18.0, 9.0)]
    assert len(poles) == 1
    text = drawn_text(ax)
    assert "interrupts DC; run not stated" in text
    assert "senses the lid, opens at 90 °C" in text
    assert "senses the wall, opens at 150 °C" in text


def test_more_than_four_are_told_by_their_number(starter: hm.Catalog) -> None:
    plain = {
        "heatmatch_installation": 1,
        "site": {"record_low_c": -20},
        "panels": [{"group": "row", "panel": "silicon-36-cell-135", "count": 24}],
        "elements": [{"element": "storage-rod-1000-240", "count": 6}],
        "circuit": {
            "group": "row",
            "panels": "6S4P",
            "element": "storage-rod-1000-240",
            "bank": "1S6P",
        },
    }
    ax = plot.hookup_diagram(hm.assess(starter, hm.Installation.from_dict(plain)))
    assert len(ax.patches) == 16 + 4 + 1
    assert "6S4P" in ax.get_title()
    # On each of four strings of six, and on the six elements.
    assert words(ax).count("\N{HORIZONTAL ELLIPSIS} x 6") == 4 + 1
