"""The starter catalog, with a file of the user's own over it."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any

from heatmatch._faces import Held, call
from heatmatch.face.catalog_files import CatalogFiles
from heatmatch.face.parts_view import PartsView

if TYPE_CHECKING:
    from heatmatch._core import Parts, _Part


class Catalog(CatalogFiles):
    """The starter catalog of parts, with a file of the user's own over it.

    Usable in a ``with`` block, which closes the file.

    Examples
    --------
    >>> import heatmatch as hm
    >>> catalog = hm.Catalog.starter()
    >>> catalog.elements["tubular-1000-120"].rated_w
    1000.0
    """

    __slots__ = ()
    _made_by = "Catalog.starter() or Catalog.open(path)"

    path: Held[str] = Held("Path of the file; empty for the starter.")
    panels: Held[PartsView] = Held("Panels by id.")
    elements: Held[PartsView] = Held("Elements by id.")
    wires: Held[PartsView] = Held("Wires by id.")
    insulations: Held[PartsView] = Held("Insulations by id.")
    controls: Held[PartsView] = Held("Controls by id.")
    connectors: Held[PartsView] = Held("Connectors by id.")
    media: Held[PartsView] = Held("Fills and liquids of stores by id.")
    alloys: Held[PartsView] = Held("Alloys by id.")
    sheaths: Held[PartsView] = Held("Sheath materials by id.")
    covers: Held[PartsView] = Held("Covers of heated spaces by id.")

    @staticmethod
    def starter() -> Catalog:
        """Return the starter catalog, which cannot be changed.

        Returns
        -------
        Catalog
            Its `path` is empty.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Catalog.starter().path
        ''
        """
        made: Catalog = call(Catalog._compiled.starter)
        return made

    @staticmethod
    def open(path: str | os.PathLike[str], /, *, wait_ms: int = 2000) -> Catalog:
        """Open a catalog file, creating it if it does not exist.

        Parameters
        ----------
        path : str or os.PathLike
            The file.
        wait_ms : int
            Longest wait for another program that is writing to the file [ms].

        Returns
        -------
        Catalog
            Starter catalog with the parts of the file over it.

        Raises
        ------
        FileError
            The file cannot be opened or created.
        CatalogError
            The file is not a catalog, or a newer version wrote it.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.edit("element", "tubular-1000-120", price_low=20).price_low
        20.0
        """
        made: Catalog = call(Catalog._compiled.open, path, wait_ms=wait_ms)
        return made

    def is_own(self, kind: str, id: str, /) -> bool:
        """Check whether a part is the user's own instead of the starter's.

        Parameters
        ----------
        kind, id : str
            Kind and id of the part.

        Returns
        -------
        bool
            Whether the file holds it.

        Raises
        ------
        InvalidInput
            `kind` is not a kind of part.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Catalog.starter().is_own("panel", "cdte-100")
        False
        """
        return bool(self._call("is_own", kind, id))

    def add(self, part: _Part, /) -> None:
        """Add a part.

        Parameters
        ----------
        part : part of any kind
            For example a Panel; its id must be new.

        Raises
        ------
        CatalogError
            The id is taken, or the catalog is the starter.
        InvalidInput
            `part` refers to a part that does not exist.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         copied = catalog.wires["fep-14-awg"].replace(id="my-wire")
        ...         catalog.add(copied)
        ...         "my-wire" in catalog.wires
        True
        """
        self._call("add", part)

    def replace(self, part: _Part, /) -> None:
        """Replace the part with the same id.

        Parameters
        ----------
        part : part of any kind
            The new part.

        Raises
        ------
        CatalogError
            The part has changed in the file since it was read.
        NotFound
            There is no part with that id.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         wire = catalog.wires["fep-14-awg"]
        ...         catalog.replace(wire.replace(voltage_rating_v=300))
        ...         catalog.wires["fep-14-awg"].voltage_rating_v
        300.0
        """
        self._call("replace", part)

    def edit(self, kind: str, id: str, /, **changes: Any) -> Any:
        """Change some fields of a part in the file.

        Parameters
        ----------
        kind, id : str
            Kind and id of the part.
        **changes : object
            New values by field; None makes a field unknown.

        Returns
        -------
        part of that kind
            The changed part.

        Raises
        ------
        InvalidInput
            A field is unknown, or a value is out of range.
        NotFound
            There is no such part.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.edit("panel", "cdte-100", notes="two of them cracked").notes
        'two of them cracked'
        """
        return self._call("edit", kind, id, **changes)

    def remove(self, kind: str, id: str, /) -> None:
        """Remove a part.

        Parameters
        ----------
        kind, id : str
            Kind and id of the part.

        Raises
        ------
        CatalogError
            Other parts refer to it; the message lists them.
        NotFound
            There is no such part.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.remove("panel", "cdte-100")
        ...         "cdte-100" in catalog.panels
        False
        """
        self._call("remove", kind, id)

    def parts(self) -> Parts:
        """Return a snapshot of all parts.

        Returns
        -------
        Parts
            Lists by kind; later changes of the catalog do not change them.

        Examples
        --------
        >>> import heatmatch as hm
        >>> len(hm.Catalog.starter().parts().alloys) > 3
        True
        """
        snapshot: Parts = self._call("parts")
        return snapshot

    def close(self) -> None:
        """Close the file; every later use raises a CatalogError.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     with hm.Catalog.open(os.path.join(folder, "mine.heatmatch")) as catalog:
        ...         catalog.close()
        ...         try:
        ...             catalog.parts()
        ...         except hm.CatalogError:
        ...             print("closed")
        closed
        """
        self._core.close()

    def __enter__(self) -> Catalog:
        self._core.__enter__()
        return self

    def __exit__(self, *reason: object) -> None:
        self._core.__exit__(*reason)
