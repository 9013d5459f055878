# With HEATMATCH_UNITY the sources of a room are compiled as one, elsewhere seven in a row: less than
# half the time for a whole build, more for a change of one file. Sources see one another's helpers
# then, so that names in the anonymous namespaces of a room, or of all tests, differ.
function(heatmatch_unity target)
    if(NOT HEATMATCH_UNITY)
        return()
    endif()
    set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_BATCH_SIZE 7)
    get_target_property(sources ${target} SOURCES)
    foreach(source IN LISTS sources)
        if(source MATCHES "/libheatmatch/src/(.*)/[^/]*\\.cpp$")
            string(REPLACE "/" "_" room "${CMAKE_MATCH_1}")
            set_source_files_properties("${source}" TARGET_DIRECTORY ${target} PROPERTIES UNITY_GROUP ${room})
            set_target_properties(${target} PROPERTIES UNITY_BUILD_MODE GROUP)
        endif()
    endforeach()
endfunction()
# One looks into every room's table, the other keeps a type of its own where its header names it.
set_source_files_properties("${PROJECT_SOURCE_DIR}/libheatmatch/src/answer/sentence_tables.cpp"
    "${PROJECT_SOURCE_DIR}/libheatmatch/src/solar/monthly_sky.cpp" PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
