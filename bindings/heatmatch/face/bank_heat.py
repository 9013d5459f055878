"""The elements of a circuit in their store."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch._faces import Face, Held
from heatmatch.face.bed_charge import BedCharge

if TYPE_CHECKING:
    from heatmatch._core import HeatPoint, Medium, Sheath, Store


class BankHeat(Face):
    """Elements of a circuit in their store, ready for any power.

    Examples
    --------
    >>> import heatmatch as hm
    >>> heat = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat
    >>> heat.elements
    2
    """

    __slots__ = ()
    _made_by = "Circuit.heat"

    missing: Held[list[str]] = Held("Names of the fields without which nothing is computed.")
    misfit: Held[str] = Held("Reason why the elements do not fit; empty if they do.")
    known: Held[bool] = Held("Whether temperatures can be computed.")
    elements: Held[int] = Held("Number of elements in the bank.")
    heated_length_m: Held[float] = Held("Heated length of all elements [m].")
    liquid: Held[bool] = Held("Whether the fill mixes itself.")
    store: Held[Store] = Held("Heat store.")
    medium: Held[Medium] = Held("Fill of the store.")
    charge_hours: Held[float] = Held("Hours of bright sun a day [h].")
    air_c: Held[float] = Held(
        "Temperature of the air around the store on a bright day of the season [°C]."
    )
    hottest_air_c: Held[float] = Held(
        "Temperature of the air around the store in high summer [°C]."
    )
    sheath: Held[Sheath | None] = Held("Sheath of the elements; None if not known.")
    coil_limit_c: Held[float | None] = Held(
        "Temperature limit of the coil's alloy [°C]; None if not known."
    )
    assumed: Held[list[str]] = Held("Assumptions, in words.")

    def at(self, element_w: float) -> HeatPoint | None:
        """Compute the temperatures of the store at a power of each element.

        Parameters
        ----------
        element_w : float
            Power of one element [W], 0 to 100000.

        Returns
        -------
        HeatPoint or None
            Temperatures [°C]; None if they are not known.

        Raises
        ------
        InvalidInput
            `element_w` is below 0 or above 100000.

        Notes
        -----
        Temperatures at their worst end hold at the low end of the fill's conductivity; the rise of
        the sheath is multiplied by 1.10 for the error of the model. ``BedCharge.temperatures`` has
        the equations.

        References
        ----------
        carslaw-jaeger : line sources in a solid

        Examples
        --------
        >>> import heatmatch as hm
        >>> heat = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat
        >>> heat.at(100).sheath_c < heat.at(200).sheath_c
        True
        """
        found: HeatPoint | None = self._call("at", element_w)
        return found

    def largest_element_w(self, *, with_stagnation: bool = True) -> float | None:
        """Compute the largest power of one element within the limits of sheath and coil.

        Parameters
        ----------
        with_stagnation : bool
            Whether the limits also hold after fourteen bright days with no heat drawn.

        Returns
        -------
        float or None
            Power [W]; None if no limit is known, 0 if the bank does not fit.

        Raises
        ------
        InvalidInput
            The legs do not fit the store.

        Notes
        -----
        The power at which ``sheath_c`` or ``coil_c`` of ``at`` reaches its limit, whichever is
        first.

        References
        ----------
        carslaw-jaeger : line sources in a solid

        Examples
        --------
        >>> import heatmatch as hm
        >>> heat = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat
        >>> heat.largest_element_w() > 0
        True
        """
        found: float | None = self._call("largest_element_w", with_stagnation=with_stagnation)
        return found

    def bed(
        self, *, conductivity: str = "low", stagnation: bool = False, moist: bool = False
    ) -> BedCharge:
        """Return the bed with the charge that margins assume.

        Parameters
        ----------
        conductivity : {"low", "typical", "high"}
            End of the fill's conductivity.
        stagnation : bool
            Whether the charge is fourteen bright days with no heat drawn.
        moist : bool
            Whether the fill is still moist.

        Returns
        -------
        BedCharge
            Bed whose temperatures can be computed for any power.

        Raises
        ------
        InvalidInput
            `conductivity` is not "low", "typical" or "high", or temperatures are not known.

        Examples
        --------
        >>> import heatmatch as hm
        >>> heat = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat
        >>> heat.bed(conductivity="high").sheath_c(200) < heat.bed().sheath_c(200)
        True
        """
        options = {"conductivity": conductivity, "stagnation": stagnation, "moist": moist}
        made: BedCharge = self._call("bed", **options)
        return made
