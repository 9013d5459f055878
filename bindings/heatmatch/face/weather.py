"""Irradiance on the cells and the data of their temperature, row by row."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch._faces import Held
from heatmatch.face.weather_makers import WeatherMakers

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

    _Numbers = npt.NDArray[np.float64]


class Weather(WeatherMakers):
    """Irradiance on the cells and the data of their temperature, row by row.

    Make it with ``from_plane``, ``from_arrays``, ``from_frame``, ``from_months``, ``clear_days`` or
    ``from_installation``, or read a file with ``heatmatch.weather``.

    Notes
    -----
    ``T_cell = base + warming (NOCT - 20) / 800`` [°C] with `base_c` and `heating_irradiance_w_m2`.

    Examples
    --------
    >>> import heatmatch as hm
    >>> len(hm.Weather.from_installation(hm.demo()))
    8760
    """

    __slots__ = ()
    _made_by = "Weather.from_plane, from_arrays, from_frame, from_months or clear_days"

    plane_irradiance_w_m2: Held[_Numbers] = Held(
        "Irradiance that reaches the cells, by row [W/m2]."
    )
    base_c: Held[_Numbers] = Held("Temperature of the cells without sun, by row [°C].")
    heating_irradiance_w_m2: Held[_Numbers] = Held(
        "Irradiance that warms the cells, reduced by wind, by row [W/m2]."
    )
    hours: Held[_Numbers] = Held("Duration of each row [h].")
    month: Held[npt.NDArray[np.uint8]] = Held("Month of each row, 1 to 12; 0 if not known.")
    clear_w_m2: Held[_Numbers | None] = Held(
        "Irradiance under a clear sky, by row [W/m2]; None if not known."
    )
    overcast_w_m2: Held[_Numbers | None] = Held(
        "Irradiance behind a cloud, by row [W/m2]; None if not known."
    )
    rear_w_m2: Held[_Numbers | None] = Held(
        "Mean irradiance on the backs of the panels, by row [W/m2]; None without a site."
    )
    days: Held[_Numbers] = Held(
        "Days of each month that the rows cover, January first, shape (12,) [days]."
    )
    step_hours: Held[float] = Held("Time over which rows are means [h].")
    first_hour: Held[float | None] = Held(
        "Hour of the day by mean solar time at which the first row begins [h]; None if rows have "
        "gaps or the air is not known."
    )
    remarks: Held[list[str]] = Held("Gaps and repairs, counted, in words.")
    assumed: Held[list[str]] = Held("Assumptions, in words.")
    rear_assumed: Held[list[str]] = Held(
        "Assumptions about light on the backs of panels, in words."
    )
    irradiation_kwh_m2: Held[float] = Held("Irradiation on the cells over all rows [kWh/m2].")
    has_sky: Held[bool] = Held("Whether ``on_plane`` gives the weather of other planes.")
    has_cloud_band: Held[bool] = Held("Whether ``split_by_cloud`` gives other rows.")

    def cell_temperature_c(self, *, noct_c: float = 45.0) -> _Numbers:
        """Compute the temperature of the cells of a panel.

        Parameters
        ----------
        noct_c : float
            Nominal operating cell temperature [°C], 20 to 90.

        Returns
        -------
        numpy.ndarray
            Temperature of the cells [°C], shape (rows,).

        Raises
        ------
        InvalidInput
            `noct_c` is out of range.

        Notes
        -----
        ``T_cell = base + warming (NOCT - 20) / 800`` [°C].

        References
        ----------
        ross-1980 : cell temperature from NOCT

        Examples
        --------
        >>> import heatmatch as hm
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> bool(year.cell_temperature_c(noct_c=48).max() > year.base_c.max())
        True
        """
        cells: _Numbers = self._call("cell_temperature_c", noct_c=noct_c)
        return cells

    def on_plane(self, *, tilt_deg: float, azimuth_deg: float) -> Weather:
        """Return the weather on another plane under the same sky.

        Parameters
        ----------
        tilt_deg : float
            Tilt of the plane [deg], 0 flat to 90 upright.
        azimuth_deg : float
            Direction that it faces, clockwise from north [deg], 0 to 360.

        Returns
        -------
        Weather
            The same rows with irradiance and temperature on that plane.

        Raises
        ------
        InvalidInput
            An angle is out of range, or the weather has the sun on one plane only.

        Notes
        -----
        Sky of Hay and Davies, as for the site's plane. ``from_plane`` keeps no sky: use global,
        direct and diffuse irradiance.

        References
        ----------
        hay-davies-1980 : diffuse irradiance on a plane

        Examples
        --------
        >>> import heatmatch as hm
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> east = year.on_plane(tilt_deg=60, azimuth_deg=90)
        >>> east.irradiation_kwh_m2 < year.irradiation_kwh_m2
        True
        """
        made: Weather = self._call("on_plane", tilt_deg=tilt_deg, azimuth_deg=azimuth_deg)
        return made

    def split_by_cloud(self) -> Weather:
        """Split each row into a sunny and an overcast part of the same mean.

        Returns
        -------
        Weather
            The bound of cloud within the step; the same rows if the sky is not known.

        Notes
        -----
        The sunny part of a row has the share ``(G - G_overcast) / (G_clear - G_overcast)`` of its
        hours, so that the mean stays. Temperatures stay those of the mean.

        Examples
        --------
        >>> import heatmatch as hm
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> len(year.split_by_cloud()) > len(year)
        True
        """
        split: Weather = self._call("split_by_cloud")
        return split

    def with_rear_irradiance(self, share: float) -> Weather:
        """Add the light on the backs of bifacial panels.

        Parameters
        ----------
        share : float
            Bifaciality: current from light on the back over that from equal light in front, 0 to 1.

        Returns
        -------
        Weather
            The same rows with more irradiance.

        Raises
        ------
        InvalidInput
            `share` is out of range.

        Notes
        -----
        ``G = G_front + share G_rear`` [W/m2].

        References
        ----------
        marion-2017 : light behind a row of panels
        anderson-2024 : view factors

        Examples
        --------
        >>> import heatmatch as hm
        >>> year = hm.Weather.from_installation(hm.demo())
        >>> year.with_rear_irradiance(0.7).irradiation_kwh_m2 > year.irradiation_kwh_m2
        True
        """
        made: Weather = self._call("with_rear_irradiance", share)
        return made

    def __len__(self) -> int:
        return len(self._core)
