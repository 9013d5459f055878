#pragma once

// Docstrings of register_setting.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* record_init = R"(Make the record from its fields.

Parameters
----------
**arguments : number, str, list, dict or None
    Values by field; a number may be text with a unit. None, or no value, leaves a field unknown.
    ``installation_glossary`` lists fields, units and ranges.

Raises
------
InvalidInput
    A field is unknown, missing or out of range.)";

inline constexpr const char* record_to_dict = R"(Convert the record to a dict.

Returns
-------
dict
    Known fields by name, in the unit of the name.)";

// Examples of to_dict().
inline constexpr const char* surroundings_example =
    R"(>>> hm.Surroundings.conduit(40).to_dict()
{'kind': 'conduit', 'air_c': 40.0})";
inline constexpr const char* site_example = R"(>>> hm.demo().site.to_dict()["record_low_c"]
-32.0)";
inline constexpr const char* store_example = R"(>>> hm.demo().store.to_dict()["medium"]
'dry-sand')";
inline constexpr const char* wire_run_example = R"(>>> hm.demo().runs[0].to_dict()["length_m"]
9.0)";
inline constexpr const char* device_example = R"(>>> hm.demo().devices[0].to_dict()["duty"]
'breaks dc')";
inline constexpr const char* owned_panels_example = R"(>>> hm.demo().panels[0].to_dict()["count"]
2)";

inline constexpr const char* open_air = R"(Describe still air around a wire.

Parameters
----------
air_c : float
    Air temperature [°C].

Returns
-------
Surroundings
    Still air without sun.

Raises
------
InvalidInput
    `air_c` is out of range.

Examples
--------
>>> import heatmatch as hm
>>> hm.Surroundings.open_air(30).air_c
30.0)";

inline constexpr const char* sunlit = R"(Describe still air around a wire in the sun.

Parameters
----------
air_c : float
    Air temperature [°C].
irradiance_w_m2 : float
    Irradiance on the wire [W/m2].

Returns
-------
Surroundings
    Still air in the sun.

Raises
------
InvalidInput
    A number is out of range.

Examples
--------
>>> import heatmatch as hm
>>> hm.Surroundings.sunlit(30).irradiance_w_m2
1000.0)";

inline constexpr const char* conduit = R"(Describe conduit around a wire.

Parameters
----------
air_c : float
    Air temperature around the conduit [°C].

Returns
-------
Surroundings
    Conduit in still air.

Raises
------
InvalidInput
    `air_c` is out of range.

Examples
--------
>>> import heatmatch as hm
>>> print(hm.Surroundings.conduit(40).kind)
conduit)";

inline constexpr const char* demo = R"(Read the bundled demo installation.

Returns
-------
Installation
    An invented seedling house.

Examples
--------
>>> import heatmatch as hm
>>> len(hm.demo().panels)
3)";

}  // namespace heatmatch::python::docs
