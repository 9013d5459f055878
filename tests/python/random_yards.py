"""Random installations for properties that must hold of all of them.

A yard has every part inline, with an id of its own, and states every fact it can, so that a test
may take away or move any of them: `parts/wires/wire-home/ampacity_a`.
"""

from __future__ import annotations

import functools
import json
from typing import Any

from case_yards import ROOT, Yard, is_known
from hypothesis import strategies as st

KINDS = (
    "panels",
    "elements",
    "wires",
    "insulations",
    "controls",
    "connectors",
    "media",
    "sheaths",
    "alloys",
)
UNSAID = ("notes", "source_of", "price_low", "price_high", "price_currency")
PANELS = (
    "silicon-60-cell-245",
    "silicon-36-cell-135",
    "silicon-72-cell-300",
    "half-cut-108-cell-405",
    "cdte-100",
    "cdte-430",
)
ELEMENTS = (
    "storage-rod-1000-240",
    "strip-500-240",
    "tubular-1000-120",
    "oven-lower-1200-230",
    "immersion-1000-120",
    "immersion-ultra-low-density-4500-240",
    "immersion-dc-600-48",
)
DRY_FILLS = ("dry-sand", "dry-gravel", "crushed-basalt", "fire-brick", "soapstone")
COOL_WIRES = ("pv-wire-10-awg", "thhn-12-awg", "thhn-14-awg", "xhhw-2-10-awg", "sjoow-12-awg")
HOT_WIRES = ("silicone-14-awg", "silicone-nickel-14-awg", "fep-14-awg", "thhn-12-awg")
COOL_JOINTS = ("pv-plug-4-mm", "lever-splice", "twist-on-plastic")
HOT_JOINTS = ("ceramic-block-steel", "ceramic-block-brass", "tab-receptacle-nickel-steel")
CONTROLS = (
    "pv-isolator-2-pole",
    "pv-isolator-4-pole",
    "dc-breaker-non-polarised-2-pole",
    "dc-breaker-polarised-2-pole",
    "ac-breaker-48-v-dc-listed",
    "dc-contactor-open-150-v",
    "general-purpose-relay",
    "ac-toggle-switch",
    "ac-solid-state-relay",
    "battery-rotary-switch",
    "shorting-switch",
    "dc-contactor-sealed-450-v",
    "dc-solid-state-relay-200-v",
    "snap-disc-fixed",
    "snap-disc-manual-reset",
    "thermal-link",
    "limit-controller-thermocouple",
    "gpv-fuse-10x38",
    "blade-fuse-32-v",
    "panel-meter-dc",
)


@functools.cache
def _rows(kind: str) -> dict[str, Yard]:
    text = (ROOT / "catalog" / f"{kind}.json").read_text(encoding="utf-8")
    return {row["id"]: row for row in json.loads(text)[kind]}


def part(kind: str, of: str, named: str, **facts: Any) -> Yard:
    """A part of the starter catalog under another id, with more facts."""
    row = {key: value for key, value in _rows(kind)[of].items() if key not in UNSAID}
    said = {"id": named, "source": "a random yard", "source_kind": "nameplate"}
    return {**row, **said, **facts}


def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    """Numbers of two decimals, ends included."""
    return st.integers(0, 100).map(lambda share: round(low + (high - low) * share / 100, 4))


@st.composite
def _run(draw: st.DrawFn, parts: Yard, name: str, carries: str, hot: bool) -> Yard:
    wire = draw(st.sampled_from(HOT_WIRES if hot else COOL_WIRES))
    joint = draw(st.sampled_from(HOT_JOINTS if hot else COOL_JOINTS))
    insulation = part("insulations", _rows("wires")[wire]["insulation"], f"cover-{name}")
    parts["insulations"].append({"limit_wet_c": insulation["limit_c"], **insulation})
    facts = {"insulation": f"cover-{name}", "sunlight_resistant": True}
    parts["wires"].append(part("wires", wire, f"wire-{name}", **facts))
    ratings = {"voltage_rating_v": 600, "current_rating_a": 20}
    kept = {**ratings, **_rows("connectors")[joint]}
    known = {key: kept[key] for key in ratings}
    parts["connectors"].append(part("connectors", joint, f"joint-{name}", **known))
    kind = draw(st.sampled_from(("sunlit", "conduit", "open air", "cavity")))
    around = {
        "kind": kind,
        "air_c": draw(numbers(20, 160) if hot else numbers(0, 60)),
        "loaded_conductors": draw(st.integers(2, 12)),
    }
    if kind == "sunlit":
        around["irradiance_w_m2"] = draw(numbers(200, 1200))
    if kind in ("sunlit", "open air"):
        around["wind_m_s"] = draw(numbers(0, 3))
    return {
        "name": name,
        "carries": carries,
        "length_m": draw(numbers(0.1, 1)) if hot else draw(numbers(1, 40)),
        "joint_ohm": draw(numbers(0, 0.05)),
        "wire": f"wire-{name}",
        "connector": f"joint-{name}",
        "surroundings": around,
    }


