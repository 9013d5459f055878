# Compiles the starter catalog and the demo installation into the library, so that no installed file has to be found.
set(heatmatch_starter_source "${PROJECT_BINARY_DIR}/starter_catalog.cpp")
set(heatmatch_kinds panels elements wires insulations controls connectors media alloys sheaths
    covers sources)

set(content "#include \"text/starter_text.hpp\"\n\nnamespace heatmatch::starter {\n")
foreach(kind IN LISTS heatmatch_kinds)
    set(file "${PROJECT_SOURCE_DIR}/catalog/${kind}.json")
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${file}")
    file(READ "${file}" text)
    string(APPEND content "const char ${kind}_json[] = R\"heatmatch(${text})heatmatch\";\n")
endforeach()
set(demo_file "${PROJECT_SOURCE_DIR}/notebooks/data/demo_installation.json")
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${demo_file}")
file(READ "${demo_file}" text)
string(APPEND content "const char demo_installation_json[] = R\"heatmatch(${text})heatmatch\";\n")
string(APPEND content "}  // namespace heatmatch::starter\n")
file(CONFIGURE OUTPUT "${heatmatch_starter_source}" CONTENT "@content@" @ONLY)
# A kind is one literal, longer than the least that every compiler has to take.
set_source_files_properties("${heatmatch_starter_source}" PROPERTIES COMPILE_OPTIONS
    "$<$<CXX_COMPILER_ID:Clang>:-Wno-overlength-strings>")
