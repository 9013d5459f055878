#pragma once

// Docstrings of register_store_log.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* store_log_from_csv = R"(Read a log of a store from CSV.

Parameters
----------
text_or_path : str or os.PathLike
    CSV text of several lines, or the path of a file.

Returns
-------
StoreLog
    The log; readings left out are counted in ``remarks``.

Raises
------
InvalidInput
    A column or cell is not understood, or times do not rise; the message states line and column.
FileError
    The file cannot be read.

Notes
-----
Columns: ``hours`` [h] since any beginning, ``power_w`` [W] into the bank, mean since the row
before, ``air_c`` [°C] around the store, and one for each probe [°C]: ``wall_c``, ``lid_c``,
``sheath_c``, or ``bed_c@0.12,0.40`` with radius and height [m]. Empty cells were not read.

Examples
--------
>>> import heatmatch as hm
>>> text = "hours,power_w,air_c,sheath_c\n0,0,20,20\n1,500,20,95\n"
>>> log = hm.StoreLog.from_csv(text)
>>> len(log), log.readings
(2, 2))";

inline constexpr const char* first_fire =
    R"(List what to log in a first heating with a thermocouple on the sheath, and when to stop.

Parameters
----------
candidate : Candidate
    The circuit, with a described store.

Returns
-------
list of Sentence
    One sentence each, with the limits of the margins of `candidate` [°C]; a limit that is not known
    is stated as not assessed.

Raises
------
InvalidInput
    No store is described, or its fill is a liquid.

See Also
--------
calibrate : What such a log is for.)";

}  // namespace heatmatch::python::docs