@st.composite
def _store(draw: st.DrawFn, parts: Yard, wet_element: bool) -> Yard:
    fill = "water" if wet_element and draw(st.booleans()) else draw(st.sampled_from(DRY_FILLS))
    parts["media"].append(part("media", fill, "fill"))
    shape = draw(st.sampled_from(("cylinder", "box")))
    size = draw(numbers(0.35, 0.9))
    walls = {"diameter_m": size} if shape == "cylinder" else {"width_m": size, "depth_m": size}
    store = {
        "medium": "fill",
        "shape": shape,
        **walls,
        "height_m": draw(numbers(0.8, 1.3)),
        "wall_emissivity": draw(numbers(0.2, 0.95)),
        "top_u_w_m2k": draw(numbers(0.5, 6)),
        "bottom_u_w_m2k": draw(numbers(0.5, 6)),
        "element_spacing_mm": draw(numbers(60, 130)),
        "stands": "in space",
        "charge_hours": draw(numbers(3, 10)),
        "air_c": draw(numbers(30, 45)),
        "terminals": draw(st.sampled_from(("through wall", "box outside", "buried"))),
        "vented": draw(st.booleans()),
        "loss_factor": draw(numbers(0.8, 1.3)),
        "combustible_distance_mm": draw(st.sampled_from((0, 50, 300, 900, 1500))),
        "stands_on": draw(st.sampled_from(("wood", "concrete", "soil", "metal legs"))),
        "element_height_mm": draw(numbers(20, 120)),
    }
    store.update(moist=False, from_axis_mm=draw(numbers(0, 10)), element_lies=draw(st.booleans()))
    store |= {"side_u_w_m2k": draw(numbers(0.3, 6))} if draw(st.booleans()) else {}
    return store


@st.composite
def device(draw: st.DrawFn, parts: Yard, named: str) -> Yard:
    """A device, mostly in a duty of its kind; its control is put among the parts."""
    of = draw(st.sampled_from(CONTROLS))
    others = [control["id"] for control in parts["controls"]]
    row = _rows("controls")[of]
    facts: Yard = {"terminal_limit_c": draw(st.sampled_from((60, 75, 90)))}
    if row["family"] == "fuse":
        ampere = draw(st.sampled_from((4, 10, 15, 30)))
        facts["dc_ratings"] = [{**pair, "a_dc": ampere} for pair in row["dc_ratings"]]
    parts["controls"].append(part("controls", of, named, **facts))
    duties = ["breaks dc", "carries dc"]
    if "sense_high_c" in row:
        duties = ["senses only", "breaks dc"]
    if row["family"] == "fuse":
        duties = ["protects a string"]
    if row["family"] == "breaker":
        duties.append("protects a string")
    duty = draw(st.sampled_from(duties))
    made: Yard = {"part": named, "duty": duty, "run": draw(st.sampled_from(("home", "wall")))}
    if duty == "protects a string":  # the runs carry all strings: what protects one lies in none
        made["run"] = draw(st.sampled_from((None, "home")))
    if duty == "senses only":
        made["run"] = None
        low, high = row.get("sense_low_c", 40), row.get("sense_high_c", 150)
        made["set_c"] = draw(numbers(low, min(high, 400)))
        made["senses"] = draw(st.sampled_from(("wall", "lid", "bed")))
        more = {
            "drives": st.lists(st.sampled_from(others), unique=True) if others else st.just([]),
            "set_tolerance_k": numbers(0, 10),
            "opens_on_supply_loss": st.booleans(),
            "opens_on_probe_break": st.booleans(),
        }
        made |= {key: draw(of) for key, of in more.items() if is_known(f"devices/x/{key}")}
    else:
        poles = max([rating.get("poles", 1) for rating in row.get("dc_ratings", [])], default=1)
        made["poles_used"] = draw(st.integers(1, poles))
    return made


