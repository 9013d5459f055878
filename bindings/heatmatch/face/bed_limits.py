"""What keeps a bed within a limit: the largest power, and the time until it is reached."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, overload

from heatmatch._arguments import like
from heatmatch._faces import Face

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    _Numbers = npt.NDArray[np.float64]


class BedLimits(Face):
    """Powers and times of a bed within a limit of its sheath."""

    __slots__ = ()

    def largest_power_w(self, *, limit_c: float, factor: float = 1.1) -> float:
        """Compute the largest power that keeps the sheath at a limit.

        Parameters
        ----------
        limit_c : float
            Limit of the sheath [°C], -60 to 2000.
        factor : float
            Factor of the temperature rise [dimensionless], 1 to 3, for the error of the model.

        Returns
        -------
        float
            Power of all elements [W].

        Raises
        ------
        InvalidInput
            `limit_c` is outside -60 to 2000, or `factor` outside 1 to 3.

        Notes
        -----
        ``T_air + factor (Ts - T_air) = limit``, with ``Ts`` of ``temperatures``.

        References
        ----------
        carslaw-jaeger : line sources in a solid

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
        """Compute the time until the sheath reaches a limit, starting at air temperature.

        Parameters
        ----------
        power_w : float or array_like
            Power of all elements [W], 0 to 1000000, any shape.
        limit_c : float
            Limit of the sheath [°C], -60 to 2000.
        longest_h : float
            Longest time considered [h], 0.001 to 100000.

        Returns
        -------
        float, numpy.ndarray or pandas.Series
            Time [h], in the shape of `power_w`; inf if the limit is not reached within `longest_h`.

        Raises
        ------
        InvalidInput
            A power is outside 0 to 1000000, `limit_c` outside -60 to 2000, or `longest_h` outside
            0.001 to 100000.

        Notes
        -----
        Solves ``Ts(t) = limit``, with ``Ts`` of ``temperatures``.

        References
        ----------
        carslaw-jaeger : line sources in a solid

        Examples
        --------
        >>> import heatmatch as hm
        >>> bed = hm.assess(hm.Catalog.starter(), hm.demo()).circuit.heat.bed()
        >>> bed.hours_to_limit(2000, limit_c=500) < bed.hours_to_limit(1000, limit_c=500)
        True
        """
        options = {"limit_c": limit_c, "longest_h": longest_h}
        return like(power_w, self._call("hours_to_limit", power_w, **options))
