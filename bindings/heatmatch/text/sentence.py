"""Sentences: text with its data."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from heatmatch import _core


class Sentence(str):
    """A sentence of the library: its text in SI units, with its data.

    Equal to another one by id and arguments, to a plain str by its text.
    """

    __slots__ = ("_held",)
    _held: _core.HeldSentence

    def __new__(cls, held: _core.HeldSentence) -> Sentence:
        made = super().__new__(cls, held.text())
        made._held = held
        return made

    @property
    def id(self) -> str:
        """Of its line in the table of its room."""
        return self._held.id

    @property
    def arguments(self) -> dict[str, Any]:
        """Name to (value, unit), a name, or a list of sentences."""
        return self._held.arguments

    def text(self, units: str = "si") -> str:
        """The sentence in either unit set, "si" or "us"; names stay as they are."""
        return self._held.text(units=units)

    def renamed(self, change: Callable[[str, str], str]) -> Sentence:
        """The same with other names, in its parts too: cut, where there is no room.

        `change` returns each name from its placeholder and its present text.
        """
        return Sentence(self._held.renamed(change))

    def to_json(self) -> str:
        """By id and arguments; `Sentence.from_json` gives it back."""
        return self._held.to_json()

    @classmethod
    def from_json(cls, text: str) -> Sentence:
        """The sentence of that id with those arguments."""
        return cls(_core.HeldSentence.from_json(text))

    def __eq__(self, other: object) -> bool:
        if isinstance(other, Sentence):
            return self._held == other._held
        return str.__eq__(self, other) if isinstance(other, str) else NotImplemented

    def __ne__(self, other: object) -> bool:
        equal = self.__eq__(other)
        return equal if equal is NotImplemented else not equal

    def __hash__(self) -> int:
        return str.__hash__(self)

    def __reduce__(self) -> tuple[Any, tuple[str]]:
        return Sentence.from_json, (self.to_json(),)
