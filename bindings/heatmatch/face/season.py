"""Energy that a circuit delivers over the heating season."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _library
from heatmatch._faces import Face, Held
from heatmatch.text import forms
from heatmatch.text.plain import plain
from heatmatch.text.table import table_text

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt


class Season(Face):
    """Energy that a circuit delivers into its bank over the heating season, less wire loss.

    Notes
    -----
    ``harvest_fraction = kwh / mpp_kwh``; sums are over the rows of the weather in `months`.

    Examples
    --------
    >>> import heatmatch as hm
    >>> season = hm.assess(hm.Catalog.starter(), hm.demo()).season
    >>> 0 < season.harvest_fraction < 1
    True
    """

    __slots__ = ()
    _made_by = "Candidate.season"

    months: Held[list[int]] = Held("Months of the season, 1 to 12; empty if the weather has none.")
    days: Held[float] = Held("Length of the season [days].")
    kwh_low: Held[float] = Held("Low end of the energy delivered [kWh].")
    kwh: Held[float] = Held("Typical energy delivered [kWh].")
    kwh_high: Held[float] = Held("High end of the energy delivered [kWh].")
    rear_kwh: Held[float] = Held("Part of `kwh` from light on the backs of panels [kWh].")
    mpp_kwh: Held[float] = Held("Energy available at the maximum power point [kWh].")
    kwh_per_day: Held[npt.NDArray[np.float64]] = Held(
        "Energy delivered per day of each month, January first, shape (12,) [kWh/day]."
    )
    mpp_kwh_per_day: Held[npt.NDArray[np.float64]] = Held(
        "Energy at the maximum power point per day of each month, shape (12,) [kWh/day]."
    )
    mean_kwh_per_day: Held[float] = Held("Mean energy delivered per day of the season [kWh/day].")
    harvest_fraction: Held[float] = Held(
        "Energy delivered over energy at the maximum power point, 0 to 1 [dimensionless]."
    )
    best_ohm: Held[float] = Held("Resistance of the bank that absorbs the most energy [ohm].")
    best_ohm_cloud: Held[float | None] = Held(
        "Best resistance with cloud within the step at its worst [ohm]; None if not known."
    )
    stc_match_ohm: Held[float] = Held("Vmp/Imp of the array, less its wire [ohm].")
    best_kwh: Held[float] = Held("Energy delivered into a bank of `best_ohm` [kWh].")
    stc_match_kwh: Held[float] = Held("Energy delivered into a bank of `stc_match_ohm` [kWh].")
    stc_match_loss: Held[float] = Held(
        "Share of `best_kwh` that a bank of `stc_match_ohm` loses, 0 to 1."
    )
    stc_match_loss_cloud: Held[float | None] = Held(
        "Share that `stc_match_ohm` loses with the worst cloud in the step, 0 to 1; "
        "None if not known."
    )
    stc_match_loss_sentence: Held[str] = Held("Loss of a bank of `stc_match_ohm`, in words.")
    best_ohm_sentence: Held[str] = Held(
        "Reason why `best_ohm` differs from `stc_match_ohm`, in words."
    )
    near_short_circuit_share: Held[float] = Held(
        "Share of sunlit hours with panel voltage below half of open-circuit voltage, 0 to 1."
    )
    element_power_w: Held[float] = Held("Largest power of one element in the season [W].")
    cloud_band: Held[bool] = Held("Whether the band includes cloud within the step of the weather.")
    price_per_kwh: Held[float | None] = Held(
        "Price to buy over the energy of one season [currency/kWh]; None if not known."
    )
    remarks: Held[list[str]] = Held("Gaps and repairs of the weather, in words.")
    assumed: Held[list[str]] = Held("Assumptions about the weather, in words.")

    def __str__(self) -> str:
        made = _library.season_table(self)
        return plain(table_text(made, (8, *(5 for _ in made.columns[1:])), "si"))

    def _repr_html_(self) -> str:
        return forms.html_of(_library.season_table(self))
