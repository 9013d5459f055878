"""A bed that equal elements charge with constant power."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, overload

from heatmatch._arguments import like
from heatmatch._faces import Held, compiled_call
from heatmatch.face.bed_limits import BedLimits

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    from heatmatch._core import BedTemperatures, Element, Medium, Store
    from heatmatch.face.catalog import Catalog

    _Numbers = npt.NDArray[np.float64]


class BedCharge(BedLimits):
    """A bed that equal elements charge with constant power, at one end of its conductivity.

    Parameters
    ----------
    element : Element
        One of the elements.
    store : Store
        The store.
    hours : float
        Charging time per day [h], above 0 up to 24.
    air_c : float
        Air temperature around the store [°C], -60 to 80; the store starts at it.
    days : float
        Equal days in a row [dimensionless], 1 to 3660.
    moist : bool
        Whether the fill is still moist.
    elements : int
        Number of elements, 1 or more.
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
    hours: Held[float] = Held("Charging time per day [h].")
    air_c: Held[float] = Held("Temperature of the air around the store [°C].")
    days: Held[float] = Held("Number of equal days in a row [days].")
    moist: Held[bool] = Held("Whether the fill is still moist.")
    conductivity: Held[str] = Held('End of the fill\'s conductivity: "low", "typical" or "high".')
    heated_length_m: Held[float] = Held("Heated length of all legs [m].")
    leg_length_m: Held[float] = Held("Heated length of one leg [m].")
    legs: Held[_Numbers] = Held(
        "Positions of the legs from the axis of the store [m], shape (legs, 2)."
    )
    radius_m: Held[float] = Held("Radius of the store, or of a cylinder in its box [m].")
    assumed: Held[list[str]] = Held("Assumptions, in words.")

    def temperatures(self, power_w: float) -> BedTemperatures:
        """Compute the temperatures at the end of the charge.

        Parameters
        ----------
        power_w : float
            Power of all elements [W], 0 to 1000000.

        Returns
        -------
        BedTemperatures
            Sheath, fill, wall and lid [°C].

        Raises
        ------
        InvalidInput
            `power_w` is below 0 or above 1000000.

        Notes
        -----
        Each leg of length ``L`` is a line source in a bulk with one time constant. ``q'`` is the
        power per length, ``d_j`` the distance to leg ``j``, ``a`` the diffusivity, ``t`` the time,
        ``E1`` the exponential integral, and ``Theta`` the integral of conductivity over
        temperature::

            Theta(Ts) = Theta(Tb) + q'/(2 pi) sum_j (asinh(L/(2 d_j)) - asinh(L/(2 rho_j)))
            rho_j = (d_j^-4 exp(-2 E1(d_j^2/(4 a t))) + rm^-4)^(-1/4)
            rho_0 = ((d_0^2 + 2.246 a t)^-2 + rm^-4)^(-1/4)

        The rise is within about 7 % of a three-dimensional solution from 1 to 8 h.

        References
        ----------
        carslaw-jaeger : line sources in a solid

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
            Power of all elements [W], 0 to 1000000, any shape.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Temperature [°C], in the shape of `power_w`; a Series keeps its index.

        Raises
        ------
        InvalidInput
            A power is below 0 or above 1000000.

        Notes
        -----
        ``Ts`` of ``temperatures``.

        References
        ----------
        carslaw-jaeger : line sources in a solid

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
            Distance from the leg [m], 0 to 100, any shape.
        power_w : float
            Power of all elements [W], 0 to 1000000.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Temperature [°C], in the shape of `distance_m`; a Series keeps its index.

        Raises
        ------
        InvalidInput
            A distance is outside 0 to 100, or `power_w` outside 0 to 1000000.

        Notes
        -----
        ``Ts`` of ``temperatures`` with the distance as ``d_0``.

        References
        ----------
        carslaw-jaeger : line sources in a solid

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.bed_temperature_c(0.02, power_w=200) < bed.sheath_c(200)
        True
        """
        return like(distance_m, self._call("bed_temperature_c", distance_m, power_w=power_w))
