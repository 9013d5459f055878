"""Imports into a catalog from files, text and data frames."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from heatmatch.face.catalog_exports import CatalogExports
from heatmatch.io import frames

if TYPE_CHECKING:
    import pandas as _pd

    from heatmatch._core import ImportReport

    _Path = str | os.PathLike[str]


class CatalogFiles(CatalogExports):
    """Imports into a catalog; its base has the exports."""

    __slots__ = ()

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
            Numbers of rows added, replaced and removed, and the rows refused.

        Raises
        ------
        FileError
            The file cannot be read.
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> text = '''{"heatmatch_catalog": 1, "covers": [{"id": "my-foil", "label": "my foil",
        ...     "u_w_m2k": 6, "source": "meter", "source_kind": "measured"}]}'''
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     path = os.path.join(folder, "parts.json")
        ...     with open(path, "w") as file:
        ...         print(text, file=file)
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.import_json(path).added
        1
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
            Numbers of rows added, replaced and removed, and the rows refused.

        Raises
        ------
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> text = '''{"heatmatch_catalog": 1, "covers": [{"id": "my-foil", "label": "my foil",
        ...     "u_w_m2k": 6, "source": "meter", "source_kind": "measured"}]}'''
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.import_json_text(text).added
        1
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
            Numbers of rows added and replaced, and the rows refused.

        Raises
        ------
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> text = "id,label,u_w_m2k,source,source_kind\\nmy-foil,my foil,6,meter,measured"
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.import_csv_text("cover", text).added
        1
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
            Numbers of rows added and replaced, and the rows refused.

        Raises
        ------
        FileError
            The file cannot be read.
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.

        Examples
        --------
        >>> import heatmatch as hm, pathlib, pvlib, tempfile
        >>> data = pathlib.Path(pvlib.__file__).parent / "data"
        >>> whole = (data / "sam-library-cec-modules-2019-03-05.csv").read_text()
        >>> with tempfile.TemporaryDirectory() as name:
        ...     folder = pathlib.Path(name)
        ...     _ = (folder / "two.csv").write_text("\\n".join(whole.splitlines()[:5]))
        ...     with hm.Catalog.open(folder / "mine.heatmatch") as catalog:
        ...         catalog.import_module_csv(folder / "two.csv").added
        2
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
            are unknown fields. Lists and dicts are used unchanged.
        keep_good : bool
            Leave refused rows out and report them, instead of refusing all.

        Returns
        -------
        ImportReport
            Numbers of rows added and replaced, and the rows refused. ``line`` counts from the
            header, which is line 1.

        Raises
        ------
        InvalidInput
            A column is not a field of that kind.
        CatalogError
            Rows cannot be used and `keep_good` is false; the catalog is unchanged.

        Examples
        --------
        >>> import heatmatch as hm, os, pandas as pd, tempfile
        >>> frame = pd.DataFrame([{"id": "my-foil", "label": "my foil", "u_w_m2k": 6.0,
        ...                        "source": "meter", "source_kind": "measured"}])
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.import_frame("cover", frame).added
        1
        """
        return frames.import_frame(self, kind, frame, keep_good=keep_good)
