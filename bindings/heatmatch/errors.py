"""Exceptions of heatmatch. Every message names part, field, value, allowed range and remedy."""

from __future__ import annotations

from heatmatch.text.plain import plain


class Error(Exception):
    """Base of all errors of heatmatch; the pieces of the message are attributes.

    Examples
    --------
    >>> import heatmatch as hm
    >>> try:
    ...     hm.Site(record_low_c=-200)
    ... except hm.Error as error:
    ...     print(error.field)
    record_low_c
    """

    def __init__(
        self,
        message: str,
        part: str = "",
        field: str = "",
        value: str = "",
        allowed: str = "",
        remedy: str = "",
    ) -> None:
        self.message = plain(message)
        super().__init__(self.message)
        self.part, self.field, self.value = plain(part), plain(field), plain(value)
        self.allowed, self.remedy = plain(allowed), plain(remedy)

    def __str__(self) -> str:
        return self.message

    def __reduce__(self) -> tuple[type[Error], tuple[str, ...]]:
        pieces = (self.part, self.field, self.value, self.allowed, self.remedy)
        return type(self), (self.message, *pieces)


class InvalidInput(Error, ValueError):
    """Value, record or content of a file that cannot be used.

    Examples
    --------
    >>> import heatmatch as hm
    >>> try:
    ...     hm.Site(record_low_c="cold")
    ... except hm.InvalidInput as error:
    ...     print(error.field)
    record_low_c
    """


class NotFound(Error, KeyError):
    """Part that is not there under the id that was given.

    Examples
    --------
    >>> import heatmatch as hm
    >>> try:
    ...     hm.Catalog.starter().panels["barn"]
    ... except hm.NotFound:
    ...     print("no such panel")
    no such panel
    """


class FileError(Error, OSError):
    """File that cannot be read or written; the message holds its path.

    Examples
    --------
    >>> import heatmatch as hm
    >>> try:
    ...     hm.Installation.from_json("nowhere/place.json")
    ... except hm.FileError:
    ...     print("no such file")
    no such file
    """


class CatalogError(Error):
    """Change that the catalog refuses, or a catalog file that cannot be used.

    Examples
    --------
    >>> import heatmatch as hm
    >>> try:
    ...     hm.Catalog.starter().remove("panel", "cdte-100")
    ... except hm.CatalogError:
    ...     print("the starter cannot be changed")
    the starter cannot be changed
    """


class OutcomeUnknown(Error):
    """Change of a catalog file that may or may not have been written.

    The message says how to find out. A CatalogError means that nothing was changed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> issubclass(hm.OutcomeUnknown, hm.Error)
    True
    """
