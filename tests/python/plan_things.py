"""Things of a plan for tests of all classes."""

from __future__ import annotations

from typing import Any

import heatmatch as hm


def plan_things(starter: hm.Catalog, demo: hm.Installation) -> list[Any]:
    """A quick plan, one of its offers, panels that it leaves out, and a change that adds heat."""
    few = demo.replace({"elements": [hm.AllowedElements(element="storage-rod-1000-240", count=2)]})
    plan = hm.plan(starter, few)
    low = hm.plan(starter, few.replace({"goals.volts_max": 60}))
    return [plan, plan.others[0], plan.idle[0], low.unlocks(starter)[0]]


def held(thing: Any, name: str) -> Any:
    """A property; what is refused of an array of several groups stays so."""
    try:
        return getattr(thing, name)
    except (hm.InvalidInput, AttributeError):
        return None
