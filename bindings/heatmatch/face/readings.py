"""Meter readings, in order."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from heatmatch._faces import Face, Held, call
from heatmatch.io import meters

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch.text.sentence import Sentence


class Readings(Face):
    """Meter readings, in order, from ``from_csv``, ``from_rows`` or ``from_frame``.

    Examples
    --------
    >>> import heatmatch as hm
    >>> len(hm.Readings.from_rows([{"bank_v": "66.9 V", "bank_a": 2.33}]))
    1
    """

    __slots__ = ()
    _made_by = "Readings.from_csv, from_rows or from_frame"

    rows: Held[list[dict[str, float]]] = Held(
        "Readings of each row by name, in the unit of the name."
    )
    remarks: Held[list[Sentence]] = Held("Readings left out, counted, in words.")

    @staticmethod
    def from_csv(text_or_path: str | os.PathLike[str], /) -> Readings:
        """Read meter readings from CSV.

        Parameters
        ----------
        text_or_path : str or os.PathLike
            A path, or text with more than one line.

        Returns
        -------
        Readings
            One row per line.

        Raises
        ------
        FileError
            The file cannot be read.
        InvalidInput
            A column or a cell is not understood; it is named.

        Notes
        -----
        Columns: ``unix_time_s`` [s], ``irradiance_w_m2`` [W/m2], ``panel_temperature_c`` [°C],
        ``array_v`` [V], ``bank_v`` [V], ``bank_a`` [A], ``open_v`` [V], ``short_a`` [A],
        ``element_ohm`` [ohm], ``bank_ohm`` [ohm], ``sheath_c`` [°C], ``store_c`` [°C] and ``air_c``
        [°C], in any order. Cells may have a unit. ``nan`` is a failed reading, ``OL`` a resistance
        beyond the range of the meter; empty cells were not measured.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Readings.from_csv("bank_v,bank_a\\n66.9,2.33\\n").rows[0]["bank_v"]
        66.9
        """
        made: Readings = call(Readings._compiled.from_csv, text_or_path)
        return made

    @staticmethod
    def from_rows(rows: Sequence[Mapping[str, float | str | None]]) -> Readings:
        """Convert mappings to readings, one row each.

        Parameters
        ----------
        rows : sequence of mappings
            Names as in ``from_csv``; numbers in the unit of their name, or texts with a unit. None
            and nan were not measured, an infinite resistance is an open circuit.

        Returns
        -------
        Readings
            The same rows.

        Raises
        ------
        InvalidInput
            A column or a cell is not understood; it is named.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Readings.from_rows([{"bank_v": "66.9 V", "bank_a": 2.33}]).rows[0]["bank_a"]
        2.33
        """
        return meters.readings_from_rows(rows)

    @staticmethod
    def from_frame(frame: _pd.DataFrame) -> Readings:
        """Convert a data frame to readings, one row each.

        Parameters
        ----------
        frame : pandas.DataFrame
            Columns named as in ``from_csv``. An index of times must have a time zone.

        Returns
        -------
        Readings
            The same rows; times are seconds since 1970, UTC.

        Raises
        ------
        InvalidInput
            A column or cell is not understood (it is named), or the index lacks a time zone.
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> import pandas as pd
        >>> len(hm.Readings.from_frame(pd.DataFrame({"bank_v": [66.9], "bank_a": [2.33]})))
        1
        """
        return meters.readings_from_frame(frame)

    def __len__(self) -> int:
        return len(self._core)
