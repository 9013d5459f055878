"""The words of heatmatch: one for each thing, in tables, plots, documents and code."""

from __future__ import annotations

# Word -> what it means. Standard terms of the trade where there are any.
WORDS: dict[str, str] = {
    "panel": "A photovoltaic module.",
    "group": "Owned panels of one kind that may share a string or an array.",
    "string": "Panels in series.",
    "array": "Strings in parallel.",
    "hook-up": "How equal things are joined: 2S1P is two in series, one string of them.",
    "element": "A heating element: a coil in a sheath.",
    "bank": "Elements in series and parallel, as one load.",
    "circuit": "One array feeding one bank.",
    "pairing": "One group in one hook-up with one element in one bank: what a ranking looks at.",
    "candidate": "A pairing with its numbers.",
    "ranking": "Candidates in their order: most heat first, in steps of 1 %.",
    "installation": "The situation: place, owned things, wires, store, goals.",
    "load line": "Volts over amperes of the bank: a straight line through zero.",
    "operating point": "Where the load line meets the curve of the array.",
    "maximum power point": "Where the array would give most; Vmp and Imp at its label's sun.",
    "harvest fraction": "Energy delivered over energy at the maximum power point.",
    "sun-hours": "Daily sum of sun on the panels in kWh/m2: so many hours of full sun.",
    "season": "The months of the goals.",
    "record low": "The lowest air temperature on record: it sets the largest open-circuit volts.",
    "heat store": "What holds the heat: a vessel with its fill.",
    "bed": "A store of grains: sand or gravel.",
    "fill": "What the store is filled with.",
    "sheath": "The metal tube around an element's coil.",
    "heated length": "Of the sheath, with the coil inside.",
    "cold length": "Of the sheath, between coil and terminal.",
    "terminal": "Where wire and element meet.",
    "run": "One stretch of wire with one kind of surroundings; its length is one way.",
    "hot tail": "The run nearest to the element.",
    "device": "A control in its place, with its duty: breaks dc, or only senses.",
    "limit": "What a part stands.",
    "margin": "A named check: value, limit and what is left.",
    "headroom": "What is left of a limit: 1 unused, 0 at the limit, below 0 beyond it.",
    "severity": "What passing a margin means: none, caution, warning, danger, or not assessed.",
    "danger": "Beyond the limit it can kill, burn or melt.",
    "warning": "Beyond the limit it harms or ages early, or asks for care with one's life.",
    "caution": "To be known and heeded.",
    "not assessed": "Something that it needs is not known: it may be bad.",
    "no finding": "A check that found nothing; it promises nothing.",
    "code duty": "What a code asks of who builds: many begin at 30, 60 or 80 V. It ranks nothing.",
    "assumed": "A value that nobody gave: a class default, or from memory.",
    "stagnation": "The sun shines, nobody takes the heat and no control opens.",
    "earth fault": "A live part touches metal that is bonded to earth.",
}


def words() -> dict[str, str]:
    """Return the glossary of heatmatch.

    Returns
    -------
    dict of str
        Word to its definition, one sentence. The dict is a copy; changes to it have no effect.

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.words()["string"]
    'Panels in series.'
    """
    return dict(WORDS)
