"""Names of the elements of a circuit, equal or not."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch.text.columns import clip_middle

if TYPE_CHECKING:
    from heatmatch import _library as _core


def element_name(circuit: _core.Circuit) -> str:
    """The id of equal elements, or the layout of unlike ones."""
    return str(circuit.elements_text if circuit.element is None else circuit.element.id)


def bank_name(circuit: _core.Circuit, width: int) -> str:
    """Elements and hook-up, or the layout of unlike ones; the name clipped to a width."""
    name = clip_middle(element_name(circuit), width)
    return name if circuit.element is None else f"{name} {circuit.bank}"
