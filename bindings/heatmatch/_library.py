"""The compiled library as the package calls it: it accepts and returns the public classes."""

from __future__ import annotations

import inspect
from typing import TYPE_CHECKING, Any

from heatmatch import _core

if TYPE_CHECKING:
    from heatmatch._core import *  # noqa: F403
    from heatmatch.face import *  # noqa: F403


def __getattr__(name: str) -> Any:
    import heatmatch.face as face
    from heatmatch._faces import Call

    found = getattr(face, name, None) or getattr(_core, name)
    if inspect.isbuiltin(found):
        found = Call(found)
    globals()[name] = found
    return found
