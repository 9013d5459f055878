"""Which way each quantity is dangerous, and which margins it feeds: the table of tests/README.md.

A row says that moving the field in its direction never improves the margins named, whatever the
installation. Paths are of `random_yards`; a `*` stands for every entry of a list.
"""

from __future__ import annotations

import copy
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from case_yards import Yard, counts

Values = dict[str, "float | None"]  # of margins, by name


def always(values: Values) -> bool:
    return True


def is_store_the_hotter(values: Values) -> bool:
    """Whether heat comes out of the store; in hotter air a short cold end cools its terminal."""
    sheath, terminal = values.get("sheath temperature"), values.get("terminal temperature")
    return sheath is None or terminal is None or sheath > terminal


def fits(values: Values) -> bool:
    """Whether the elements fit their store; shorter ones may where longer ones do not."""
    return values.get("sheath temperature") is not None


@dataclass(frozen=True)
class Row:
    """A field, its dangerous direction and the margins that it feeds."""

    field: str
    direction: str
    margins: tuple[str, ...]
    change: Callable[[Any, float], Any]  #: old value and a share of 0 to 1 to new value
    until: str = ""  #: what the library does not do yet
    holds: Callable[[Values], bool] = always  #: whether the direction is the dangerous one there

    def moved(self, yard: Yard, share: float) -> Yard | None:
        """The yard with the field moved; None where it has no such field."""
        made = copy.deepcopy(yard)
        path = self.field.split("/")
        return made if _walk(made, path, lambda old: self.change(old, share)) else None


def _walk(place: Any, path: list[str], change: Callable[[Any], Any]) -> bool:
    """Changes what lies under a path; whether anything did."""
    key, *rest = path
    if isinstance(place, list):
        names = ("name", "id", "part", "group")
        at = [
            index
            for index, item in enumerate(place)
            if key == "*" or key in [item.get(name) for name in names]
        ]
    else:
        at = [key] if place.get(key) is not None else []
    done = False
    for where in at:
        if rest:
            done |= _walk(place[where], rest, change)
            continue
        changed = change(place[where])
        done |= changed != place[where]
        place[where] = changed
    return done


def by(step: float) -> Callable[[Any, float], Any]:
    return lambda old, share: old + step * share


def times(factor: float) -> Callable[[Any, float], Any]:
    """Towards the old value times a factor."""
    return lambda old, share: old * (1 + (factor - 1) * share)


def to(word: Any) -> Callable[[Any, float], Any]:
    return lambda old, share: word


def down_to(low: float, factor: float) -> Callable[[Any, float], Any]:
    """As times(), but not below what the field allows."""
    return lambda old, share: min(old, max(low, old * (1 + (factor - 1) * share)))


def more_by(count: int) -> Callable[[Any, float], Any]:
    return lambda old, share: old + max(1, round(count * share))


def fewer(old: int, share: float) -> int:
    return max(1, old - 1)


def more_in_series(old: str, share: float) -> str:
    series, parallel = counts(old)
    return f"{series + 1}S{parallel}P"


def more_in_parallel(old: str, share: float) -> str:
    series, parallel = counts(old)
    return f"{series}S{parallel + 1}P"


VOLTS = ("cold voltage", "joint voltage", "sheath voltage", "touch voltage", "series arc")
SHEATH = ("sheath temperature", "coil temperature", "settled sand")
GLOWING = (*SHEATH, "survivor sheath")
TAIL = ("terminal temperature", "end seal", "hot tail insulation", "hot tail joint")
WIRE = ("insulation", "plating", "joint")
WALL = ("wall and lid", "touch temperature")
CODE = ("run current", "joint current", "reverse current", "dc breaking")
MADE_OF = ("vessel material", "liner material", "lagging material")
POWER = ("element power", "element voltage", "survivor power")

DISC = down_to(72, 0.3)  # no less than the lowest set point of any control of a yard

