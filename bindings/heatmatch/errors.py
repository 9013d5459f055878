"""What heatmatch raises. Every message names part, field, value, allowed range and remedy."""

from __future__ import annotations

from heatmatch.text.plain import plain


class Error(Exception):
    """Base of everything heatmatch raises; the pieces of the message are attributes."""

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
    """A value, a record or a file's content that cannot be used."""


class NotFound(Error, KeyError):
    """A part that is asked for by an id nobody has."""


class FileError(Error, OSError):
    """A file that cannot be read or written; the message holds the path tried."""


class CatalogError(Error):
    """A change the catalog refuses, or a catalog file that cannot be used."""


class OutcomeUnknown(Error):
    """It is not known whether the catalog file contains the change; the message says how to
    find out. (A CatalogError says that nothing was changed.)"""
