#pragma once

// Docstrings of functions in register_ranking.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* rank =
    R"(Rank all pairings of owned panels and allowed elements by heat over the season.

Parameters
----------
catalog : Catalog
    Parts that the installation names.
installation : Installation
    Owned and allowed parts, and the site.
weather : Weather or None
    Weather of the season. None: the monthly means of the installation; without them, pairings are
    ranked by mean power under `conditions`.
top : int
    Candidates kept at most.
keep_rejected : int
    Rejected pairings kept at most, those with most heat first.
max_bank : int
    Elements in one bank at most, 1 to 64.
volts_max : float or None
    Largest open-circuit voltage of an array at the record low [V]; None: that of the goals.
fold : bool
    Whether to list banks of the same load once, unless one is better in something.
group : str
    Only this group of owned panels; empty: all.
element : str
    Only this element, by id; empty: all that are allowed.
panels : str or None
    Only this hook-up of panels, such as "2S1P"; None: all.
bank : str or None
    Only this hook-up of elements, such as "1S2P"; None: all.
conditions : sequence of tuple or None
    Pairs of irradiance [W/m2] and cell temperature [°C], shape (n, 2). None: (1000, 45), (600, 35)
    and (200, 25).
coil_temperature_c : float
    Coil temperature if no store determines it [°C], 20 to 1200.
exact_weather : bool
    Whether to sum every row of `weather`: slow, for reference.
threads : int
    Threads, 0 to 256; 0: as many as the machine has.
vector_width : str
    "automatic", "portable", "avx2" or "avx512".
progress : bool, callable or None
    True for a progress bar, or a function that is called with the completed share, 0 to 1.
memory : RankMemory or None
    Keeps what the next ranking needs again; the result is the same. None keeps nothing.

Returns
-------
Ranking
    Candidates without a known danger, best first, and rejected pairings with their reasons.

Raises
------
InvalidInput
    An option is out of range, or the installation cannot be read.
NotFound
    The catalog lacks a part that the installation names.

Notes
-----
Order: season's heat (mean power without weather) in steps of 1 %, then fewest margins not assessed,
then largest of the smallest headrooms, then lowest price to buy. Pairings with a danger, or above
the budget, are rejected. The price is that of the whole bill. With a budget, pairings whose bill is
not known come last.

References
----------
de-soto-2006 : I-V curves
ross-1980 : cell temperature

Examples
--------
>>> import heatmatch as hm
>>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), top=5)
>>> len(ranking)
5)";

inline constexpr const char* assess =
    R"(Assess the existing circuit of an installation (`installation.circuit`).

Parameters
----------
catalog : Catalog
    Parts that the installation names.
installation : Installation
    What is owned, where it is used, and the existing circuit.
weather : Weather or None
    Weather of the season. None: the monthly means of the installation, if it has any.
conditions : sequence of tuple or None
    Pairs of irradiance [W/m2] and cell temperature [°C], shape (n, 2). None: (1000, 45), (600, 35)
    and (200, 25).
coil_temperature_c : float
    Coil temperature if no store determines it [°C], 20 to 1200.
exact_weather : bool
    Whether to sum every row of `weather`: slow, for reference.
memory : RankMemory or None
    Keeps what the next assessment needs again; the result is the same. None keeps nothing.

Returns
-------
Candidate
    The circuit with its margins, whatever their severity.

Raises
------
InvalidInput
    The installation has no circuit, or more panels in it than it owns, or an option is out of
    range.
NotFound
    The catalog lacks a part that the installation names.

See Also
--------
rank : All pairings instead of one.

Examples
--------
>>> import heatmatch as hm
>>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
>>> candidate.circuit.panels
'2S1P')";

inline constexpr const char* assess_circuits =
    R"(Assess all existing circuits of an installation, which share one store.)";

inline constexpr const char* rank_memory = R"(Make a memory that keeps nothing yet.)";

inline constexpr const char* cautions =
    R"(List the cautions that every report of a circuit must show.

Parameters
----------
in_liquid : bool
    Whether the store holds water or another liquid.

Returns
-------
list of Sentence
    One sentence each.

Notes
-----
Common practice; local codes and licensed practice decide.

Examples
--------
>>> import heatmatch as hm
>>> len(hm.cautions()) > 5
True)";

}  // namespace heatmatch::python::docs