MORE = "more"
LESS = "less"
ROWS = (
    Row("site/record_low_c", LESS, (*VOLTS, "dc breaking"), by(-20)),
    Row("site/bright_irradiance_w_m2", MORE, (*WIRE, "dc breaking", "dc carrying"), by(300)),
    Row("site/bright_irradiance_w_m2", MORE, (*POWER, *SHEATH, *TAIL, *WALL), by(300)),
    Row("site/wet", "true", ("touch voltage", "insulation"), to(True)),
    Row("circuit/panels", "more in series", VOLTS, more_in_series),
    Row("circuit/panels", "more in parallel", (*CODE, *WIRE), more_in_parallel),
    Row("parts/panels/panel/v_oc", MORE, VOLTS, times(1.15)),
    Row("parts/panels/panel/i_sc", MORE, (*CODE, *WIRE), times(1.3)),
    Row("parts/panels/panel/bifaciality", MORE, (*CODE, *WIRE), to(1.0)),
    Row("parts/panels/panel/beta_voc_pct_per_k", LESS, VOLTS, by(-0.15)),
    Row("parts/panels/panel/max_system_voltage_v", LESS, ("cold voltage",), times(0.3)),
    Row("parts/panels/panel/max_series_fuse_a", LESS, ("reverse current",), times(0.3)),
    Row("parts/elements/element/rated_w", LESS, ("element power", "survivor power"), times(0.2)),
    Row("parts/elements/element/rated_v", LESS, ("element voltage", "sheath voltage"), times(0.2)),
    Row("parts/elements/element/heated_length_mm", LESS, GLOWING, times(0.6), holds=fits),
    Row("parts/elements/element/cold_length_mm", LESS, TAIL, times(0.4), holds=is_store_the_hotter),
    Row("parts/elements/element/terminal_limit_c", LESS, ("terminal temperature",), times(0.4)),
    Row("parts/elements/element/insulation_resistance_mohm", LESS, ("earth fault",), times(0.02)),
    Row("parts/elements/element/built_in_ac_control", "true", ("built-in control",), to(True)),
    Row("parts/elements/element/rated_dc", "true", ("sheath voltage",), to(True)),
    Row("parts/sheaths/*/verdict_limit_c", LESS, ("sheath temperature",), times(0.5)),
    Row("parts/sheaths/*/verdict_limit_c", LESS, ("survivor sheath",), times(0.5)),
    Row("parts/sheaths/*/verdict_limit_c", LESS, ("stagnation",), times(0.5)),
    Row("parts/alloys/alloy/limit_c", LESS, ("coil temperature",), times(0.3)),
    Row("parts/media/fill/ceiling_c", LESS, ("store ceiling",), down_to(30, 0.2)),
    Row("parts/media/fill/k20_low_w_mk", LESS, SHEATH, times(0.6)),
    Row("store/air_c", MORE, (*SHEATH, "store ceiling", "stagnation", "touch temperature"), by(20)),
    Row("store/air_c", MORE, MADE_OF, by(20)),
    Row("store/charge_hours", MORE, (*SHEATH, *TAIL, *WALL, "store ceiling"), by(6)),
    Row("store/charge_hours", MORE, MADE_OF, by(6)),
    Row("store/top_u_w_m2k", LESS, (*SHEATH, "store ceiling", "stagnation", *MADE_OF), times(0.2)),
    Row("store/bottom_u_w_m2k", LESS, (*SHEATH, "store ceiling", "stagnation"), times(0.2)),
    Row("store/bottom_u_w_m2k", LESS, MADE_OF, times(0.2)),
    Row("store/side_u_w_m2k", LESS, (*SHEATH, "store ceiling", "stagnation", *MADE_OF), times(0.2)),
    Row("store/loss_factor", LESS, (*SHEATH, "store ceiling", "stagnation", *MADE_OF), times(0.4)),
    Row("store/height_m", LESS, ("fit in store",), times(0.4)),
    Row("store/combustible_distance_mm", LESS, ("wall and lid",), times(0.0)),
    # On legs a hand may reach the bottom too.
    Row("store/stands_on", "wood", ("floor",), lambda old, _: old if "legs" in old else "wood"),
    Row("store/vented", "false", ("store ceiling", "pressure"), to(False)),
    Row("store/moist", "true", ("dry-out",), to(True)),
    Row("runs/*/surroundings/air_c", MORE, (*WIRE, "hot tail plating"), by(60)),
    Row("runs/*/surroundings/air_c", MORE, (*TAIL, "device temperature", "run current"), by(60)),
    Row("runs/*/surroundings/irradiance_w_m2", MORE, (*WIRE, *TAIL), by(400)),
    Row("runs/*/surroundings/wind_m_s", LESS, (*WIRE, *TAIL), times(0.0)),
    Row("runs/*/surroundings/loaded_conductors", MORE, (*WIRE, *TAIL, "run current"), more_by(30)),
    Row("runs/*/length_m", MORE, ("voltage drop",), times(4.0)),
    Row("runs/*/length_m", LESS, (*POWER, *SHEATH), times(0.05)),
    Row("runs/*/joint_ohm", MORE, ("voltage drop",), by(0.2)),
    Row("parts/wires/*/ampacity_a", LESS, ("run current",), times(0.3)),
    Row("parts/wires/*/voltage_rating_v", LESS, ("cold voltage",), times(0.1)),
    Row("parts/wires/*/sunlight_resistant", "false", ("sunlight",), to(False)),
    Row(
        "parts/insulations/*/limit_c", LESS, ("insulation", "hot tail insulation"), down_to(40, 0.4)
    ),
    Row("parts/insulations/*/limit_c", LESS, ("run current",), down_to(40, 0.4)),
    Row("parts/connectors/*/limit_c", LESS, ("joint", "hot tail joint"), down_to(40, 0.3)),
    Row("parts/connectors/*/voltage_rating_v", LESS, ("joint voltage",), times(0.1)),
    Row("parts/connectors/*/current_rating_a", LESS, ("joint current",), times(0.1)),
    Row("parts/controls/*/dc_ratings/*/a_dc", LESS, ("dc breaking", "dc carrying"), times(0.1)),
    Row("parts/controls/*/dc_ratings/*/v_dc", LESS, ("dc breaking",), times(0.1)),
    Row("parts/controls/*/own_limit_c", LESS, ("device temperature",), down_to(20, 0.3)),
    Row("parts/controls/*/polarised", "true", ("polarity", "string fuse"), to(True)),
    Row("parts/controls/*/polarised", "true", ("reverse current",), to(True)),
    Row("parts/controls/*/terminal_limit_c", LESS, ("run current",), down_to(20, 0.3)),
    Row("parts/controls/*/sense_high_c", LESS, ("independent limit", "limit supply"), DISC),
    Row("parts/controls/*/sense_high_c", LESS, ("limit acts in time", "stagnation"), DISC),
    Row("devices/*/poles_used", LESS, ("dc breaking",), fewer),
    Row("devices/*/set_c", MORE, ("limit acts in time", "independent limit"), by(300)),
    Row("devices/*/set_c", MORE, ("limit supply", "stagnation"), by(300)),
    Row("devices/*/set_tolerance_k", MORE, ("limit acts in time",), by(50)),
    Row("devices/*/opens_on_supply_loss", "false", ("limit supply",), to(False)),
    Row("devices/*/opens_on_probe_break", "false", ("limit supply",), to(False)),
    Row("site/live_parts_enclosed", "false", ("touch voltage",), to(False)),
    Row("site/frames_bonded", "false", ("bonding",), to(False)),
    Row("store/vessel_bonded", "false", ("bonding",), to(False)),
    Row("store/sheath_bonded", "false", ("bonding",), to(False)),
    Row("store/rods_packed", "false", ("sheath temperature", "coil temperature"), to(False)),
    Row("store/element_covered", "false", ("element covered",), to(False)),
    Row("store/vessel", "polystyrene", ("vessel material",), to("polystyrene")),
    Row("store/liner", "polystyrene", ("liner material",), to("polystyrene")),
    Row("store/lagging", "polystyrene", ("lagging material",), to("polystyrene")),
    Row("store/lagging_mm", MORE, TAIL, by(200)),
    Row("runs/*/inside", "true", ("placing",), to(True)),
    Row("runs/*/surroundings/metal_raceway", "false", ("placing",), to(False)),
    Row("runs/*/surroundings/roof_distance_mm", LESS, ("run current",), times(0.0)),
)