@st.composite
def _limit_that_opens(draw: st.DrawFn, parts: Yard) -> list[Yard]:
    """A limit and the contactor that it drives: drawn one by one they seldom meet."""
    named = ("limit-contactor", "limit")
    contactor = {"dc_ratings": [{"v_dc": 1000, "a_dc": draw(numbers(10, 60)), "poles": 1}]}
    parts["controls"].append(part("controls", "dc-contactor-sealed-450-v", named[0], **contactor))
    parts["controls"].append(part("controls", "limit-controller-thermocouple", named[1]))
    limit = {
        "part": named[1],
        "duty": "senses only",
        "run": None,
        "set_c": draw(numbers(35, 110)),
        "senses": draw(st.sampled_from(("wall", "lid", "bed"))),
        "drives": [named[0]],
        "set_tolerance_k": draw(numbers(0, 10)),
        "opens_on_supply_loss": draw(st.booleans()),
        "opens_on_probe_break": draw(st.booleans()),
    }
    return [{"part": named[0], "run": "home", "duty": "breaks dc", "poles_used": 1}, limit]


@st.composite
def yards(draw: st.DrawFn, devices: bool = True) -> Yard:
    """An installation with an existing circuit, and with every field stated."""
    parts: Yard = {kind: [] for kind in KINDS}
    own = part("panels", draw(st.sampled_from(PANELS)), "panel")
    back = 0.7 if own["technology"] in ("mono-Si", "heterojunction") else 0.0  # else opaque
    parts["panels"].append({"bifaciality": back} | own)
    series, parallel = draw(st.integers(1, 4)), draw(st.integers(1, 3))
    element = draw(st.sampled_from(ELEMENTS))
    facts: Yard = {"alloy": "alloy", "built_in_ac_control": False}
    facts |= {"insulation_resistance_mohm": draw(numbers(0.2, 50)), "rated_dc": draw(st.booleans())}
    row = _rows("elements")[element]
    parts["alloys"].append(part("alloys", "nicr-80-20", "alloy"))
    # Its own id: how well its cold end conducts goes by it.
    parts["sheaths"].append(part("sheaths", row["sheath"], row["sheath"]))
    facts["measured_resistance_ohm"] = round(row["rated_v"] ** 2 / row["rated_w"], 3)
    parts["elements"].append(part("elements", element, "element", **facts))
    in_series, branches = draw(st.integers(1, 2)), draw(st.integers(1, 2))
    runs = [
        draw(_run(parts, "home", "array", False)),
        draw(_run(parts, "wall", "array", False)),
        draw(_run(parts, "tail", "bank", True)),
    ]
    count = draw(st.integers(0, 3)) if devices else 0
    placed = [draw(device(parts, f"device-{i}")) for i in range(count)]
    if devices and draw(st.booleans()):
        placed += draw(_limit_that_opens(parts))
    site = {
        "latitude_deg": 44.1,
        "tilt_deg": 60,
        "record_low_c": draw(numbers(-40, 5)),
        "wet": draw(st.booleans()),
        "bright_irradiance_w_m2": draw(numbers(800, 1300)),
    }
    yard = {
        "heatmatch_installation": 1,
        "name": "random",
        "site": site,
        "parts": parts,
        "panels": [{"group": "row", "panel": "panel", "count": 64, "age_years": 0}],
        "elements": [{"element": "element", "count": in_series * branches}],
        "store": draw(_store(parts, element.startswith("immersion"))),
        "runs": runs,
        "devices": placed,
        "goals": {},
        "circuit": {
            "group": "row",
            "panels": f"{series}S{parallel}P",
            "element": "element",
            "bank": f"{in_series}S{branches}P",
        },
    }
    return draw(_with_more(yard))


# Future facts, and their values in a yard.
MORE = {
    "site/live_parts_enclosed": (True, False),
    "site/frames_bonded": (True, False),
    "site/array_on": ("ground", "building"),
    "site/earthing": ("floating", "grounded"),
    "site/code": ("nec", "iec"),
    **dict.fromkeys(("store/vessel_bonded", "store/sheath_bonded"), (True, False)),
    **dict.fromkeys(("store/rods_packed", "store/element_covered"), (True, False)),
    # Materials with a higher limit than the fill: an unstated one is a warning, not a danger.
    "store/vessel": ("stainless steel", "ceramic fibre"),
    "store/liner": ("vermiculite", "ceramic fibre"),
    "store/lagging": ("vermiculite", "ceramic fibre"),
    "store/lagging_mm": (100,),  # the careful end: what is found from the wall's loss is less
}


@st.composite
def _with_more(draw: st.DrawFn, yard: Yard) -> Yard:
    for path, words in MORE.items():
        if is_known(path):
            kind, field = path.split("/")
            yard[kind][field] = draw(st.sampled_from(words))
    for run in yard["runs"]:
        run["inside"] = draw(st.booleans())
        for field, words in (("metal_raceway", (True, False)), ("roof_distance_mm", (0, 30, 900))):
            if is_known(f"runs/x/surroundings/{field}"):
                run["surroundings"][field] = draw(st.sampled_from(words))
    return yard
