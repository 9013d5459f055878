"""The user's situation: what is owned, what may be bought, and the site."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from heatmatch import _core
from heatmatch._core import Device, OwnedPanels, Site, Store, WireRun
from heatmatch._faces import Held
from heatmatch.face.changes import changed
from heatmatch.face.installation_files import InstallationFiles
from heatmatch.face.setting import (
    AllowedElements,
    ExistingCircuit,
    Goals,
    MonthlyNormals,
    Space,
    plain_of,
)


class Installation(InstallationFiles):
    """The user's situation: what is owned, what may be bought, and the site.

    Each argument is a record of heatmatch or a mapping of its fields, as in a file of an
    installation; every field is in ``installation_glossary``. Numbers may be text with a unit.

    Parameters
    ----------
    site : Site or mapping
        Where the panels are; needs `record_low_c`.
    name : str
        Name of the installation.
    notes : str
        Why its values are what they are, in the user's words.
    weather : MonthlyNormals or mapping, optional
        Twelve monthly means.
    panels : sequence of OwnedPanels or mappings
        Groups of owned panels.
    elements : sequence of AllowedElements or mappings
        Elements that a ranking may use.
    store : Store or mapping, optional
        The heat store.
    runs : sequence of WireRun or mappings
        Runs of wire.
    devices : sequence of Device or mappings
        Controls in their places.
    space : Space or mapping, optional
        The space that the store heats.
    goals : Goals or mapping, optional
        Months, budget and currency.
    circuit : ExistingCircuit or mapping, optional
        The existing circuit, where there is one.
    circuits : sequence of ExistingCircuit or mappings
        All existing circuits; they heat one store.
    parts : mapping of sequences, optional
        Parts that are not in the catalog, by kind: "panels", "elements", "wires" and so on.

    Raises
    ------
    InvalidInput
        A field is unknown, missing or out of range; the message names it.

    Examples
    --------
    >>> import heatmatch as hm
    >>> place = hm.Installation(
    ...     name="north bench",
    ...     site=hm.Site(record_low_c=-20, wet=True),
    ...     panels=[{"group": "barn pair", "panel": "silicon-60-cell-245", "count": 2}],
    ...     elements=[{"element": "tubular-1000-120", "count": 1}],
    ... )
    >>> place.panels[0].count
    2
    """

    __slots__ = ()

    def __init__(
        self,
        *,
        site: object,
        name: str = "",
        notes: str = "",
        weather: object = None,
        panels: Sequence[object] = (),
        elements: Sequence[object] = (),
        store: object = None,
        runs: Sequence[object] = (),
        devices: Sequence[object] = (),
        space: object = None,
        goals: object = None,
        circuit: object = None,
        circuits: Sequence[object] = (),
        parts: Mapping[str, Sequence[object]] | None = None,
    ) -> None:
        given = {
            "name": name, "notes": notes, "site": site, "weather": weather, "panels": panels,
            "elements": elements, "store": store, "runs": runs, "devices": devices,
            "space": space, "goals": goals, "circuit": circuit,
            "circuits": circuits, "parts": parts,
        }  # fmt: skip
        known = {key: plain_of(value) for key, value in given.items() if value is not None}
        plain = {"heatmatch_installation": 1, **known}
        self._hold(self._compiled.from_dict(plain))

    name: Held[str] = Held("Name that the user gave it.")
    notes: Held[str] = Held("Notes of the user; empty where there are none.")
    site: Held[Site] = Held("Place and mounting of the panels.")
    panels: Held[list[OwnedPanels]] = Held("Groups of owned panels.")
    store: Held[Store | None] = Held("Heat store; None if not described.")
    runs: Held[list[WireRun]] = Held("Runs of wire.")
    devices: Held[list[Device]] = Held("Controls in their places.")

    @property
    def weather(self) -> MonthlyNormals | None:
        """Twelve monthly means; None if not given."""
        plain = self.to_dict().get("weather")
        return None if plain is None else MonthlyNormals._of(plain)

    @property
    def elements(self) -> list[AllowedElements]:
        """Elements that a ranking may use."""
        return [AllowedElements._of(one) for one in self.to_dict().get("elements", [])]

    @property
    def space(self) -> Space | None:
        """Space that the store heats; None if not given."""
        plain = self.to_dict().get("space")
        return None if plain is None else Space._of(plain)

    @property
    def goals(self) -> Goals:
        """Months of the season, budget and its currency."""
        return Goals._of(self.to_dict().get("goals", {}))

    @property
    def circuit(self) -> ExistingCircuit | None:
        """Existing circuit; None if not described."""
        plain = self.to_dict().get("circuit")
        return None if plain is None else ExistingCircuit._of(plain)

    @property
    def circuits(self) -> list[ExistingCircuit]:
        """Existing circuits that share the store; empty where ``circuit`` describes one."""
        return [ExistingCircuit._of(one) for one in self.to_dict().get("circuits", [])]

    @property
    def parts(self) -> dict[str, list[Any]]:
        """Parts defined in the installation itself, lists by kind."""
        made: dict[str, list[Any]] = {}
        for kinds, rows in self.to_dict().get("parts", {}).items():
            kind = {"media": "medium"}.get(kinds, kinds.removesuffix("s"))
            made[kinds] = [getattr(_core, kind.capitalize())(**row) for row in rows]
        return made

    def replace(self, changes: Mapping[str, object], /) -> Installation:
        """Return a copy with some fields changed.

        Parameters
        ----------
        changes : mapping of str to object
            Path of a field to its new value. Dots separate the pieces of a path. An item of
            a list is given by its number from 0 or by its name: the group of panels, the name of
            the run, the part of the device. None makes a field unknown. Numbers may be text with a
            unit, records may be given whole.

        Returns
        -------
        Installation
            The changed copy; this one is unchanged.

        Raises
        ------
        InvalidInput
            No such field or item, or a value out of range; the message names it.

        Notes
        -----
        ``weather.sun_hours`` are sums on panels of the stated tilt and azimuth. To change those,
        change the sums with them, else Python warns: ``MonthlySky.sun_hours(tilt_deg=...)``
        gives them.

        Examples
        --------
        >>> import heatmatch as hm
        >>> taller = hm.demo().replace({"store.height_m": 1.0, "runs.hot tail.length_m": "1 ft"})
        >>> taller.store.height_m, taller.runs[2].length_m
        (1.0, 0.3048)
        """
        return self.from_dict(changed(self.to_dict(), changes))


def demo() -> Installation:
    """Return the bundled demo installation, an invented seedling house.

    Returns
    -------
    Installation
        Three groups of panels, a store of dry sand, runs, devices and an existing circuit.

    Examples
    --------
    >>> import heatmatch as hm
    >>> [owned.group for owned in hm.demo().panels]
    ['barn pair', 'porch four', 'thin pair']
    """
    return Installation._holding(_core.demo())
