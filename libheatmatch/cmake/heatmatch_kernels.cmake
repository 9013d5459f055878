# The inner loops are built several times, for wider and wider vectors; the library chooses when it
# runs. Without the two flags the compiler keeps the loops scalar for the sake of errno and traps.
set(heatmatch_solar "${PROJECT_SOURCE_DIR}/libheatmatch/src/solar")
set(heatmatch_loop_flags -O3 -fno-math-errno -fno-trapping-math)
if(CMAKE_SYSTEM_PROCESSOR MATCHES "^(x86_64|AMD64)$")
    target_compile_definitions(heatmatch PRIVATE HEATMATCH_WIDE_KERNELS=1)
    set_source_files_properties("${heatmatch_solar}/diode_kernel_avx2.cpp" PROPERTIES
        COMPILE_OPTIONS "${heatmatch_loop_flags};-mavx2;-mfma")
    set_source_files_properties("${heatmatch_solar}/diode_kernel_avx512.cpp" PROPERTIES
        COMPILE_OPTIONS "${heatmatch_loop_flags};-mavx512f;-mavx512dq;-mfma;-mprefer-vector-width=512")
else()
    target_compile_definitions(heatmatch PRIVATE HEATMATCH_WIDE_KERNELS=0)
    set_source_files_properties("${heatmatch_solar}/diode_kernel_avx2.cpp"
        "${heatmatch_solar}/diode_kernel_avx512.cpp" PROPERTIES HEADER_FILE_ONLY ON)
endif()
set_source_files_properties("${heatmatch_solar}/diode_kernel_portable.cpp" PROPERTIES
    COMPILE_OPTIONS "${heatmatch_loop_flags}")
set_source_files_properties("${heatmatch_solar}/diode_kernel_avx2.cpp"
    "${heatmatch_solar}/diode_kernel_avx512.cpp" "${heatmatch_solar}/diode_kernel_portable.cpp"
    PROPERTIES SKIP_PRECOMPILE_HEADERS ON)
