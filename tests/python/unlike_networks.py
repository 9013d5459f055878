"""Series and parallel networks of unlike elements, enumerated apart from the library."""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator

Names = tuple[str, ...]


def divisions(names: Names) -> Iterator[list[Names]]:
    """All ways to divide names among two or more parts, some of them more than once."""
    first, rest = names[0], names[1:]
    if not rest:
        yield [names]
        return
    for count in range(len(rest) + 1):
        for beside in itertools.combinations(range(len(rest)), count):
            part = (first, *(rest[i] for i in beside))
            left = tuple(name for i, name in enumerate(rest) if i not in beside)
            if not left:
                yield [part]
                continue
            yield from ([part, *others] for others in divisions(left))


def networks(names: Names, *, in_series: bool) -> set[str]:
    """Texts of the networks whose outermost joint is that one."""
    found = set()
    for parts in divisions(names):
        if len(parts) < 2:
            continue
        inner = [
            {part[0]} if len(part) == 1 else networks(part, in_series=not in_series)
            for part in parts
        ]
        for chosen in itertools.product(*inner):
            texts = sorted(f"[{text}]" if in_series and "|" in text else text for text in chosen)
            found.add((" + " if in_series else " | ").join(texts))
    return found


def unlike_banks(owned: Counter[str], most: int) -> Iterator[tuple[str, Counter[str]]]:
    """Every network of elements of at least two kinds, with how many of each it has."""
    kinds = sorted(owned)
    for counts in itertools.product(*(range(owned[kind] + 1) for kind in kinds)):
        used = Counter({kind: n for kind, n in zip(kinds, counts, strict=True) if n})
        if len(used) < 2 or sum(counts) > most:
            continue
        names = tuple(sorted(used.elements()))
        for in_series in (True, False):
            for text in sorted(networks(names, in_series=in_series)):
                yield text, used
