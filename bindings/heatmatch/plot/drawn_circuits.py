"""What a drawing shows: one circuit, several, or those of a plan."""

from __future__ import annotations

from collections.abc import Sequence

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput

Circuits = _core.Candidate | Sequence[_core.Candidate] | _core.Plan
_MOST_CIRCUITS = 8


def drawn_circuits(circuits: Circuits) -> list[_core.Candidate]:
    """The circuits of a drawing: one, several, or those of a plan."""
    given = circuits
    if isinstance(given, _core.Plan):
        given = given.circuits
    several = [given] if isinstance(given, _core.Candidate) else list(given)
    if not 1 <= len(several) <= _MOST_CIRCUITS:
        raise InvalidInput(
            f"circuits = {len(several)} circuits must be 1 to {_MOST_CIRCUITS}; draw fewer at once"
        )
    return several


def stands_aside(device: _core.PlacedDevice) -> bool:
    """Whether no wire that is drawn goes through it: it only senses, or its run is not stated."""
    return device.device.run is None or device.device.duty == "senses only"
