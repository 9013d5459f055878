#pragma once

// Docstrings of register_glossary.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* glossary = R"(Describe the fields of every kind of part.

Returns
-------
dict
    Kind of part -> list of fields, each a dict of name, unit, range, meaning and more.

Examples
--------
>>> import heatmatch as hm
>>> [field["unit"] for field in hm.glossary()["panel"] if field["name"] == "v_oc"]
['V'])";

inline constexpr const char* installation_glossary =
    R"(Describe the fields of an installation file.

Returns
-------
dict
    Place in the file, such as "site" or "runs.surroundings" -> list of fields as in ``glossary``.

Examples
--------
>>> import heatmatch as hm
>>> [field["unit"] for field in hm.installation_glossary()["site"] if field["name"] == "tilt_deg"]
['deg'])";

}  // namespace heatmatch::python::docs
