# A room is a folder with one static library; a test of a room is one executable of its own, so that either builds alone.
include_guard()

add_library(floatwright_flags INTERFACE)
target_compile_features(floatwright_flags INTERFACE cxx_std_20)
target_compile_options(floatwright_flags INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Wshadow)
target_include_directories(floatwright_flags INTERFACE ${PROJECT_SOURCE_DIR})
# One set of flags for all, so that headers compiled once serve every room; and no memory collected while compiling until a
# source has used 2 GB, which none does: up to a tenth of its time, for 15 % more memory.
target_link_libraries(floatwright_flags INTERFACE Threads::Threads)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  target_compile_options(floatwright_flags INTERFACE "SHELL:--param ggc-min-heapsize=2000000")
endif()
if(FLOATWRIGHT_WARNINGS_ARE_ERRORS)
  target_compile_options(floatwright_flags INTERFACE -Werror)
endif()
if(FLOATWRIGHT_SANITIZERS)
  target_compile_options(floatwright_flags INTERFACE -fsanitize=address,undefined -fno-omit-frame-pointer -fno-sanitize-recover=all)
  target_link_options(floatwright_flags INTERFACE -fsanitize=address,undefined)
endif()

# Called for every executable: what a sanitizer build links beside it.
function(floatwright_executable name)
  if(FLOATWRIGHT_SANITIZERS)
    target_sources(${name} PRIVATE ${PROJECT_SOURCE_DIR}/config/cmake/leak_suppressions.cpp)
  endif()
endfunction()

# A cold build spends most of its time on the headers of the language and of packages: several sources are compiled as one
# where a build is for running all tests. A room's sources share a namespace, so one that uses a name
# for another thing than its neighbours is named under ALONE; the development build compiles each by itself and tells
# what a source forgot to include.
option(FLOATWRIGHT_SOURCES_TOGETHER "Compile several sources of a room or a test as one: a cold build takes half" OFF)
function(floatwright_together name sources_at_once)
  set_target_properties(${name} PROPERTIES UNITY_BUILD ${FLOATWRIGHT_SOURCES_TOGETHER} UNITY_BUILD_BATCH_SIZE ${sources_at_once})
  if(ARGN)
    set_source_files_properties(${ARGN} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
  endif()
endfunction()

# With it the language's headers are read once, for all rooms: 1 to 2 s of the 6 to 13 s that a few sources of one take.
function(floatwright_read_once name)
  if(NOT FLOATWRIGHT_SOURCES_TOGETHER)
    return()
  endif()
  if(NOT TARGET precompiled_language)
    file(WRITE ${PROJECT_BINARY_DIR}/precompiled_language.cpp "")
    add_library(precompiled_language STATIC ${PROJECT_BINARY_DIR}/precompiled_language.cpp)
    target_link_libraries(precompiled_language PRIVATE floatwright_flags)
    target_precompile_headers(precompiled_language PRIVATE
      <algorithm> <array> <chrono> <cmath> <cstdint> <functional> <map> <memory> <numeric> <optional> <set> <span>
      <string> <string_view> <utility> <vector>)
  endif()
  target_precompile_headers(${name} REUSE_FROM precompiled_language)
endfunction()

# floatwright_room(NAME HEADERS a.hpp ... SOURCES a.cpp ... ALONE a.cpp ... USES other_room pkg::target ... PRIVATELY pkg::target ...)
# Every header compiles alone: a.cpp includes a.hpp before all else (tests/architecture holds that), and a header without
# a source of its own is compiled by all_verify_interface_header_sets.
# LIGHTLY: a room that only carries words and bytes, or calls other rooms; more optimising would cost the build more than it
# gives. -Og is what this compiler is quickest with, by a fifth to a quarter of the time of -O1.
function(floatwright_room name)
  cmake_parse_arguments(room "LIGHTLY" "" "HEADERS;SOURCES;ALONE;USES;PRIVATELY" ${ARGN})
  set(with_source "")
  set(alone "")
  foreach(header ${room_HEADERS})
    string(REGEX REPLACE "hpp$" "cpp" own_source ${header})
    if(own_source IN_LIST room_SOURCES)
      list(APPEND with_source ${header})
    else()
      list(APPEND alone ${header})
    endif()
  endforeach()
  if(room_SOURCES)
    add_library(${name} STATIC ${room_SOURCES})
    floatwright_together(${name} 8 ${room_ALONE})
    floatwright_read_once(${name})
    target_link_libraries(${name} PUBLIC floatwright_flags ${room_USES} PRIVATE ${room_PRIVATELY})
    target_sources(${name} PUBLIC FILE_SET HEADERS BASE_DIRS ${PROJECT_SOURCE_DIR} FILES ${with_source})
    set(scope PUBLIC)
  else()
    add_library(${name} INTERFACE)
    target_link_libraries(${name} INTERFACE floatwright_flags ${room_USES})
    set(scope INTERFACE)
  endif()
  target_sources(${name} ${scope} FILE_SET alone TYPE HEADERS BASE_DIRS ${PROJECT_SOURCE_DIR} FILES ${alone})
  set_target_properties(${name} PROPERTIES INTERFACE_HEADER_SETS_TO_VERIFY alone)
  if(room_LIGHTLY)
    target_compile_options(${name} PRIVATE $<$<CONFIG:Release>:-Og>)
  endif()
endfunction()

# What every test compiles with: optimised lightly (the rooms under test are not theirs to optimise), and gmock's headers
# read once. A compiler cache that shares between build folders does better without the second.
option(FLOATWRIGHT_PRECOMPILED_TESTS "Precompile heavy packaged headers for the tests" ON)
function(floatwright_test_flags name)
  target_link_libraries(${name} PRIVATE floatwright_flags GTest::gmock Threads::Threads)
  target_compile_definitions(${name} PRIVATE
    FLOATWRIGHT_SOURCE_DIR="${PROJECT_SOURCE_DIR}" FLOATWRIGHT_BINARY_DIR="${PROJECT_BINARY_DIR}")
  target_compile_options(${name} PRIVATE $<$<CONFIG:Release>:-Og> -Wno-dangling-else)  # what EXPECT_ makes of an if
endfunction()

# floatwright_test(NAME SOURCES a_test.cpp ... ALONE a_test.cpp ... USES room ...): one executable, each TEST a ctest of its own.
function(floatwright_test name)
  cmake_parse_arguments(test "" "" "SOURCES;ALONE;USES" ${ARGN})
  add_executable(${name} ${test_SOURCES})
  floatwright_together(${name} 4 ${test_ALONE})
  floatwright_executable(${name})
  target_link_libraries(${name} PRIVATE ${test_USES} GTest::gmock_main)
  floatwright_test_flags(${name})
  if(FLOATWRIGHT_PRECOMPILED_TESTS)
    if(NOT TARGET precompiled_gmock)
      file(WRITE ${PROJECT_BINARY_DIR}/precompiled_gmock.cpp "")
      add_library(precompiled_gmock STATIC ${PROJECT_BINARY_DIR}/precompiled_gmock.cpp)
      floatwright_test_flags(precompiled_gmock)
      target_precompile_headers(precompiled_gmock PRIVATE <gmock/gmock.h> <gtest/gtest.h> <nlohmann/json.hpp>)
    endif()
    target_precompile_headers(${name} REUSE_FROM precompiled_gmock)
  endif()
  gtest_discover_tests(${name} DISCOVERY_MODE PRE_TEST PROPERTIES TIMEOUT 120)
endfunction()
