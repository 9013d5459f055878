"""Expected meter readings of a circuit."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _core
from heatmatch._faces import Face, Held, call
from heatmatch.io import meters
from heatmatch.text import forms, meter
from heatmatch.text.plain import plain, plain_line
from heatmatch.text.sentence import Sentence

if TYPE_CHECKING:
    import numpy.typing as npt
    import pandas as _pd

    from heatmatch._core import MeterCheck, MeterRow
    from heatmatch.face.candidate import Candidate


class MeterSheet(Face):
    """Expected meter readings of a circuit, from ``meter_sheet``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> [check.letter for check in circuit.meter_sheet().checks][:2]
    ['A', 'B']
    """

    __slots__ = ()
    _made_by = "meter_sheet(candidate)"

    title: Held[Sentence] = Held("Title of the circuit.")
    rows: Held[list[MeterRow]] = Held(
        "Expected readings: warm panels by falling irradiance, then panels just uncovered."
    )
    checks: Held[list[MeterCheck]] = Held("Measurements and inspections, one by one.")
    without_sun_meter: Held[list[Sentence]] = Held(
        "Instructions for readings without a sun meter; empty where a part is not known."
    )
    assumed: Held[list[Sentence]] = Held("Assumptions, in words.")
    missing: Held[list[Sentence]] = Held("Missing fields and their remedy, in words.")
    remarks: Held[list[Sentence]] = Held("Cautions, in words.")

    def to_frame(self) -> _pd.DataFrame:
        """Return the expected readings as a data frame.

        Returns
        -------
        pandas.DataFrame
            A row per irradiance [W/m2] and cell temperature [°C]; voltages [V], currents [A] and
            power [W], each low, typical and high.

        Raises
        ------
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> sheet = hm.meter_sheet(hm.assess(hm.Catalog.starter(), hm.demo()))
        >>> float(sheet.to_frame()["irradiance_w_m2"].max())
        1000.0
        """
        return meters.sheet_frame(self)

    def __repr__(self) -> str:
        counts = f"{len(self.rows)} rows, {len(self.checks)} checks"
        return plain_line(f"<MeterSheet {self.title}: {counts}>")

    def __str__(self) -> str:
        return plain(meter.sheet_text(self))

    def _repr_html_(self) -> str:
        return forms.sheet_html(self)


def meter_sheet(
    candidate: Candidate,
    *,
    irradiance_w_m2: npt.ArrayLike | None = None,
    air_c: float = 10.0,
    uncovered_cell_c: float = 25.0,
    units: str = "si",
) -> MeterSheet:
    """Compute the expected meter readings of a circuit.

    Parameters
    ----------
    candidate : Candidate
        The circuit.
    irradiance_w_m2 : array_like, optional
        Irradiances [W/m2], above 0 up to 1600; 1000 to 100 by default.
    air_c : float
        Air temperature around warm panels [°C], -60 to 60.
    uncovered_cell_c : float
        Cell temperature of panels just uncovered [°C], -60 to 110.
    units : {"si", "us"}
        Checked only: the sentences are in either unit set, ``.text(units)``.

    Returns
    -------
    MeterSheet
        Expected voltages [V], currents [A] and powers [W]; what is not known is in ``missing``.

    Raises
    ------
    InvalidInput
        A value is out of range.

    Notes
    -----
    Voltages and currents follow from ``V = I R`` on the I-V curve of the panels. The band covers
    panel current and resistance; meter error is additional. Warm cells are at
    ``T_air + G (NOCT - 20) / 800`` [°C].

    References
    ----------
    de-soto-2006 : I-V curves
    ross-1980 : cell temperature

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> row = hm.meter_sheet(circuit, irradiance_w_m2=[800]).rows[0]
    >>> row.bank_v.low < row.bank_v.typical < row.bank_v.high
    True
    """
    made: MeterSheet = call(
        _core.meter_sheet,
        candidate,
        irradiance_w_m2=irradiance_w_m2,
        air_c=air_c,
        uncovered_cell_c=uncovered_cell_c,
        units=units,
    )
    return made
