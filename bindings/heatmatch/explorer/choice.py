"""Choices of the explorer and their results; no widgets."""

from __future__ import annotations

import copy
import functools
from dataclasses import dataclass
from typing import Any

from heatmatch import _library as _core
from heatmatch.io.rankings import KEY
from heatmatch.text.bank import element_name

CHOOSE = "choose"


@dataclass(frozen=True)
class Choice:
    """One setting of all controls; None is not known or cannot be changed."""

    group: str = ""  #: of panels; empty: all
    panels: str = ""  #: hook-up; empty: any
    element: str = ""  #: id; empty: any
    bank: str = ""  #: hook-up; empty: any
    tilt_deg: float | None = None
    sun_pct: float | None = None  #: of the installation's own monthly sums
    length_m: float | None = None  #: of the longest run that carries the array, one way
    wire: str | None = None  #: of that run: an id, or "choose"
    k20_w_mk: float | None = None  #: typical conductivity of the fill at 20 °C
    record_low_c: float = 0.0
    budget: float | None = None


def row_of(candidate: _core.Candidate) -> tuple[str, ...]:
    """Group, hook-up, element and bank of a candidate: the key of a pairing."""
    circuit = candidate.circuit
    return (circuit.owned.group, circuit.panels, element_name(circuit), circuit.bank)


