"""Exports of a catalog as files and text, and the history of its changes."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from heatmatch._faces import Face

if TYPE_CHECKING:
    from heatmatch._core import HistoryEntry

    _Path = str | os.PathLike[str]


class CatalogExports(Face):
    """Exports, copies and history of a catalog."""

    __slots__ = ()

    def history(self) -> list[HistoryEntry]:
        """Return all changes of the file, oldest first.

        Returns
        -------
        list of HistoryEntry
            One entry per call; an import is one.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Catalog.starter().history()
        []
        """
        entries: list[HistoryEntry] = self._call("history")
        return entries

    def undo(self, number: int | None = None, /) -> HistoryEntry:
        """Undo a change, as a new entry of the history.

        Parameters
        ----------
        number : int, optional
            Number of the entry; by default the newest that is not undone.

        Returns
        -------
        HistoryEntry
            The new entry.

        Raises
        ------
        CatalogError
            The rows have changed since, or the entry is undone already.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         _ = catalog.edit("panel", "cdte-100", price_low=20)
        ...         catalog.undo().undoes
        1
        """
        entry: HistoryEntry = self._call("undo", number)
        return entry

    def save_copy(self, path: _Path, /) -> None:
        """Write a consistent copy of the file.

        Parameters
        ----------
        path : str or os.PathLike
            New file; an existing one is not replaced.

        Raises
        ------
        FileError
            The file exists or cannot be written.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.save_copy(os.path.join(folder, "copy.heatmatch"))
        ...         os.path.exists(os.path.join(folder, "copy.heatmatch"))
        True
        """
        self._call("save_copy", path)

    def export_json(self, path: _Path, /, *, force: bool = False) -> None:
        """Write the user's own parts and removals to a JSON file.

        Parameters
        ----------
        path : str or os.PathLike
            The file.
        force : bool
            Replace a file that exists; a catalog is never replaced.

        Raises
        ------
        FileError
            The file exists or cannot be written.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         _ = catalog.edit("panel", "cdte-100", price_low=20)
        ...         catalog.export_json(os.path.join(folder, "mine.json"))
        ...         os.path.exists(os.path.join(folder, "mine.json"))
        True
        """
        self._call("export_json", path, force=force)

    def export_json_text(self) -> str:
        """Return the user's own parts and removals as JSON text.

        Returns
        -------
        str
            What ``import_json_text`` reads.

        Examples
        --------
        >>> import heatmatch as hm
        >>> import json
        >>> own = json.loads(hm.Catalog.starter().export_json_text())
        >>> "panels" in own  # the starter holds no part of the user's own
        False
        """
        return str(self._core.export_json_text())

    def export_all_json_text(self) -> str:
        """Return all parts as JSON text, including those of the starter.

        Returns
        -------
        str
            JSON, one list per kind.

        Examples
        --------
        >>> import heatmatch as hm
        >>> import json
        >>> catalog = hm.Catalog.starter()
        >>> len(json.loads(catalog.export_all_json_text())["panels"]) == len(catalog.panels)
        True
        """
        return str(self._core.export_all_json_text())
