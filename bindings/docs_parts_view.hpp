#pragma once

// Docstrings of register_parts_view.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* parts_view_get = R"(Look up a part by id.

Parameters
----------
id : str
    Id of the part.
default : object
    Result if the catalog has no such part.

Returns
-------
Panel, Element or another kind of part
    The part, or `default`.)";

inline constexpr const char* parts_view_keys = R"(List the ids.

Returns
-------
list of str
    Ids in order.)";

inline constexpr const char* parts_view_values = R"(List the parts.

Returns
-------
list
    Parts in order of id.)";

inline constexpr const char* parts_view_items = R"(List ids and parts.

Returns
-------
list of tuple
    Pairs of id and part, in order of id.)";

}  // namespace heatmatch::python::docs
