"""An installation as a file, as text and as plain data."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any

from heatmatch._faces import Face, compiled_class, wrap

if TYPE_CHECKING:
    from heatmatch.face.installation import Installation


class InstallationFiles(Face):
    """Reading and writing of an installation."""

    __slots__ = ()

    @staticmethod
    def from_json(path: str | os.PathLike[str], /) -> Installation:
        """Read an installation from a JSON file.

        Parameters
        ----------
        path : str or os.PathLike
            The file; its fields are in ``installation_glossary``.

        Returns
        -------
        Installation
            What the file describes.

        Raises
        ------
        FileError
            The file cannot be read.
        InvalidInput
            The file is not JSON in UTF-8, or a field is unknown, missing or out of range.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     path = os.path.join(folder, "place.json")
        ...     hm.demo().to_json(path)
        ...     hm.Installation.from_json(path) == hm.demo()
        True
        """
        return _made("from_json", path)

    @staticmethod
    def from_json_text(text: str, /) -> Installation:
        """Read an installation from JSON text.

        Parameters
        ----------
        text : str
            The content of an installation file.

        Returns
        -------
        Installation
            What the text describes.

        Raises
        ------
        InvalidInput
            The text is not JSON, or a field is unknown, missing or out of range.

        Examples
        --------
        >>> import heatmatch as hm
        >>> text = '{"heatmatch_installation": 1, "site": {"record_low_c": -20}}'
        >>> hm.Installation.from_json_text(text).site.record_low_c
        -20.0
        """
        return _made("from_json_text", text)

    @staticmethod
    def from_dict(dict: dict[str, Any], /) -> Installation:  # noqa: A002
        """Make an installation from plain data.

        Parameters
        ----------
        dict : dict
            What ``to_dict`` returns: the content of an installation file.

        Returns
        -------
        Installation
            What the data describes.

        Raises
        ------
        InvalidInput
            A field is unknown, missing or out of range.

        Examples
        --------
        >>> import heatmatch as hm
        >>> plain = hm.demo().to_dict()
        >>> plain["site"]["record_low_c"] = -40
        >>> hm.Installation.from_dict(plain).site.record_low_c
        -40.0
        """
        return _made("from_dict", dict)

    def to_dict(self) -> dict[str, Any]:
        """Return the installation as plain data: the content of its file.

        Returns
        -------
        dict
            Fields by place in the file; a copy, which can be changed freely.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.demo().to_dict()["panels"][0]["group"]
        'barn pair'
        """
        plain: dict[str, Any] = self._core.to_dict()
        return plain

    def to_json_text(self) -> str:
        """Return the installation as JSON text.

        Returns
        -------
        str
            The content of its file, which ``from_json_text`` reads.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.Installation.from_json_text(hm.demo().to_json_text()) == hm.demo()
        True
        """
        return str(self._core.to_json_text())

    def to_json(self, path: str | os.PathLike[str], /, *, force: bool = False) -> None:
        """Write the installation to a JSON file, whole or not at all.

        Parameters
        ----------
        path : str or os.PathLike
            The file. An earlier installation is replaced, a catalog never.
        force : bool
            Also replace a file of another kind.

        Raises
        ------
        FileError
            The file cannot be written, or `path` holds something else.

        Examples
        --------
        >>> import heatmatch as hm, os, tempfile
        >>> with tempfile.TemporaryDirectory() as folder:
        ...     hm.demo().to_json(os.path.join(folder, "place.json"))
        ...     os.listdir(folder)
        ['place.json']
        """
        self._core.to_json(path, force=force)


def _made(maker: str, given: object) -> Installation:
    made: Installation = wrap(getattr(compiled_class("Installation"), maker)(given))
    return made
