"""The words of heatmatch: one for each thing, in tables, plots, documents and code."""

from __future__ import annotations

# Word -> meaning. Standard terms of the trade where there are any.
WORDS: dict[str, str] = {
    "panel": "A photovoltaic module.",
    "group": "Owned panels of one kind that may share a string or an array.",
    "string": "Panels in series.",
    "array": "Strings in parallel.",
    "hook-up": "How equal panels or elements are wired: 2S1P is two in series, one string.",
    "element": "A heating element: a coil in a sheath.",
    "bank": "Elements in series and parallel, as one load.",
    "circuit": "One array feeding one bank.",
    "existing circuit": "The circuit that is already built: `circuit` of the installation.",
    "pairing": "One group in one hook-up with one element in one bank: one line of a ranking.",
    "candidate": "A pairing with its numbers.",
    "ranking": "Candidates in order: most heat first, in steps of 1 %.",
    "Pareto-optimal": "Of a candidate: no other beats it in heat, headroom and price.",
    "installation": "The situation: site, owned parts, wires, store, goals.",
    "load resistance": "Resistance of the bank, or of the bank and its wire.",
    "load line": "Current over voltage of the bank: a straight line through zero.",
    "operating point": "Where the load line meets the curve of the array.",
    "maximum power point": "Where the array delivers the most power; Vmp and Imp at STC.",
    "STC match": "Vmp/Imp of the label: the load resistance for the most power at STC.",
    "utilization": "Energy delivered over energy at the maximum power point.",
    "irradiance": "Sun on a surface in W/m2; full sun is 1000 W/m2.",
    "peak sun hours": "Daily sum of irradiance on the panels: kWh/m2 a day.",
    "season": "The months of the goals.",
    "record low": "The lowest air temperature on record: it determines the cold voltage.",
    "heat store": "A vessel with its fill, which holds the heat.",
    "insulation jacket": "Thermal insulation around the vessel; `lagging` in data.",
    "first heating": "The first time that a store becomes hot: it dries and settles.",
    "bed": "A store of grains: sand or gravel.",
    "fill": "The material in the store.",
    "sheath": "The metal tube around an element's coil.",
    "heated length": "The part of the sheath with the coil inside.",
    "cold length": "The part of the sheath between coil and terminal.",
    "terminal": "Where wire and element meet.",
    "run": "One stretch of wire with one kind of surroundings; its length is one way.",
    "element lead": "The run of wire at the element: it also carries heat away from it.",
    "hot tail": "In names of data: the element lead.",
    "bill": "All parts of a circuit: what is owned, and what is to buy with its price.",
    "one element open": "One parallel branch carries no current; the others receive more power.",
    "device": "A control in its place, with its duty: it interrupts DC, or it only senses.",
    "limit": "The highest value that a part withstands or that a code allows.",
    "overtemperature limit": "A device that opens the circuit and does not reset by itself.",
    "ampacity": "The current that a wire may carry by the code.",
    "margin": "A named check: value, limit and headroom.",
    "headroom": "The rest of a limit: 1 unused, 0 at the limit, below 0 beyond it.",
    "severity": "Effect of exceeding a limit: caution, warning, danger, not assessed, no finding.",
    "danger": "Beyond the limit it can kill, burn or melt.",
    "warning": "Beyond the limit it harms or ages early, or puts a life at risk.",
    "caution": "A hazard or a condition to keep in mind.",
    "not assessed": "A value that the check needs is not known: it may be bad.",
    "no finding": "A check that found nothing; it promises nothing.",
    "code requirement": "A duty by a wiring code; many begin at 30, 60 or 80 V. It ranks nothing.",
    "assumed": "A value that is not given: a class default, or from memory.",
    "stagnation": "The sun shines, no heat is drawn and no control opens.",
    "ground fault": "A live part touches bonded metal; the IEC calls it earth fault.",
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
