"""Hourly skies of a year, from twelve monthly sums."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch._faces import Face, Held, compiled_call
from heatmatch.face.weather import Weather

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    from heatmatch._core import Site


class MonthlySky(Face):
    """Hourly skies of a year that give a site's panels their twelve monthly sums.

    Irradiance on panels of another tilt follows from the same skies.

    Parameters
    ----------
    site : Site
        Needs latitude and tilt.
    sun_hours : array_like
        Daily irradiation on the plane of the panels [kWh/m2], shape (12,), January first.
    temp_min_c, temp_max_c : array_like
        Daily low and high of the air [°C], shape (12,).

    Raises
    ------
    InvalidInput
        The site lacks a value, or no sky gives a month's irradiation.

    Notes
    -----
    The mean sky index of each month is found so that the hours sum to the given value. The index
    is global irradiance over that of a clear sky. A share of the days is clear; the others are
    cloudy, each at one index all day. Not represented: months that are clouded at certain hours,
    such as morning fog. Skies are uncertain in months with little sun on the plane.

    References
    ----------
    suehrcke-2000 : share of clear days
    bendt-1981 : distribution of daily clearness
    ineichen-perez-2002 : clear sky
    erbs-1982 : diffuse share

    Examples
    --------
    >>> import heatmatch as hm
    >>> place = hm.demo()
    >>> sky = hm.MonthlySky(place.site, **place.weather.to_dict())
    >>> bool(sky.sun_hours(tilt_deg=0)[0] < sky.sun_hours()[0])
    True
    """

    __slots__ = ()

    def __init__(
        self,
        site: Site,
        sun_hours: npt.ArrayLike,
        temp_min_c: npt.ArrayLike,
        temp_max_c: npt.ArrayLike,
    ) -> None:
        made = self._compiled
        self._hold(compiled_call(made, site, sun_hours, temp_min_c, temp_max_c))

    site: Held[Site] = Held("Site whose panels have those sums.")

    def weather(
        self, *, tilt_deg: float | None = None, azimuth_deg: float | None = None
    ) -> Weather:
        """Compute a year of hours on panels of a tilt and azimuth.

        Parameters
        ----------
        tilt_deg : float, optional
            Tilt [deg]; that of the site by default.
        azimuth_deg : float, optional
            Azimuth [deg], 180 is south; that of the site by default.

        Returns
        -------
        Weather
            8760 hours.

        Raises
        ------
        InvalidInput
            An angle is out of range.

        Notes
        -----
        Irradiance of each hour as in ``plane_irradiance``, behind the glass of the panels.

        References
        ----------
        hay-davies-1980 : sky with light around the sun
        ross-1980 : cell temperature

        Examples
        --------
        >>> import heatmatch as hm
        >>> place = hm.demo()
        >>> sky = hm.MonthlySky(place.site, **place.weather.to_dict())
        >>> len(sky.weather(tilt_deg=30))
        8760
        """
        made: Weather = self._call("weather", tilt_deg=tilt_deg, azimuth_deg=azimuth_deg)
        return made

    def sun_hours(
        self, *, tilt_deg: float | None = None, azimuth_deg: float | None = None
    ) -> npt.NDArray[np.float64]:
        """Compute the mean daily irradiation on panels of a tilt and azimuth.

        Parameters
        ----------
        tilt_deg : float, optional
            Tilt [deg]; that of the site by default.
        azimuth_deg : float, optional
            Azimuth [deg], 180 is south; that of the site by default.

        Returns
        -------
        numpy.ndarray
            Daily irradiation [kWh/m2], shape (12,), January first.

        Raises
        ------
        InvalidInput
            An angle is out of range.

        Notes
        -----
        Sum of ``beam + circumsolar + sky + ground`` of ``plane_irradiance`` before the glass, over
        the days of the month.

        References
        ----------
        hay-davies-1980 : sky with light around the sun

        Examples
        --------
        >>> import heatmatch as hm
        >>> place = hm.demo()
        >>> sky = hm.MonthlySky(place.site, **place.weather.to_dict())
        >>> sky.sun_hours(tilt_deg=30).shape
        (12,)
        """
        sums: npt.NDArray[np.float64] = self._call(
            "sun_hours", tilt_deg=tilt_deg, azimuth_deg=azimuth_deg
        )
        return sums
