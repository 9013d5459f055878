# What the library is built with: an installed package where there is one, else a pinned release.
# Without a network, point FETCHCONTENT_SOURCE_DIR_<NAME> at an unpacked source tree.
include(FetchContent)

set(THREADS_PREFER_PTHREAD_FLAG ON)
find_package(Threads REQUIRED)

find_package(nlohmann_json 3.10 QUIET)
if(NOT nlohmann_json_FOUND)
    FetchContent_Declare(nlohmann_json
        GIT_REPOSITORY https://github.com/nlohmann/json.git
        GIT_TAG v3.11.3)
    FetchContent_MakeAvailable(nlohmann_json)
endif()

find_package(SQLiteCpp 3.2 QUIET)
if(NOT SQLiteCpp_FOUND)
    set(SQLITECPP_RUN_CPPLINT OFF CACHE BOOL "" FORCE)
    set(SQLITECPP_RUN_CPPCHECK OFF CACHE BOOL "" FORCE)
    FetchContent_Declare(SQLiteCpp
        GIT_REPOSITORY https://github.com/SRombauts/SQLiteCpp.git
        GIT_TAG 3.3.2)
    FetchContent_MakeAvailable(SQLiteCpp)
endif()

if(POLICY CMP0167)
    cmake_policy(SET CMP0167 OLD)  # accept the module as well as Boost's own package file
endif()
find_package(Boost 1.74 QUIET)
if(NOT Boost_FOUND)
    FetchContent_Declare(boost_math
        GIT_REPOSITORY https://github.com/boostorg/math.git
        GIT_TAG boost-1.84.0)
    FetchContent_MakeAvailable(boost_math)
    if(NOT TARGET Boost::headers)
        add_library(Boost::headers INTERFACE IMPORTED)
        target_include_directories(Boost::headers INTERFACE "${boost_math_SOURCE_DIR}/include")
        target_compile_definitions(Boost::headers INTERFACE BOOST_MATH_STANDALONE=1)
    endif()
endif()
