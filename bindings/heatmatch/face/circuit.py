"""One array feeding one bank."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch._faces import Face, Held
from heatmatch.face.bank_heat import BankHeat

if TYPE_CHECKING:
    from heatmatch._core import (
        Alloy,
        DatasheetFit,
        Element,
        ElementResistance,
        OwnedPanels,
        Panel,
        PlacedDevice,
        RunParts,
        Sheath,
        SingleDiode,
    )
    from heatmatch.face.array import Array


class Circuit(Face):
    """Array feeding a bank of elements, with its runs of wire and devices.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> circuit.circuit.panels, circuit.circuit.bank
    ('2S1P', '1S2P')
    """

    __slots__ = ()
    _made_by = "Candidate.circuit"

    equal_panels: Held[bool] = Held("Whether all panels are of one group, in equal strings.")
    groups: Held[list[OwnedPanels]] = Held("Groups of panels in the array, each once.")
    strings: Held[list[list[str]]] = Held("Group of every panel, string by string.")
    array_layout: Held[str] = Held("Array as text: group and hook-up, or all groups by string.")
    owned: Held[OwnedPanels] = Held("Group of equal panels; of several groups: InvalidInput.")
    panel: Held[Panel] = Held("Equal panel as in the catalog; of several: InvalidInput.")
    panel_filled: Held[Panel] = Held("Equal panel with the defaults of its class filled in.")
    diode_new: Held[DatasheetFit] = Held("Single diode fitted to the label of equal panels.")
    diode_today: Held[SingleDiode] = Held("Single diode of equal panels as aged or measured.")
    remarks: Held[list[str]] = Held("Meaning of the measured values, in words.")
    panels: Held[str] = Held('Hook-up of equal panels, such as "2S1P".')
    series: Held[int] = Held("Number of panels in series, in the longest string.")
    parallel: Held[int] = Held("Number of strings in parallel.")
    element: Held[Element | None] = Held("Element of the bank; None for unlike elements.")
    elements: Held[list[Element]] = Held("Elements of the bank, equal ones repeated.")
    elements_text: Held[str] = Held(
        'Ids of the elements, with "+" for series and "|" for parallel.'
    )
    alloy: Held[Alloy | None] = Held(
        "Alloy of the element's coil; None if not known, or for unlike elements."
    )
    sheath: Held[Sheath | None] = Held(
        "Sheath of the element; None if not known, or for unlike elements."
    )
    heat: Held[BankHeat | None] = Held("Heat of the bank in its store; None without a store.")
    bank: Held[str] = Held(
        'Hook-up of the elements, such as "1S2P"; `elements_text` for unlike elements.'
    )
    element_count: Held[int] = Held("Number of elements in the bank.")
    elements_owned: Held[int] = Held("Number of elements of the bank that are owned.")
    element_resistance: Held[ElementResistance | None] = Held(
        "Resistance of one hot element [ohm]; None for unlike elements."
    )
    element_resistances: Held[list[ElementResistance]] = Held(
        "Resistance of each hot element of the bank [ohm]."
    )
    bank_ohm: Held[float] = Held("Typical resistance of the hot bank [ohm].")
    bank_low_ohm: Held[float] = Held("Low end of the resistance of the hot bank [ohm].")
    bank_high_ohm: Held[float] = Held("High end of the resistance of the hot bank [ohm].")
    wire_ohm: Held[float] = Held("Resistance of all runs, both conductors and joints [ohm].")
    stc_match_ohm: Held[float] = Held("Vmp/Imp of the array; of equal panels from the label [ohm].")
    cold_voltage_v: Held[float] = Held("Open-circuit voltage at the record low [V].")
    short_circuit_current_a: Held[float] = Held("Short-circuit current of new panels [A].")
    array: Held[Array] = Held("Array of the panels as they are today.")
    runs: Held[list[RunParts]] = Held("Runs of wire with their parts.")
    devices: Held[list[PlacedDevice]] = Held("Controls in their places.")
    name: Held[str] = Held("Name of an existing circuit; empty in a ranking.")
    title: Held[str] = Held("Circuit in words.")
