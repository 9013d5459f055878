"""Years of hours that are made for a site: from twelve monthly means, or without a cloud."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch._faces import Face, call, compiled_class

if TYPE_CHECKING:
    import numpy.typing as npt

    from heatmatch._core import Site
    from heatmatch.face.weather import Weather


class WeatherYears(Face):
    """Static methods that make a year of ``Weather`` for a site."""

    __slots__ = ()

    @staticmethod
    def from_months(
        site: Site,
        sun_hours: npt.ArrayLike,
        temp_min_c: npt.ArrayLike,
        temp_max_c: npt.ArrayLike,
    ) -> Weather:
        """Make a year of hours from twelve monthly means.

        Parameters
        ----------
        site : Site
            Needs latitude and tilt.
        sun_hours : array_like
            Daily irradiation on the plane of the panels [kWh/m2], shape (12,), January first.
        temp_min_c, temp_max_c : array_like
            Daily low and high of the air [°C], shape (12,).

        Returns
        -------
        Weather
            8760 hours.

        Raises
        ------
        InvalidInput
            The site lacks a value, or no sky gives a month's irradiation.

        Notes
        -----
        Skies as those of ``MonthlySky``; the light of each hour on the panels as in
        ``plane_irradiance``. Air temperature varies between its low and high; wind is that of NOCT.

        References
        ----------
        suehrcke-2000 : share of clear days in a month
        erbs-1982 : split of GHI

        Examples
        --------
        >>> import heatmatch as hm
        >>> place = hm.demo()
        >>> year = hm.Weather.from_months(place.site, **place.weather.to_dict())
        >>> len(year)
        8760
        """
        return _year("from_months", site, sun_hours, temp_min_c, temp_max_c)

    @staticmethod
    def clear_days(
        site: Site,
        *,
        temp_min_c: npt.ArrayLike | None = None,
        temp_max_c: npt.ArrayLike | None = None,
    ) -> Weather:
        """Make a year of hours without a cloud.

        Parameters
        ----------
        site : Site
            Needs latitude and tilt.
        temp_min_c, temp_max_c : array_like, optional
            Daily low and high of the air [°C], shape (12,); 10 °C by default.

        Returns
        -------
        Weather
            8760 hours.

        Raises
        ------
        InvalidInput
            The site lacks a value, or one of the two temperatures is missing.

        Notes
        -----
        Irradiance as in ``clear_sky`` and ``plane_irradiance``, without any cloud. Snow and cloud
        edges can add to it.

        References
        ----------
        ineichen-perez-2002 : clear sky

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Weather.clear_days(hm.demo().site).irradiation_kwh_m2 > 1000
        True
        """
        return _year("clear_days", site, temp_min_c=temp_min_c, temp_max_c=temp_max_c)


def _year(maker: str, *arguments: object, **options: object) -> Weather:
    made: Weather = call(getattr(compiled_class("Weather"), maker), *arguments, **options)
    return made
