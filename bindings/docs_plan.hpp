#pragma once

// Docstrings of register_plan.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* class_plan_offer =
    R"(The best plan with less headroom, or below a voltage.

Examples
--------
>>> import heatmatch as hm
>>> offers = hm.plan(hm.Catalog.starter(), hm.demo()).others
>>> [offer.volts_max for offer in offers][-1]
30.0)";

inline constexpr const char* class_idle_panels =
    R"(Panels of a group that a plan leaves out, with the reason.

Examples
--------
>>> import heatmatch as hm
>>> idle = hm.plan(hm.Catalog.starter(), hm.demo()).idle
>>> sum(panels.count for panels in idle) < 8
True)";

inline constexpr const char* plan =
    R"(Find the best use of all owned panels and elements, with its bill.

Parameters
----------
catalog : Catalog
    Parts that the installation names, and parts to buy.
installation : Installation
    Owned and allowed parts, the store, and the goals of the plan.
weather : Weather or None
    Weather of the season. None: the monthly means of the installation.
max_bank : int
    Elements in one bank at most, 1 to 64.
exact_weather : bool
    Whether to sum every row of `weather`: slow, for reference.
threads : int
    Threads, 0 to 256; 0: as many as the machine has.
progress : callable or bool or None
    Called with the share done, 0 to 1; returning False stops. True prints a bar.
memory : RankMemory or None
    Results kept for the next plan or ranking; None keeps nothing.

Returns
-------
Plan
    Circuits that together give the most heat without danger, within the budget.

Raises
------
InvalidInput
    Panels, elements or weather are missing, or a value is out of range.
NotFound
    The catalog lacks a part that the installation names.

Notes
-----
Solved for headroom 0.30, 0.20, 0.10 and 0: the plan has the largest of these with at least 95 %
of the heat at 0. Of plans within 1 % of the most heat it has the smallest bill.

Examples
--------
>>> import heatmatch as hm
>>> plan = hm.plan(hm.Catalog.starter(), hm.demo())
>>> len(plan) > 0 and plan.bill.typical <= 150
True)";

}  // namespace heatmatch::python::docs
