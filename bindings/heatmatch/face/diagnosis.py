"""Explanations of readings, the best first."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held, call
from heatmatch.text import forms, meter
from heatmatch.text.plain import plain, plain_line
from heatmatch.text.sentence import Sentence

if TYPE_CHECKING:
    from heatmatch._core import Hypothesis, NextMeasurement
    from heatmatch.face.candidate import Candidate
    from heatmatch.face.catalog import Catalog
    from heatmatch.face.readings import Readings


class Diagnosis(Face):
    """Explanations of readings, the best first, from ``diagnose``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> read = hm.Readings.from_rows([{"bank_v": 68.9, "bank_a": 1.21, "irradiance_w_m2": 820}])
    >>> hm.diagnose(circuit, read).unexplained
    False
    """

    __slots__ = ()
    _made_by = "diagnose(candidate, readings)"

    ranked: Held[list[Hypothesis]] = Held("Explanations, the best first.")
    group: Held[int] = Held("Number of the first explanations that fit equally well.")
    indistinguishable: Held[bool] = Held("Whether more than one explanation fits equally well.")
    unexplained: Held[bool] = Held("Whether no explanation fits, not even the best.")
    next: Held[list[NextMeasurement]] = Held(
        "Measurements that separate the explanations, the best first."
    )
    verdict: Held[Sentence] = Held("Result in one sentence.")
    bank_ohms: Held[Sentence] = Held(
        "Measured voltage over current [ohm] and the described resistance, in words."
    )
    remarks: Held[list[Sentence]] = Held("Readings left out or suspicious, in words.")

    def __repr__(self) -> str:
        return plain_line(f"<Diagnosis: {self.verdict}>")

    def __str__(self) -> str:
        return plain(meter.diagnosis_text(self))

    def _repr_html_(self) -> str:
        return forms.diagnosis_html(self)


def diagnose(
    candidate: Candidate,
    readings: Readings,
    *,
    catalog: Catalog | None = None,
    progress: Callable[[float], object] | bool | None = None,
) -> Diagnosis:
    """Rank the faults that explain readings.

    Parameters
    ----------
    candidate : Candidate
        The circuit as described.
    readings : Readings
        Meter readings of the circuit.
    catalog : Catalog, optional
        Elements to name if the bank has another resistance.
    progress : callable or bool, optional
        True shows a bar; a callable is called with the completed share, 0 to 1.

    Returns
    -------
    Diagnosis
        Explanations, equal fits as one group, and the next measurements.

    Raises
    ------
    InvalidInput
        No reading can be used.

    Notes
    -----
    Irradiance, cell temperature and unknowns of panels and elements are fitted with each
    explanation, within their uncertainty. The score is chi-square, plus 1 for each fitted number,
    plus the rarity of the fault, 0 to 3. Weights are ``exp(-score / 2)`` over the sum of all;
    explanations that fit alike have equal weights.

    References
    ----------
    de-soto-2006 : I-V curves
    carslaw-jaeger : temperatures of the store

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> read = hm.Readings.from_rows([{"bank_v": 68.9, "bank_a": 1.21, "irradiance_w_m2": 820}])
    >>> hm.diagnose(circuit, read).ranked[0].kind
    'element open'
    """
    made: Diagnosis = call(_core.diagnose, candidate, readings, catalog=catalog, progress=progress)
    return made
