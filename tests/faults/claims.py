"""What a message claims became of a change."""

from __future__ import annotations

import sys
import traceback
from collections import Counter
from dataclasses import dataclass, field


@dataclass
class Said:
    """What was said of one step: that it was done, or a message; nothing if the process died."""

    error: str | None = None
    told: bool = True

    def may_be_done(self) -> bool:
        """Whether the change may be there without the claim being false."""
        if not self.told or self.error is None:
            return True
        return is_unknown(self.error) or "was written" in self.error

    def may_be_undone(self) -> bool:
        """Whether the change may be absent without the claim being false."""
        if not self.told:
            return True
        return self.error is not None and "was written" not in self.error


def is_unknown(message: str) -> bool:
    """Whether a message says that it is not known whether the change was made."""
    return "not known" in message and "nothing was changed" not in message


@dataclass
class Tally:
    """What was tried, and which claims were found to be false."""

    cases: Counter[str] = field(default_factory=Counter)
    faults: int = 0
    claims: int = 0
    unknown: int = 0
    found: list[str] = field(default_factory=list)

    def blame(self, case: str, what: str) -> None:
        """Notes a claim that is false."""
        self.found.append(f"{case}: {what}")

    def blame_error(self, case: str) -> None:
        """Notes what went wrong in the trial itself, or in reading what a fault left."""
        error = sys.exc_info()[1]
        last = traceback.extract_tb(error.__traceback__)[-1] if error is not None else None
        self.blame(case, f"{type(error).__name__}: {error} ({last.name if last else ''})")

    def table(self) -> str:
        """What was tried, one line an operation, and the sums."""
        lines = [f"{number:6d}  {name}" for name, number in self.cases.items()]
        lines.append(
            f"{sum(self.cases.values())} cases, {self.faults} faults struck, {self.claims} claims "
            f"checked, {self.unknown} of them unknown, {len(self.found)} false"
        )
        return "\n".join(lines)