STORE_FACTS = (
    "charge_hours air_c vented moist combustible_distance_mm stands_on element_height_mm "
    "from_axis_mm element_lies vessel_bonded sheath_bonded rods_packed element_covered vessel "
    "liner lagging lagging_mm "
)

# What a yard may leave out; its values lie between the usual and the careful one. Not a wire's own
# amperes (a maker may print less than the code) nor a cold length (no end is careful for all).
FACTS = {
    "site/wet": "",
    "site/live_parts_enclosed": "",
    "site/frames_bonded": "",
    "site/array_on": "",
    "site/earthing": "",
    "site/code": "",
    **{f"store/{name}": "" for name in STORE_FACTS.split()},
    "runs/*/connector": "",
    "runs/*/inside": "",
    "runs/*/surroundings/air_c": "",
    "runs/*/surroundings/wind_m_s": "",
    "runs/*/surroundings/metal_raceway": "",
    "runs/*/surroundings/roof_distance_mm": "",
    "devices/*/set_c": "",
    "devices/*/drives": "",
    "devices/*/set_tolerance_k": "",
    "devices/*/opens_on_supply_loss": "",
    "devices/*/opens_on_probe_break": "",
    "devices/*/poles_used": "",
    "parts/panels/panel/bifaciality": "",
    "parts/panels/panel/max_system_voltage_v": "",
    "parts/panels/panel/max_series_fuse_a": "",
    "parts/elements/element/insulation_resistance_mohm": "",
    "parts/elements/element/built_in_ac_control": "",
    "parts/elements/element/terminal_limit_c": "",
    "parts/elements/element/rated_w": "",
    "parts/elements/element/rated_v": "",
    "parts/elements/element/rated_dc": "",
    "parts/elements/element/sheath": "",
    "parts/elements/element/alloy": "",
    "parts/elements/element/heated_length_mm": "",
    "parts/media/fill/ceiling_c": "",
    "parts/wires/*/voltage_rating_v": "",
    "parts/wires/*/sunlight_resistant": "",
    "parts/insulations/*/limit_wet_c": "",
    "parts/connectors/*/voltage_rating_v": "",
    "parts/connectors/*/current_rating_a": "",
    "parts/controls/*/dc_ratings": "",
    "parts/controls/*/own_limit_c": "",
    "parts/controls/*/polarised": "",
    "parts/controls/*/terminal_limit_c": "",
    "parts/controls/*/poles": "",
    "parts/controls/*/semiconductor": "",
    "parts/controls/*/ac_only": "",
}


def without(yard: Yard, path: str) -> Yard | None:
    """The yard without a fact; None where it does not state it."""
    made = copy.deepcopy(yard)
    *way, last = path.split("/")

    def drop(place: Any) -> Any:
        return {key: value for key, value in place.items() if key != last}

    return made if _walk(made, way, drop) else None


def pairs() -> set[tuple[str, str]]:
    return {(row.field, margin) for row in ROWS for margin in row.margins}


def table() -> str:
    """The rows as tests/README.md shows them: fields once, in their order."""
    joined: dict[tuple[str, str], list[str]] = {}
    for row in ROWS:
        joined.setdefault((row.field, row.direction), []).extend(row.margins)
    head = "| field | dangerous direction | margins that must not improve |\n|---|---|---|\n"
    lines = [
        f"| `{field}` | {direction} | {', '.join(dict.fromkeys(margins))} |"
        for (field, direction), margins in joined.items()
    ]
    return head + "\n".join(lines) + "\n"
