"""Arrays of equal and of unlike panels."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, overload

from heatmatch import _core
from heatmatch._faces import FACES, Face, call, compiled_call, compiled_class
from heatmatch.errors import InvalidInput

if TYPE_CHECKING:
    from heatmatch._core import ArrayCurve, MixedArrayCurve, Panel, SingleDiode, StringPanel

_EQUAL = compiled_class("Array")


class Array(Face):
    """Panels in series and parallel, equal or unlike.

    Parameters
    ----------
    strings : sequence of sequence of StringPanel, Panel or SingleDiode
        The panels of each string, from one end to the other; the strings are in parallel.
    blocking_v : float or sequence of (float or None), optional
        Voltage across the conducting blocking diode of every string, or of each [V]; None for a
        string without one.

    Raises
    ------
    InvalidInput
        There is no string, a string has no panel, or a number is out of range.

    Notes
    -----
    In a string voltages add at equal current, and a bypass diode holds its substring at -0.5 V.
    Across strings currents add at equal voltage, reverse current through a dark or short string
    included. Points are solved, not sampled.

    See Also
    --------
    StringPanel : Bypass diodes of a panel.
    Array.uniform : Equal panels, faster.

    Examples
    --------
    >>> import heatmatch as hm
    >>> panels = hm.Catalog.starter().panels
    >>> barn, porch = panels["silicon-60-cell-245"], panels["silicon-36-cell-90"]
    >>> array = hm.Array([[barn, barn], [porch, porch, porch, porch]])
    >>> curve = array.at(irradiance_w_m2=600, cell_temperature_c=35)
    >>> curve.maximum_power().power_w < curve.sum_of_maxima_w
    True
    """

    __slots__ = ()

    def __init__(
        self,
        strings: Sequence[Sequence[StringPanel | Panel | SingleDiode]],
        *,
        blocking_v: float | Sequence[float | None] | None = None,
    ) -> None:
        if not all(isinstance(string, (list, tuple)) for string in strings):
            raise _refused("strings", "panels", "a list of lists: [[a, b], [c]]")
        made = [[_string_panel(panel) for panel in string] for string in strings]
        if blocking_v is None or isinstance(blocking_v, (int, float)):
            drops: list[float | None] = [blocking_v] * len(made)
        else:
            drops = list(blocking_v)
        if len(drops) != len(made):
            raise _refused("blocking_v", f"{len(drops)} numbers", f"{len(made)}, one a string")
        self._hold(compiled_call(_core.MixedArray, made, drops))

    @staticmethod
    def uniform(panel: SingleDiode | Panel, *, series: int = 1, parallel: int = 1) -> Array:
        """Make an array of equal panels.

        Parameters
        ----------
        panel : SingleDiode or Panel
            One of the panels; a Panel is fitted to its label first.
        series : int
            Panels in series in each string, 1 or more.
        parallel : int
            Strings in parallel, 1 or more.

        Returns
        -------
        Array
            The array.

        Raises
        ------
        InvalidInput
            A count is below 1, or no diode has the label of `panel`.

        See Also
        --------
        fit_single_diode : How a label is fitted.

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
        >>> array = hm.Array.uniform(panel, series=2)
        >>> curve = array.at(irradiance_w_m2=600, cell_temperature_c=35)
        >>> print(f"{curve.into_resistance(12.0).power_w:.0f} W")
        284 W
        """
        made: Array = call(_EQUAL.uniform, panel, series=series, parallel=parallel)
        return made

    @property
    def panel(self) -> SingleDiode:
        """One of the equal panels, as a single diode."""
        return self._of_equal("panel")  # type: ignore[no-any-return]

    @property
    def series(self) -> int:
        """Number of panels in series in each string, of an array of equal panels."""
        return self._of_equal("series")  # type: ignore[no-any-return]

    @property
    def parallel(self) -> int:
        """Number of strings in parallel."""
        return len(self.strings) if self._mixed else self._of_equal("parallel")

    @property
    def strings(self) -> list[list[StringPanel]]:
        """Panels of each string; for equal panels without bypass diodes."""
        if self._mixed:
            return self._core.strings  # type: ignore[no-any-return]
        one = _core.StringPanel(self._core.panel, bypass=False)
        return [[one] * self._core.series for _ in range(self._core.parallel)]

    @overload
    def at(self, *, irradiance_w_m2: float, cell_temperature_c: float) -> ArrayCurve: ...
    @overload
    def at(
        self,
        *,
        irradiance_w_m2: float | Sequence[float],
        cell_temperature_c: float | Sequence[float],
        shade: Sequence[Sequence[float] | None] | None = ...,
    ) -> Any: ...
    def at(
        self,
        *,
        irradiance_w_m2: float | Sequence[float],
        cell_temperature_c: float | Sequence[float],
        shade: Sequence[Sequence[float] | None] | None = None,
    ) -> ArrayCurve | MixedArrayCurve:
        """Compute the I-V curve with the irradiance and temperature of each panel.

        Parameters
        ----------
        irradiance_w_m2 : float or sequence of float
            Irradiance on all cells, or on each panel [W/m2], 0 to 2000; the panels in one flat
            list, string by string. For an array of `uniform` one number, 0 to 3000.
        cell_temperature_c : float or sequence of float
            Cell temperature of all panels or of each [°C], -90 to 150.
        shade : sequence of (sequence of float or None), optional
            For each panel, in the same order, the share of light that each of its substrings
            loses, 0 to 1; None for a panel without shade.

        Returns
        -------
        ArrayCurve or MixedArrayCurve
            The I-V curve; an ArrayCurve for an array of ``uniform``.

        Raises
        ------
        InvalidInput
            A condition is out of range, or there is another number of them than of panels.

        Notes
        -----
        A shaded substring has its panel's irradiance times (1 - shade). Valid for cells from -60
        to 110 °C.

        References
        ----------
        de-soto-2006 : single-diode model

        Examples
        --------
        >>> import heatmatch as hm
        >>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
        >>> array = hm.Array([[panel, panel]])
        >>> shaded = array.at(
        ...     irradiance_w_m2=800, cell_temperature_c=40, shade=[None, [0.9, 0, 0]]
        ... )
        >>> print(f"{shaded.into_resistance(8.0).power_w:.0f} W")
        296 W
        """
        if not self._mixed:
            if shade is not None or not _is_number(irradiance_w_m2, cell_temperature_c):
                allowed = "one number for equal panels; Array([[...]]) accepts one for each panel"
                raise _refused("irradiance_w_m2, cell_temperature_c, shade", "several", allowed)
            return call(  # type: ignore[no-any-return]
                self._core.at, irradiance_w_m2=irradiance_w_m2,
                cell_temperature_c=cell_temperature_c,
            )  # fmt: skip
        count = sum(map(len, self._core.strings))
        sun = _each("irradiance_w_m2", irradiance_w_m2, count)
        cell = _each("cell_temperature_c", cell_temperature_c, count)
        if shade is not None and not all(one is None or _is_list(one) for one in shade):
            raise _refused("shade", "numbers", "one list, or None, a panel: [None, [0.5, 0, 0]]")
        lost = [[]] * count if shade is None else [list(one or ()) for one in shade]
        if len(lost) != count:
            raise _refused("shade", f"{len(lost)} panels", f"{count}, one a panel")
        return call(self._core.at, sun, cell, lost)  # type: ignore[no-any-return]

    @property
    def _mixed(self) -> bool:
        """Whether its panels are listed one by one."""
        return isinstance(self._core, _core.MixedArray)

    def _of_equal(self, name: str) -> Any:
        if self._mixed:
            raise AttributeError(f"Array.{name} is of equal panels; this array has strings")
        return getattr(self._core, name)

    def __getstate__(self) -> object:
        return self._mixed, self._core.__getstate__()

    def __setstate__(self, state: Any) -> None:
        mixed, plain = state
        made = _core.MixedArray if mixed else _EQUAL
        compiled = made.__new__(made)
        compiled.__setstate__(plain)
        self._hold(compiled)


FACES[_core.MixedArray] = Array


def _string_panel(panel: Any) -> Any:
    return panel if isinstance(panel, _core.StringPanel) else call(_core.StringPanel, panel)


def _is_number(*values: object) -> bool:
    return all(isinstance(value, (int, float)) or not hasattr(value, "__len__") for value in values)


def _is_list(value: object) -> bool:
    return hasattr(value, "__len__") and not isinstance(value, str)


def _each(name: str, given: float | Sequence[float], count: int) -> list[float]:
    if _is_number(given):
        return [float(given)] * count  # type: ignore[arg-type]
    if not all(_is_number(number) for number in given):  # type: ignore[union-attr]
        raise _refused(name, "lists", f"one number, or a flat list of {count}: one a panel")
    numbers = [float(number) for number in given]  # type: ignore[union-attr]
    if len(numbers) != count:
        raise _refused(name, f"{len(numbers)} numbers", f"one, or {count}: one a panel")
    return numbers


def _refused(field: str, value: str, allowed: str) -> InvalidInput:
    message = f"array: {field} = {value} must be {allowed}"
    return InvalidInput(message, "array", field, value, allowed, "")