class Workbench:
    """An installation whose choices can be changed, and ranked again, quickly.

    Parameters
    ----------
    catalog : Catalog
    installation : Installation
        What the choices begin with.
    weather : Weather, optional
        Instead of the installation's own months; tilt and sun are then part of it and stay.
    """

    def __init__(
        self,
        catalog: _core.Catalog,
        installation: _core.Installation,
        weather: _core.Weather | None = None,
    ) -> None:
        self.catalog = catalog
        self.plain: dict[str, Any] = installation.to_dict()
        self.given_weather = weather
        self._sky = functools.lru_cache(maxsize=32)(self._make_sky)
        self._weather = functools.lru_cache(maxsize=64)(self._make_weather)
        self._run = self._longest_array_run()
        self.start = self._start()

    def _longest_array_run(self) -> int | None:
        runs = self.plain.get("runs", [])
        array = [i for i, run in enumerate(runs) if run["carries"] == "array"]
        return max(array, key=lambda i: runs[i].get("length_m", 0.0), default=None)

    def _start(self) -> Choice:
        site = self.plain["site"]
        run = None if self._run is None else self.plain["runs"][self._run]
        placed = site.get("tilt_deg") is not None and site.get("latitude_deg") is not None
        months = placed and self.given_weather is None and "weather" in self.plain
        medium = self.medium()
        return Choice(
            tilt_deg=site.get("tilt_deg") if months else None,
            sun_pct=100.0 if months else None,
            length_m=None if run is None else run["length_m"],
            wire=None if run is None else run["wire"],
            k20_w_mk=None if medium is None else medium["k20_w_mk"],
            record_low_c=site["record_low_c"],
            budget=self.plain.get("goals", {}).get("budget"),
        )

    def medium(self) -> dict[str, Any] | None:
        """The fill of the store as plain data; None where there is no store."""
        name = self.plain.get("store", {}).get("medium")
        if name is None:
            return None
        for part in self.plain.get("parts", {}).get("media", []):
            if part["id"] == name:
                return dict(part)
        known: dict[str, Any] = self.catalog.media[name].to_dict()
        return known

    def _make_sky(self, sun_pct: float) -> _core.MonthlySky:
        normals = dict(self.plain["weather"])
        normals["sun_hours"] = [sum_ * sun_pct / 100.0 for sum_ in normals["sun_hours"]]
        return _core.MonthlySky(_core.Installation.from_dict(self.plain).site, **normals)

    def _make_weather(self, sun_pct: float, tilt_deg: float) -> _core.Weather:
        return self._sky(sun_pct).weather(tilt_deg=tilt_deg)

    def weather(self, choice: Choice) -> _core.Weather | None:
        """Weather over which the season's heat is summed; None: ranked by the conditions."""
        if self.given_weather is not None or choice.tilt_deg is None or choice.sun_pct is None:
            return self.given_weather
        return self._weather(choice.sun_pct, choice.tilt_deg)

    def changed(self, choice: Choice) -> dict[str, Any]:
        """The installation as plain data with the choice applied, except its circuit."""
        plain = copy.deepcopy(self.plain)
        plain["site"]["record_low_c"] = choice.record_low_c
        begun = choice.sun_pct == 100.0 and choice.tilt_deg == self.start.tilt_deg
        if choice.sun_pct is not None and not begun:
            turned = self._sky(choice.sun_pct).sun_hours(tilt_deg=choice.tilt_deg)
            plain["site"]["tilt_deg"] = choice.tilt_deg
            plain["weather"]["sun_hours"] = [round(float(sum_), 4) for sum_ in turned]
        if self._run is not None:
            run = plain["runs"][self._run]
            if choice.wire != run["wire"]:
                run.pop("owned_m", None)  # wire of another kind is not owned
            run |= {"length_m": choice.length_m, "wire": choice.wire}
        if choice.k20_w_mk is not None and choice.k20_w_mk != self.start.k20_w_mk:
            self._put_medium(plain, choice.k20_w_mk)
        if choice.budget is not None:
            plain.setdefault("goals", {})["budget"] = choice.budget
        else:
            plain.get("goals", {}).pop("budget", None)
        return plain

    def _put_medium(self, plain: dict[str, Any], k20_w_mk: float) -> None:
        """The fill with another conductivity, its ends moved in proportion."""
        medium = self.medium()
        assert medium is not None
        share = k20_w_mk / medium["k20_w_mk"]
        for name in ("k20_w_mk", "k20_low_w_mk", "k20_high_w_mk"):
            if medium.get(name) is not None:
                medium[name] = round(medium[name] * share, 6)
                medium.setdefault("source_of", {})[name] = "chosen by hand"
        parts = plain.setdefault("parts", {})
        others = [part for part in parts.get("media", []) if part["id"] != medium["id"]]
        parts["media"] = [*others, medium]

    def installation(self, choice: Choice) -> _core.Installation:
        """The installation with the choice applied.

        Raises
        ------
        InvalidInput
            Names what cannot be so.
        """
        return _core.Installation.from_dict(self.changed(choice))

    def rank(self, choice: Choice, *, top: int = 8, keep_rejected: int = 3) -> _core.Ranking:
        """Rank the pairings permitted by the choice.

        Raises
        ------
        Error
            Names what of the choice cannot be.
        """
        return _core.rank(
            self.catalog,
            self.installation(choice),
            self.weather(choice),
            top=top,
            keep_rejected=keep_rejected,
            group=choice.group,
            element=choice.element,
            panels=choice.panels or None,
            bank=choice.bank or None,
        )

    def saved(self, choice: Choice, candidate: _core.Candidate) -> _core.Installation:
        """The installation with the choice applied and the candidate as existing circuit."""
        plain = self.changed(choice)
        group, panels, element, bank = row_of(candidate)
        plain["circuit"] = dict(zip(KEY, (group, panels, element, bank), strict=True))
        return _core.Installation.from_dict(plain)

    def groups(self) -> list[str]:
        """The owned groups of panels."""
        return [owned["group"] for owned in self.plain["panels"]]

    def hookups(self, group: str = "") -> list[str]:
        """Every hook-up that the panels of a group, or of any, allow."""
        counts = [o["count"] for o in self.plain["panels"] if group in ("", o["group"])]
        return hookups_up_to(max(counts))

    def elements(self) -> list[str]:
        """The elements of the best pairings, kept and rejected, in their order: of a usual
        installation all that it allows, of thousands the most promising."""
        every = self.rank(self.start, top=2000, keep_rejected=2000)
        return list(dict.fromkeys(row_of(one)[2] for one in [*every, *every.rejected]))

    def wires(self) -> list[str]:
        """The wires that a run may have, the choosing by heatmatch first."""
        inline = [part["id"] for part in self.plain.get("parts", {}).get("wires", [])]
        return [CHOOSE, *dict.fromkeys([*inline, *(w.id for w in self.catalog.wires.values())])]


def hookups_up_to(count: int) -> list[str]:
    """Every full hook-up of up to so many equal things, fewest first."""
    return [
        f"{used // parallel}S{parallel}P"
        for used in range(1, count + 1)
        for parallel in range(1, used + 1)
        if used % parallel == 0
    ]
