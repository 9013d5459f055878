#pragma once

// Docstrings of register_plan.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* class_plan_offer =
    R"(The best plan with less headroom, or below a voltage.

Examples
--------
>>> import heatmatch as hm
>>> offers = hm.plan(hm.Catalog.starter(), hm.demo()).others
>>> [offer.volts_max for offer in offers if offer.volts_max][-1]
30.0)";

inline constexpr const char* class_idle_panels =
    R"(Panels of a group that a plan leaves out, with the reason.

Examples
--------
>>> import heatmatch as hm
>>> idle = hm.plan(hm.Catalog.starter(), hm.demo()).idle
>>> sum(panels.count for panels in idle) < 8
True)";

inline constexpr const char* class_unlock =
    R"(A single change with which the best plan has more heat.

Examples
--------
>>> import heatmatch as hm
>>> cat = hm.Catalog.starter()
>>> plan = hm.plan(cat, hm.demo())
>>> all(unlock.kwh > 0.0 for unlock in plan.unlocks(cat))
True)";

inline constexpr const char* plan_unlocks =
    "Find single changes that add heat to a plan. See face/planned.py.";

inline constexpr const char* plan =
    "Find the best use of all owned panels and elements, with its bill. See face/planned.py.";

}  // namespace heatmatch::python::docs
