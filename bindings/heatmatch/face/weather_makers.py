"""Sources of weather: arrays, data frames, an installation's twelve means."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import weather
from heatmatch._faces import call, compiled_class
from heatmatch.face.weather_years import WeatherYears
from heatmatch.io import weather_frame

if TYPE_CHECKING:
    import numpy.typing as npt
    import pandas as _pd

    from heatmatch._core import Site
    from heatmatch.face.installation import Installation
    from heatmatch.face.weather import Weather


class WeatherMakers(WeatherYears):
    """Static methods that make a ``Weather``."""

    __slots__ = ()

    @staticmethod
    def from_plane(
        plane_irradiance_w_m2: npt.ArrayLike,
        cell_temperature_c: npt.ArrayLike,
        hours_per_row: float,
        *,
        month: npt.ArrayLike | None = None,
    ) -> Weather:
        """Make weather from irradiance on the cells and their temperature.

        Parameters
        ----------
        plane_irradiance_w_m2 : array_like
            Irradiance on the cells [W/m2], shape (rows,).
        cell_temperature_c : array_like
            Temperature of the cells [°C], shape (rows,).
        hours_per_row : float
            Duration of a row [h].
        month : array_like, optional
            Month of each row, 1 to 12. Without it, rows of a whole year begin on January 1st.

        Returns
        -------
        Weather
            The same rows.

        Raises
        ------
        InvalidInput
            Arrays differ in length, or a value is out of range.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Weather.from_plane([0.0, 500.0], [-5.0, 10.0], 1.0).irradiation_kwh_m2
        0.5
        """
        return _made(
            "from_plane", plane_irradiance_w_m2, cell_temperature_c, hours_per_row, month=month
        )

    @staticmethod
    def from_arrays(
        site: Site,
        unix_time_s: npt.ArrayLike,
        air_c: npt.ArrayLike,
        *,
        ghi_w_m2: npt.ArrayLike | None = None,
        dni_w_m2: npt.ArrayLike | None = None,
        dhi_w_m2: npt.ArrayLike | None = None,
        wind_m_s: npt.ArrayLike | None = None,
        label: str | float = "left",
        wind_height_m: float = 10.0,
    ) -> Weather:
        """Convert arrays of sun and air to weather on a site's panels.

        Parameters
        ----------
        site : Site
            Needs latitude, longitude and tilt.
        unix_time_s : array_like
            Time since 1970, UTC, rising in steps of 1 minute to 1 hour [s], shape (rows,).
        air_c : array_like
            Temperature of the air [°C], shape (rows,).
        ghi_w_m2, dni_w_m2, dhi_w_m2 : array_like, optional
            Global, direct and diffuse irradiance [W/m2]; two of them, or global alone, are enough.
        wind_m_s : array_like, optional
            Wind speed [m/s], shape (rows,).
        label : {"left", "center", "right"} or float
            Place of a row's time in its step: "left" is 0, the start; "right" is 1, the end.
        wind_height_m : float
            Height of the wind measurement [m], 0.1 to 300.

        Returns
        -------
        Weather
            Gaps and repairs are counted in ``remarks``.

        Raises
        ------
        InvalidInput
            A reading is out of range, or an array, the site or an option is wrong.

        See Also
        --------
        heatmatch.weather.from_frame : Equations.

        References
        ----------
        erbs-1982 : split of GHI
        fao-56 : wind at 2 m

        Examples
        --------
        >>> import heatmatch as hm
        >>> import numpy as np
        >>> site = hm.Site(latitude_deg=45, longitude_deg=0, tilt_deg=60, record_low_c=-20)
        >>> noon = 1_750_161_600  # 2025-06-17 12:00 UTC
        >>> hours = hm.Weather.from_arrays(
        ...     site, noon + 3600 * np.arange(3), np.full(3, 20.0), ghi_w_m2=[800.0, 780.0, 700.0]
        ... )
        >>> len(hours)
        3
        """
        return _made(
            "from_arrays", site, unix_time_s, air_c, ghi_w_m2=ghi_w_m2, dni_w_m2=dni_w_m2,
            dhi_w_m2=dhi_w_m2, wind_m_s=wind_m_s, label=label, wind_height_m=wind_height_m,
        )  # fmt: skip

    @staticmethod
    def from_frame(
        frame: _pd.DataFrame,
        site: Site,
        *,
        label: str | float = "left",
        wind_height_m: float = 10.0,
    ) -> Weather:
        """Convert a data frame of sun and air to weather on a site's panels.

        Parameters
        ----------
        frame : pandas.DataFrame
            Index of times with a time zone, rising. Columns ``ghi``, or ``dni`` and ``dhi``
            [W/m2], or all three; ``temp_air`` [°C]; optional ``wind_speed`` [m/s].
        site : Site
            Needs latitude, longitude and tilt.
        label : {"left", "center", "right"} or float
            Place of a row's time in its step: "left" is 0, the start; "right" is 1, the end.
        wind_height_m : float
            Height of the wind measurement [m], 0.1 to 300.

        Returns
        -------
        Weather
            Gaps and repairs are counted in ``remarks``.

        Raises
        ------
        InvalidInput
            A reading is out of range, or a column, the index, the site or an option is wrong.
        ImportError
            pandas is not installed.

        See Also
        --------
        heatmatch.weather.from_frame : The same, with equations.

        Examples
        --------
        >>> import heatmatch as hm
        >>> import pandas as pd
        >>> site = hm.Site(latitude_deg=45, longitude_deg=0, tilt_deg=60, record_low_c=-20)
        >>> times = pd.date_range("2025-06-17 12:00", periods=3, freq="h", tz="UTC")
        >>> frame = pd.DataFrame({"ghi": [800.0, 780.0, 700.0], "temp_air": 20.0}, index=times)
        >>> len(hm.Weather.from_frame(frame, site))
        3
        """
        return weather_frame.from_frame(frame, site, label=label, wind_height_m=wind_height_m)

    @staticmethod
    def from_installation(installation: Installation) -> Weather:
        """Make weather on an installation's panels from its twelve monthly means.

        Parameters
        ----------
        installation : Installation
            Needs ``weather``, and a site with latitude and tilt.

        Returns
        -------
        Weather
            One year of hours.

        Raises
        ------
        InvalidInput
            The installation has no monthly means, its site lacks a value, or no sky gives a
            month's irradiation.

        See Also
        --------
        heatmatch.weather.from_installation : The same, with references.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Weather.from_installation(hm.demo()).hours.shape
        (8760,)
        """
        return weather.from_installation(installation)


def _made(maker: str, *arguments: object, **options: object) -> Weather:
    made: Weather = call(getattr(compiled_class("Weather"), maker), *arguments, **options)
    return made
