"""Parts of an installation that the library keeps as plain records."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from typing_extensions import Self


class Record:
    """Base of the records: made from plain data, and converted back."""

    @classmethod
    def _of(cls, plain: Mapping[str, Any]) -> Self:
        return cls(**{name: frozen(value) for name, value in plain.items()})

    def to_dict(self) -> dict[str, Any]:
        """Return the known fields as plain data, as in a file of an installation.

        Returns
        -------
        dict
            Field name to value; unknown fields are left out.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.demo().goals.to_dict()["currency"]
        'USD'
        """
        values = {one.name: getattr(self, one.name) for one in fields(self)}  # type: ignore[arg-type]
        return {name: plain_of(value) for name, value in values.items() if value not in (None, ())}


def frozen(value: Any) -> Any:
    """Plain data with tuples in place of lists."""
    return tuple(map(frozen, value)) if isinstance(value, (list, tuple)) else value


def plain_of(value: Any) -> Any:
    """A record, or an object with records, as plain data."""
    if isinstance(value, Mapping):
        return {name: plain_of(one) for name, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain_of(one) for one in value]
    if not hasattr(value, "to_dict"):
        return value
    inner = {name: getattr(value, name, None) for name in ("surroundings", "measured")}
    return value.to_dict() | {n: plain_of(one) for n, one in inner.items() if one is not None}


@dataclass(frozen=True)
class MonthlyNormals(Record):
    """Twelve monthly means of the weather.

    Attributes
    ----------
    sun_hours : tuple of float
        Daily irradiation on the plane of the panels [kWh/m2], shape (12,), January first.
    temp_min_c, temp_max_c : tuple of float
        Daily low and high of the air [°C], shape (12,).

    Examples
    --------
    >>> import heatmatch as hm
    >>> len(hm.demo().weather.sun_hours)
    12
    """

    sun_hours: tuple[float, ...]
    temp_min_c: tuple[float, ...]
    temp_max_c: tuple[float, ...]


@dataclass(frozen=True)
class ElementFilter(Record):
    """Elements of the catalog that may be bought.

    Attributes
    ----------
    family : tuple of str or None
        Families; None allows all.
    price_max : float or None
        Highest price of one element, in the currency of the goals.
    rated_v_min : float or None
        Lowest rated voltage [V].
    rated_w_max : float or None
        Highest rated power [W].

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.ElementFilter(rated_w_max=1000).to_dict()
    {'rated_w_max': 1000}
    """

    family: tuple[str, ...] | None = None
    price_max: float | None = None
    rated_v_min: float | None = None
    rated_w_max: float | None = None


@dataclass(frozen=True)
class AllowedElements(Record):
    """Elements that a ranking may use: an owned one by id, or a filter of those to buy.

    Attributes
    ----------
    count : int
        Number of elements, 1 or more.
    element : str or None
        Id of an element that is owned.
    any : ElementFilter or None
        What may be bought, if `element` is None.

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.AllowedElements(count=4, any=hm.ElementFilter()).to_dict()
    {'count': 4, 'any': {}}
    """

    count: int
    element: str | None = None
    any: ElementFilter | None = None

    @classmethod
    def _of(cls, plain: Mapping[str, Any]) -> Self:
        chosen = plain.get("any")
        return super()._of({**plain, "any": None if chosen is None else ElementFilter._of(chosen)})

    def to_dict(self) -> dict[str, Any]:
        """Return the known fields as plain data, as in a file of an installation.

        Returns
        -------
        dict
            Field name to value. An empty filter stays: it allows every element.

        Examples
        --------
        >>> import heatmatch as hm
        >>> hm.AllowedElements(element="tubular-1000-120", count=1).to_dict()
        {'count': 1, 'element': 'tubular-1000-120'}
        """
        return super().to_dict() | ({} if self.any is None else {"any": self.any.to_dict()})


@dataclass(frozen=True)
class CoverArea(Record):
    """One cover of the heated space.

    Attributes
    ----------
    cover : str
        Id of a cover of the catalog.
    area_m2 : float
        Its area [m2].

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.CoverArea(cover="double-film", area_m2=40).to_dict()
    {'cover': 'double-film', 'area_m2': 40}
    """

    cover: str
    area_m2: float


@dataclass(frozen=True)
class Space(Record):
    """The space that the store heats.

    Attributes
    ----------
    covers : tuple of CoverArea
        Covers of the space, such as glass or film.
    volume_m3 : float or None
        Volume of its air [m3].
    air_changes_per_h : float or None
        Air changes [1/h].
    target_c : float or None
        Target temperature, the lowest acceptable [°C].
    heat_capacity_kwh_k : float or None
        Heat capacity of its contents [kWh/K].

    Examples
    --------
    >>> import heatmatch as hm
    >>> space = hm.Space(covers=(hm.CoverArea("double-film", 40),), target_c=5)
    >>> space.to_dict()["target_c"]
    5
    """

    covers: tuple[CoverArea, ...] = ()
    volume_m3: float | None = None
    air_changes_per_h: float | None = None
    target_c: float | None = None
    heat_capacity_kwh_k: float | None = None

    @classmethod
    def _of(cls, plain: Mapping[str, Any]) -> Self:
        covers = [CoverArea._of(one) for one in plain.get("covers", [])]
        return super()._of({**plain, "covers": covers})


@dataclass(frozen=True)
class Goals(Record):
    """Aim of the circuit: season and budget.

    Attributes
    ----------
    months : tuple of int
        Months of the heating season, 1 to 12; empty is the whole year.
    budget : float or None
        Largest typical total of the whole bill, in `currency`.
    currency : str or None
        Currency of all prices, such as "USD".
    per_usd : float or None
        Price of one US dollar in `currency`: prices in USD are converted by it.
    circuits_max : int or None
        Circuits of a plan at most; None: three.
    volts_max : float or None
        Largest voltage of a plan's arrays at the record low [V].
    headroom_min : float or None
        Smallest headroom of a plan's checks, 0 to 0.9.
    parts_max : int or None
        Pieces on a plan's bill at most, wire not counted.

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.Goals(months=(11, 12, 1), budget=150, currency="USD").months
    (11, 12, 1)
    """

    months: tuple[int, ...] = ()
    budget: float | None = None
    currency: str | None = None
    per_usd: float | None = None
    circuits_max: int | None = None
    volts_max: float | None = None
    headroom_min: float | None = None
    parts_max: int | None = None


@dataclass(frozen=True)
class ExistingCircuit(Record):
    """An existing circuit, which ``assess`` assesses.

    Attributes
    ----------
    group : str
        Group of owned panels.
    panels : str
        Hook-up of the panels: "2S1P" is two in series, one string.
    element : str
        Id of the element, where all are equal.
    bank : str
        Hook-up of equal elements: "1S2P" is two in parallel.
    array : str
        Panels of several groups, instead of `group` and `panels`: "barn pair x2 + shed" is a
        string of three, and " | " joins strings in parallel.
    elements : str
        In place of `element` and `bank`, the ids of unlike elements: "+" joins in series, "|" in
        parallel, brackets hold a part together, as in "[rod-a + rod-b] | rod-c".
    name : str
        Name of the circuit; needed where there are several.
    runs : tuple of str
        Names of its own runs. A run that no circuit names is in each of them.
    devices : tuple of str
        Ids of its own controls. One that no circuit names is in each of them.

    Examples
    --------
    >>> import heatmatch as hm
    >>> hm.demo().circuit.panels
    '2S1P'
    """

    group: str | None = None
    panels: str | None = None
    element: str | None = None
    bank: str | None = None
    array: str | None = None
    name: str | None = None
    elements: str | None = None
    runs: tuple[str, ...] = ()
    devices: tuple[str, ...] = ()
