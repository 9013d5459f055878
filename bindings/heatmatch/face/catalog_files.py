"""What goes into a catalog and out of it as files, text and frames."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from heatmatch._faces import Face
from heatmatch.io import frames

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch._core import HistoryEntry, ImportReport

    _Path = str | os.PathLike[str]


class CatalogFiles(Face):
    """Imports, exports and history of a catalog."""

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
        """
        entry: HistoryEntry = self._call("undo", number)
        return entry

    def save_copy(self, path: _Path, /) -> None:
        """Write a consistent copy of the file.

        Parameters
        ----------
        path : str or os.PathLike
            The new file; nothing is replaced.

        Raises
        ------
        FileError
            The file exists or cannot be written.
        """
        self._call("save_copy", path)

    def import_json(self, path: _Path, /, *, keep_good: bool = False) -> ImportReport:
        """Add or replace parts from a JSON file.

        Parameters
        ----------
        path : str or os.PathLike
            The file, as ``export_json`` writes it.
        keep_good : bool
            Leave refused rows out and report them, instead of refusing all.

        Returns
        -------
        ImportReport
            What was added, replaced, removed and refused.

        Raises
        ------
        FileError
            The file cannot be read.
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.
        """
        report: ImportReport = self._call("import_json", path, keep_good=keep_good)
        return report

    def import_json_text(self, text: str, /, *, keep_good: bool = False) -> ImportReport:
        """Add or replace parts from JSON text.

        Parameters
        ----------
        text : str
            What ``export_json_text`` returns.
        keep_good : bool
            Leave refused rows out and report them, instead of refusing all.

        Returns
        -------
        ImportReport
            What was added, replaced, removed and refused.

        Raises
        ------
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.
        """
        report: ImportReport = self._call("import_json_text", text, keep_good=keep_good)
        return report

    def import_csv_text(
        self,
        kind: str,
        text: str,
        /,
        *,
        origin: str = "CSV",
        keep_good: bool = False,
        number_records: bool = False,
    ) -> ImportReport:
        """Add or replace parts of one kind from CSV text.

        Parameters
        ----------
        kind : str
            Kind of part, such as "panel".
        text : str
            The header names fields.
        origin : str
            Name of the text in the history.
        keep_good : bool
            Leave refused rows out and report them, instead of refusing all.
        number_records : bool
            Count records instead of lines in the report.

        Returns
        -------
        ImportReport
            What was added, replaced and refused.

        Raises
        ------
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.
        """
        options = {"origin": origin, "keep_good": keep_good, "number_records": number_records}
        report: ImportReport = self._call("import_csv_text", kind, text, **options)
        return report

    def import_module_csv(self, path: _Path, /, *, keep_good: bool = False) -> ImportReport:
        """Add or replace panels from the public list of module ratings.

        Parameters
        ----------
        path : str or os.PathLike
            The CSV file, with three header rows.
        keep_good : bool
            Leave refused rows out and report them, instead of refusing all.

        Returns
        -------
        ImportReport
            What was added, replaced and refused.

        Raises
        ------
        FileError
            The file cannot be read.
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.
        """
        report: ImportReport = self._call("import_module_csv", path, keep_good=keep_good)
        return report

    def import_frame(
        self, kind: str, frame: _pd.DataFrame, *, keep_good: bool = False
    ) -> ImportReport:
        """Add or replace parts of one kind from a data frame.

        Parameters
        ----------
        kind : str
            Kind of part, such as "panel".
        frame : pandas.DataFrame
            Columns named as the fields; an index named ``id`` counts as a column. Missing values
            are unknown fields. Lists and dicts are taken as they are.
        keep_good : bool
            Leave refused rows out and report them, instead of refusing all.

        Returns
        -------
        ImportReport
            What was added, replaced and refused; ``line`` is the row, the header being line 1.

        Raises
        ------
        InvalidInput
            A column is no field of that kind.
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.
        """
        return frames.import_frame(self, kind, frame, keep_good=keep_good)

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
        """
        self._call("export_json", path, force=force)

    def export_json_text(self) -> str:
        """Return the user's own parts and removals as JSON text.

        Returns
        -------
        str
            What ``import_json_text`` reads.
        """
        return str(self._core.export_json_text())

    def export_all_json_text(self) -> str:
        """Return all parts, those of the starter too, as JSON text.

        Returns
        -------
        str
            JSON, one list per kind.
        """
        return str(self._core.export_all_json_text())
