"""A bed that equal elements charge with constant power."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, overload

from heatmatch._arguments import like
from heatmatch._faces import Face, Held, compiled_call

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    from heatmatch._core import BedTemperatures, Element, Medium, Store
    from heatmatch.face.catalog import Catalog

    _Numbers = npt.NDArray[np.float64]


class BedCharge(Face):
    """A bed that equal elements charge with constant power, at one end of its conductivity.

    Parameters
    ----------
    element : Element
        One of the elements.
    store : Store
        The store.
    hours : float
        Charge a day [h].
    air_c : float
        Air around the store [°C].
    days : float
        Number of such days, one after the other.
    moist : bool
        Before the fill has dried.
    elements : int
        Number of elements.
    conductivity : {"low", "typical", "high"}
        End of the fill's conductivity.
    medium : Medium or Catalog, optional
        The fill, or a catalog that holds it; by default that of the starter.

    Raises
    ------
    InvalidInput
        An argument is of another kind or out of range, or the elements do not fit.

    Examples
    --------
    >>> import heatmatch as hm
    >>> catalog = hm.Catalog.starter()
    >>> rod = catalog.elements["tubular-1000-120"]
    >>> bed = hm.BedCharge(rod, hm.demo().store, hours=6, medium=catalog)
    >>> bed.sheath_c(200) > bed.sheath_c(100)
    True
    """

    __slots__ = ()

    def __init__(
        self,
        element: Element,
        store: Store,
        *,
        hours: float = 5.0,
        air_c: float = 20.0,
        days: float = 1.0,
        moist: bool = False,
        elements: int = 1,
        conductivity: str = "low",
        medium: Medium | Catalog | None = None,
    ) -> None:
        made = compiled_call(
            self._compiled, element, store, hours=hours, air_c=air_c, days=days, moist=moist,
            elements=elements, conductivity=conductivity, medium=medium,
        )  # fmt: skip
        self._hold(made)

    medium: Held[Medium] = Held("Fill of the store.")
    store: Held[Store] = Held("Heat store.")
    element: Held[Element] = Held("One of the elements.")
    elements: Held[int] = Held("Number of elements.")
    hours: Held[float] = Held("Charge a day [h].")
    air_c: Held[float] = Held("Air around the store [°C].")
    days: Held[float] = Held("Number of such days, one after the other.")
    moist: Held[bool] = Held("Whether the fill has not dried yet.")
    conductivity: Held[str] = Held('End of the fill\'s conductivity: "low", "typical" or "high".')
    heated_length_m: Held[float] = Held("Heated length of all legs [m].")
    leg_length_m: Held[float] = Held("Heated length of one leg [m].")
    legs: Held[_Numbers] = Held("Places of the legs from the axis, shape (legs, 2) [m].")
    radius_m: Held[float] = Held("Radius of the store, or of a cylinder in its box [m].")
    assumed: Held[list[str]] = Held("Assumptions, in words.")

    def temperatures(self, power_w: float) -> BedTemperatures:
        """Compute the temperatures at the end of the charge.

        Parameters
        ----------
        power_w : float
            Power of all elements [W].

        Returns
        -------
        BedTemperatures
            Sheath, fill, wall and lid [°C].

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.temperatures(200).sheath_c == bed.sheath_c(200)
        True
        """
        found: BedTemperatures = self._call("temperatures", power_w)
        return found

    @overload
    def sheath_c(self, power_w: float) -> float: ...
    @overload
    def sheath_c(self, power_w: npt.ArrayLike) -> _Numbers: ...
    def sheath_c(self, power_w: npt.ArrayLike) -> Any:
        """Compute the temperature of the hottest leg's sheath.

        Parameters
        ----------
        power_w : float or array_like
            Power of all elements [W], any shape.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Temperature [°C], in the shape of `power_w`; a Series keeps its index.

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.sheath_c([100.0, 200.0]).shape
        (2,)
        """
        return like(power_w, self._call("sheath_c", power_w))

    @overload
    def bed_temperature_c(self, distance_m: float, *, power_w: float) -> float: ...
    @overload
    def bed_temperature_c(self, distance_m: npt.ArrayLike, *, power_w: float) -> _Numbers: ...
    def bed_temperature_c(self, distance_m: npt.ArrayLike, *, power_w: float) -> Any:
        """Compute the temperature of the fill at a distance from the hottest leg, halfway along.

        Parameters
        ----------
        distance_m : float or array_like
            Distance from the leg [m], any shape.
        power_w : float
            Power of all elements [W].

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Temperature [°C], in the shape of `distance_m`; a Series keeps its index.

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.bed_temperature_c(0.02, power_w=200) < bed.sheath_c(200)
        True
        """
        return like(distance_m, self._call("bed_temperature_c", distance_m, power_w=power_w))

    def largest_power_w(self, *, limit_c: float, factor: float = 1.1) -> float:
        """Compute the largest power that keeps the sheath at a limit.

        Parameters
        ----------
        limit_c : float
            Limit of the sheath [°C].
        factor : float
            Factor on the temperature rise, 1 or more.

        Returns
        -------
        float
            Power of all elements [W].

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.largest_power_w(limit_c=400) < bed.largest_power_w(limit_c=600)
        True
        """
        power: float = self._call("largest_power_w", limit_c=limit_c, factor=factor)
        return power

    @overload
    def hours_to_limit(
        self, power_w: float, *, limit_c: float, longest_h: float = ...
    ) -> float: ...
    @overload
    def hours_to_limit(
        self, power_w: npt.ArrayLike, *, limit_c: float, longest_h: float = ...
    ) -> _Numbers: ...
    def hours_to_limit(
        self, power_w: npt.ArrayLike, *, limit_c: float, longest_h: float = 1000.0
    ) -> Any:
        """Compute the time until the sheath reaches a limit, from the air's temperature on.

        Parameters
        ----------
        power_w : float or array_like
            Power of all elements [W], any shape.
        limit_c : float
            Limit of the sheath [°C].
        longest_h : float
            Longest time to look at [h].

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Time [h], in the shape of `power_w`; inf if the limit is not reached within `longest_h`.

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.hours_to_limit(2000, limit_c=500) < bed.hours_to_limit(1000, limit_c=500)
        True
        """
        options = {"limit_c": limit_c, "longest_h": longest_h}
        return like(power_w, self._call("hours_to_limit", power_w, **options))
