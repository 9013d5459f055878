"""Temperatures of a store and the power that it absorbed."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from heatmatch._faces import Face, Held, call
from heatmatch.io import frames_day

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt
    import pandas as _pd

    from heatmatch._core import Probe
    from heatmatch.face.candidate import Candidate

    _Numbers = npt.NDArray[np.float64]


class StoreLog(Face):
    """Temperatures of a store and the power that it absorbed, from ``from_csv`` or ``from_frame``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> log = hm.StoreLog.from_csv("hours,power_w,air_c,wall_c\\n0,0,15,15\\n1,300,15,16\\n")
    >>> log.readings
    2
    """

    __slots__ = ()
    _made_by = "StoreLog.from_csv or from_frame"

    hours: Held[_Numbers] = Held("Time of each row [h].")
    power_w: Held[_Numbers] = Held("Power into the bank, mean since the row before [W].")
    air_c: Held[_Numbers] = Held("Temperature of the air around the store, by row [°C].")
    probes: Held[list[Probe]] = Held("Places of the thermometers.")
    temperature_c: Held[list[_Numbers]] = Held(
        "Temperature of each probe, by row [°C]; nan if not read."
    )
    readings: Held[int] = Held("Number of temperatures read.")
    remarks: Held[list[str]] = Held("Rows and readings left out, in words.")

    @staticmethod
    def from_csv(text_or_path: str | os.PathLike[str], /) -> StoreLog:
        """Read the log of a store from CSV.

        Parameters
        ----------
        text_or_path : str or os.PathLike
            A path, or text with more than one line.

        Returns
        -------
        StoreLog
            One row per line.

        Raises
        ------
        FileError
            The file cannot be read.
        InvalidInput
            A column or a cell is not understood; it is named.

        Notes
        -----
        Columns: ``hours`` [h] since any beginning, ``power_w`` [W] into the bank, mean since the
        row before, ``air_c`` [°C] around the store, and one for each probe [°C]: ``wall_c``,
        ``lid_c``, ``sheath_c``, or ``bed_c@0.12,0.40`` with radius and height [m]. Empty cells were
        not read.

        Examples
        --------
        >>> import heatmatch as hm
        >>> len(hm.StoreLog.from_csv("hours,power_w,air_c,wall_c\\n0,0,15,15\\n1,300,15,16\\n"))
        2
        """
        made: StoreLog = call(StoreLog._compiled.from_csv, text_or_path)
        return made

    @staticmethod
    def from_frame(frame: _pd.DataFrame) -> StoreLog:
        """Convert a data frame to the log of a store.

        Parameters
        ----------
        frame : pandas.DataFrame
            Columns `power_w` (into the bank, mean since the row before [W]), `air_c` (around the
            store [°C]), and one per probe: `wall_c`, `lid_c`, `sheath_c`, or ``bed_c@0.12,0.40``
            (radius and height [m]); missing values were not read. Time is a column `hours` [h], or
            an index of dates and times.

        Returns
        -------
        StoreLog
            The same rows.

        Raises
        ------
        InvalidInput
            A column or row cannot be used; it is named.
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> import pandas as pd
        >>> rows = {"hours": [0, 1], "power_w": [0, 300], "air_c": 15.0, "wall_c": [15.0, 16.0]}
        >>> hm.StoreLog.from_frame(pd.DataFrame(rows)).readings
        2
        """
        return frames_day.log_from_frame(frame)

    @staticmethod
    def first_fire(candidate: Candidate) -> list[str]:
        """List the steps of a first heating for a log.

        Parameters
        ----------
        candidate : Candidate
            The circuit.

        Returns
        -------
        list of str
            Steps, in order.

        Raises
        ------
        InvalidInput
            No store is described, or its fill is a liquid.

        Examples
        --------
        >>> import heatmatch as hm
        >>> len(hm.StoreLog.first_fire(hm.assess(hm.Catalog.starter(), hm.demo()))) > 2
        True
        """
        steps: list[str] = call(StoreLog._compiled.first_fire, candidate)
        return steps

    def __len__(self) -> int:
        return len(self._core)
