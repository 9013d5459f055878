#pragma once

// Docstrings of functions in register_diagnosis.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* readings_from_csv = R"(Read meter readings from CSV.

Parameters
----------
text_or_path : str or os.PathLike
    CSV text of several lines, or the path of a file.

Returns
-------
Readings
    One row for each line.

Raises
------
InvalidInput
    A column or cell is not understood; the message states the line and the nearest known column.
FileError
    The file cannot be read.

Notes
-----
Columns: ``unix_time_s`` [s], ``irradiance_w_m2`` [W/m2], ``panel_temperature_c`` [°C], ``array_v``
[V], ``bank_v`` [V], ``bank_a`` [A], ``open_v`` [V], ``short_a`` [A], ``element_ohm`` [ohm],
``bank_ohm`` [ohm], ``sheath_c`` [°C], ``store_c`` [°C] and ``air_c`` [°C], in any order. Cells may
have a unit. ``nan`` is a failed reading, ``OL`` a resistance beyond the range of the meter; empty
cells were not measured.

Examples
--------
>>> import heatmatch as hm
>>> readings = hm.Readings.from_csv("irradiance_w_m2,bank_v,bank_a\n800,44,5.1\n")
>>> readings.rows[0]["bank_a"]
5.1)";

inline constexpr const char* diagnose = R"(Find the faults that explain meter readings.

Parameters
----------
candidate : Candidate
    The circuit that was measured.
readings : Readings
    What was read.
catalog : Catalog or None
    Catalog whose elements are named if another resistance was found.
progress : bool, callable or None
    True for a progress bar, or a function that is called with the completed share, 0 to 1.

Returns
-------
Diagnosis
    Explanations, best first, those that cannot be separated as one group; what to measure next;
    readings left out, in ``remarks``.

Raises
------
InvalidInput
    No reading can be used, times do not rise, leads are swapped, or a column looks like another
    unit.

Notes
-----
Irradiance, cell temperature and what is not known of panels and elements are fitted with each
explanation, within their uncertainty. The score is chi-square plus 1 for each fitted number plus
the rarity of the fault, 0 to 3. Weights are ``exp(-score / 2)`` over the sum of all; explanations
that the readings do not separate have equal weights.)";

}  // namespace heatmatch::python::docs
