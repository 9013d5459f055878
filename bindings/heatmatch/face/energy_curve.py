"""Energy of a panel or an array over some weather, by load resistance."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, overload

from heatmatch._arguments import like
from heatmatch._faces import Face, Held, compiled_call

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    from heatmatch._core import LargestPoint, Panel, SingleDiode
    from heatmatch.face.array import Array
    from heatmatch.face.weather import Weather


class EnergyCurve(Face):
    """Energy of one panel or one array over some weather, as a function of load resistance.

    Parameters
    ----------
    panel_or_diode : Panel, SingleDiode or Array
        The panel, or the array; what a label lacks is assumed from its class.
    weather : Weather or sequence of Weather
        Irradiance and temperature on the panel. Of an array: one for all, or one for each panel,
        string by string, on planes of one sky (``Weather.on_plane``).
    months : sequence of int
        Months to sum over, 1 to 12; empty is all.
    exact : bool
        Sum over every row instead of condensed nodes.
    noct_c : float, optional
        Nominal operating cell temperature [°C], 30 to 80; that of each panel by default.
    vector_width : str
        "automatic", or a width that ``widest_vectors`` allows.

    Raises
    ------
    InvalidInput
        An argument is of another kind or out of range.

    Notes
    -----
    S equal panels in series and P in parallel deliver ``S P E(R P / S)`` into R [ohm]. The curve of
    an Array is of the whole array: in a string voltages add at equal current, with bypass diodes;
    across strings currents add at equal voltage. Two planes are condensed together, within 1e-3 of
    every hour from 0.3 to 6 times `stc_match_ohm`; from three planes on every hour is summed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
    >>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
    >>> curve.best_resistance_ohm > curve.stc_match_ohm
    True
    >>> south = hm.Weather.from_installation(hm.demo())
    >>> east = south.on_plane(tilt_deg=60, azimuth_deg=90)
    >>> pair = hm.EnergyCurve(hm.Array([[panel, panel]]), [south, east])
    >>> pair.delivered_kwh(15.0) < 2 * curve.delivered_kwh(7.5)
    True
    """

    __slots__ = ()

    def __init__(
        self,
        panel_or_diode: Panel | SingleDiode | Array,
        weather: Weather | Sequence[Weather],
        *,
        months: Sequence[int] = (),
        exact: bool = False,
        noct_c: float | None = None,
        vector_width: str = "automatic",
    ) -> None:
        options = {"months": list(months), "exact": exact, "vector_width": vector_width}
        made = self._compiled
        self._hold(compiled_call(made, panel_or_diode, weather, noct_c=noct_c, **options))

    mpp_kwh: Held[float] = Held("Energy at the maximum power point [kWh].")
    best_resistance_ohm: Held[float] = Held("Load resistance that absorbs the most energy [ohm].")
    stc_match_ohm: Held[float] = Held("Vmp/Imp at standard test conditions [ohm].")

    @overload
    def delivered_kwh(self, resistance_ohm: float, *, wire_ohm: float = ...) -> float: ...
    @overload
    def delivered_kwh(
        self, resistance_ohm: npt.ArrayLike, *, wire_ohm: float = ...
    ) -> npt.NDArray[np.float64]: ...
    def delivered_kwh(self, resistance_ohm: npt.ArrayLike, *, wire_ohm: float = 0.0) -> Any:
        """Return the energy delivered into a resistance.

        Parameters
        ----------
        resistance_ohm : float or array_like
            Load resistance [ohm], any shape; 0 or more.
        wire_ohm : float
            Resistance of the wire in series [ohm].

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Energy [kWh], in the shape of `resistance_ohm`; a Series keeps its index.

        Raises
        ------
        InvalidInput
            A resistance is below 0.

        Notes
        -----
        ``E(R + R_wire) R / (R + R_wire)`` [kWh].

        References
        ----------
        de-soto-2006 : single-diode model

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["cdte-100"]
        >>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
        >>> curve.delivered_kwh([20.0, 40.0]).shape
        (2,)
        """
        return like(resistance_ohm, self._call("delivered_kwh", resistance_ohm, wire_ohm=wire_ohm))

    @overload
    def slope_kwh(self, resistance_ohm: float) -> float: ...
    @overload
    def slope_kwh(self, resistance_ohm: npt.ArrayLike) -> npt.NDArray[np.float64]: ...
    def slope_kwh(self, resistance_ohm: npt.ArrayLike) -> Any:
        """Return the slope of the energy over the logarithm of the resistance.

        Parameters
        ----------
        resistance_ohm : float or array_like
            Load resistance [ohm], any shape.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            ``dE/d(ln R)`` [kWh], in the shape of `resistance_ohm`; a Series keeps its index.

        Raises
        ------
        InvalidInput
            A resistance is below 0.

        Notes
        -----
        ``dE/d(ln R)`` is 0 at ``best_resistance_ohm``.

        References
        ----------
        de-soto-2006 : single-diode model

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["cdte-100"]
        >>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
        >>> curve.slope_kwh(0.5 * curve.best_resistance_ohm) > 0
        True
        """
        return like(resistance_ohm, self._call("slope_kwh", resistance_ohm))

    def largest(self, resistance_ohm: float) -> LargestPoint:
        """Return the largest power, voltage and current over the weather.

        Parameters
        ----------
        resistance_ohm : float
            Load resistance [ohm].

        Returns
        -------
        LargestPoint
            Power [W], voltage [V] and current [A] of one panel.

        Raises
        ------
        InvalidInput
            `resistance_ohm` is below 0 or not a number.

        Notes
        -----
        ``P = V I`` at ``V = I R`` on the I-V curve of the panel, the largest of all rows.

        References
        ----------
        de-soto-2006 : single-diode model

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["cdte-100"]
        >>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
        >>> curve.largest(30.0).power_w > 50
        True
        """
        found: LargestPoint = self._call("largest", resistance_ohm)
        return found

    @overload
    def hours_above(self, resistance_ohm: float, power_w: float) -> float: ...
    @overload
    def hours_above(
        self, resistance_ohm: float, power_w: npt.ArrayLike
    ) -> npt.NDArray[np.float64]: ...
    def hours_above(self, resistance_ohm: float, power_w: npt.ArrayLike) -> Any:
        """Return the time during which the power exceeds a value.

        Parameters
        ----------
        resistance_ohm : float
            Load resistance [ohm].
        power_w : float or array_like
            Power of one panel [W], any shape.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Time [h], in the shape of `power_w`; a Series keeps its index.

        Raises
        ------
        InvalidInput
            `resistance_ohm` is below 0 or not a number.

        Notes
        -----
        Condensed rows miss up to 4 % of the sunlit hours; ``exact=True`` keeps every row.

        References
        ----------
        de-soto-2006 : single-diode model

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["cdte-100"]
        >>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
        >>> curve.hours_above(30.0, 10.0) > curve.hours_above(30.0, 50.0)
        True
        """
        return like(power_w, self._call("hours_above", resistance_ohm, power_w))

    @overload
    def near_short_circuit_share(self, resistance_ohm: float) -> float: ...
    @overload
    def near_short_circuit_share(
        self, resistance_ohm: npt.ArrayLike
    ) -> npt.NDArray[np.float64]: ...
    def near_short_circuit_share(self, resistance_ohm: npt.ArrayLike) -> Any:
        """Return the share of sunlit hours spent near short circuit.

        Parameters
        ----------
        resistance_ohm : float or array_like
            Load resistance [ohm], any shape.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Share of sunlit hours with a voltage below half of open-circuit voltage, 0 to 1, in the
            shape of `resistance_ohm`; a Series keeps its index.

        Raises
        ------
        InvalidInput
            A resistance is below 0.

        Notes
        -----
        Near short circuit, heat falls with the square of irradiance. Condensed rows miss up to
        0.03.

        References
        ----------
        de-soto-2006 : single-diode model

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["cdte-100"]
        >>> curve = hm.EnergyCurve(panel, hm.Weather.from_installation(hm.demo()))
        >>> curve.near_short_circuit_share(10.0) > curve.near_short_circuit_share(50.0)
        True
        """
        return like(resistance_ohm, self._call("near_short_circuit_share", resistance_ohm))
