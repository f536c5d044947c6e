# A room is a folder with one static library; a test of a room is one executable of its own, so that either builds alone.
include_guard()

add_library(floatwright_flags INTERFACE)
target_compile_features(floatwright_flags INTERFACE cxx_std_20)
target_compile_options(floatwright_flags INTERFACE -Wall -Wextra -Wpedantic -Wconversion -Wshadow)
target_include_directories(floatwright_flags INTERFACE ${PROJECT_SOURCE_DIR})
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

# floatwright_room(NAME HEADERS a.hpp ... SOURCES a.cpp ... USES other_room pkg::target ... PRIVATELY pkg::target ...)
# Every header listed is also compiled alone (all_verify_interface_header_sets).
function(floatwright_room name)
  cmake_parse_arguments(room "" "" "HEADERS;SOURCES;USES;PRIVATELY" ${ARGN})
  if(room_SOURCES)
    add_library(${name} STATIC ${room_SOURCES})
    target_sources(${name} PUBLIC FILE_SET HEADERS BASE_DIRS ${PROJECT_SOURCE_DIR} FILES ${room_HEADERS})
    target_link_libraries(${name} PUBLIC floatwright_flags ${room_USES} PRIVATE ${room_PRIVATELY})
  else()
    add_library(${name} INTERFACE)
    target_sources(${name} INTERFACE FILE_SET HEADERS BASE_DIRS ${PROJECT_SOURCE_DIR} FILES ${room_HEADERS})
    target_link_libraries(${name} INTERFACE floatwright_flags ${room_USES})
  endif()
endfunction()

# floatwright_test(NAME SOURCES a_test.cpp ... USES room ...): one executable, each TEST a ctest of its own.
function(floatwright_test name)
  cmake_parse_arguments(test "" "" "SOURCES;USES" ${ARGN})
  add_executable(${name} ${test_SOURCES})
  floatwright_executable(${name})
  target_link_libraries(${name} PRIVATE ${test_USES} GTest::gmock_main)
  target_compile_definitions(${name} PRIVATE
    FLOATWRIGHT_SOURCE_DIR="${PROJECT_SOURCE_DIR}" FLOATWRIGHT_BINARY_DIR="${PROJECT_BINARY_DIR}")
  gtest_discover_tests(${name} DISCOVERY_MODE PRE_TEST PROPERTIES TIMEOUT 120)
endfunction()
