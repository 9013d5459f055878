"""The parts of one kind, as a mapping from id."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from heatmatch._faces import Face, Held
from heatmatch.io import frames

if TYPE_CHECKING:
    import pandas as _pd


class PartsView(Face):
    """The parts of one kind, as a mapping from id.

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.Catalog.starter().panels["cdte-100"].technology
    'CdTe'
    """

    __slots__ = ()
    _made_by = "Catalog.panels, elements and so on"

    kind: Held[str] = Held("Kind of part.")

    def keys(self) -> list[str]:
        """Return the ids in order.

        Returns
        -------
        list of str
            Ids.

        Examples
        --------
        >>> import heatmatch as hm
        >>> "cdte-100" in hm.Catalog.starter().panels.keys()
        True
        """
        return list(self._core.keys())

    def values(self) -> list[Any]:
        """Return the parts in the order of their ids.

        Returns
        -------
        list
            Parts of that kind.

        Examples
        --------
        >>> import heatmatch as hm
        >>> alloys = hm.Catalog.starter().alloys.values()
        >>> [alloy.id for alloy in alloys if alloy.fixed_resistance is False]
        ['carbon-polymer', 'ptc-ceramic', 'tungsten']
        """
        return list(self._core.values())

    def items(self) -> list[tuple[str, Any]]:
        """Return pairs of id and part.

        Returns
        -------
        list of tuple
            Pairs in the order of the ids.

        Examples
        --------
        >>> import heatmatch as hm
        >>> dict(hm.Catalog.starter().panels.items())["cdte-100"].technology
        'CdTe'
        """
        return list(self._core.items())

    def get(self, id: str, default: Any = None, /) -> Any:
        """Return the part of an id, or a default.

        Parameters
        ----------
        id : str
            Id of the part.
        default : object
            Result if there is no such part.

        Returns
        -------
        object
            The part, or `default`.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Catalog.starter().panels.get("nobody") is None
        True
        """
        return self._call("get", id, default)

    def to_frame(self) -> _pd.DataFrame:
        """Return the parts as a data frame with the id as index.

        Returns
        -------
        pandas.DataFrame
            Shape (parts, fields); unknown fields are missing.

        Raises
        ------
        ImportError
            pandas is not installed.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Catalog.starter().panels.to_frame().index.name
        'id'
        """
        return frames.parts_to_frame(self)

    def __getitem__(self, id: str, /) -> Any:
        return self._call("__getitem__", id)

    def __len__(self) -> int:
        return len(self._core)

    def __contains__(self, id: object, /) -> bool:
        return id in self._core

    def __iter__(self) -> Iterator[str]:
        return iter(self._core)
