# Developer mode: warnings as errors in everything of ours, GoogleTest, Google Benchmark, and one way to declare a test.
find_package(Threads REQUIRED)
find_package(GTest REQUIRED)
find_package(benchmark REQUIRED)
find_package(Python3 COMPONENTS Interpreter)
include(GoogleTest)

set(LEVELBOOK_WARNINGS -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wdouble-promotion -Werror)

target_compile_options(levelbook_objects PRIVATE ${LEVELBOOK_WARNINGS})

# levelbook_left_out(WHAT): tells that tests are left out here. Where all are wanted, as a CI does, it is an error.
option(LEVELBOOK_REQUIRE_ALL_TESTS "Refuse to configure where a test must be left out" "$ENV{CI}")
function(levelbook_left_out what)
  set(kind STATUS)
  if(LEVELBOOK_REQUIRE_ALL_TESTS)
    set(kind SEND_ERROR)
  endif()
  message(${kind} "levelbook: left out: ${what}")
endfunction()

# levelbook_ours(NAME): a target of ours that is no part of the library; it sees the public header only.
function(levelbook_ours name)
  target_compile_features(${name} PRIVATE c_std_99 cxx_std_20)
  target_compile_options(${name} PRIVATE ${LEVELBOOK_WARNINGS})
  target_link_libraries(${name} PRIVATE levelbook::static)
  set_target_properties(${name} PROPERTIES CXX_EXTENSIONS OFF C_EXTENSIONS OFF)
endfunction()

# levelbook_quick(NAME): a target that is compiled more often than run. Lines are enough to find a failure by, and a light
# optimization is enough speed.
function(levelbook_quick name)
  if(CMAKE_CXX_COMPILER_ID MATCHES "GNU|Clang")
    target_compile_options(${name} PRIVATE -g1 -O1)
  endif()
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU") # out of precompiled headers GCC 12 sees std::string overstep its bounds
    target_compile_options(${name} PRIVATE -Wno-array-bounds -Wno-restrict -Wno-stringop-overflow -Wno-stringop-overread)
    if(LEVELBOOK_SANITIZE) # and with sanitizers, std::regex use what it has not set
      target_compile_options(${name} PRIVATE -Wno-maybe-uninitialized)
    endif()
  endif()
endfunction()

# levelbook_program(NAME SOURCES...): a program of ours.
function(levelbook_program name)
  add_executable(${name} ${ARGN})
  levelbook_ours(${name})
endfunction()

# Big headers, compiled once for many programs; a source includes what it uses nevertheless.
file(WRITE "${PROJECT_BINARY_DIR}/generated/big_headers.cpp" "// compiled for its headers\n")
add_library(levelbook_big_headers OBJECT "${PROJECT_BINARY_DIR}/generated/big_headers.cpp")
levelbook_ours(levelbook_big_headers)
levelbook_quick(levelbook_big_headers)
target_link_libraries(levelbook_big_headers PRIVATE GTest::gtest Threads::Threads)
target_precompile_headers(levelbook_big_headers PRIVATE
  <gtest/gtest.h> <algorithm> <cmath> <cstdint> <cstring> <functional> <limits> <map> <sstream> <string> <vector>)

# levelbook_test(NAME SOURCES...): a GoogleTest program; each of its tests is a test of ctest, named NAME.suite.test.
function(levelbook_test name)
  levelbook_program(${name} ${ARGN})
  levelbook_quick(${name})
  target_link_libraries(${name} PRIVATE GTest::gtest_main Threads::Threads)
  target_precompile_headers(${name} REUSE_FROM levelbook_big_headers)
  target_include_directories(${name} PRIVATE "${PROJECT_SOURCE_DIR}/tests" "${PROJECT_BINARY_DIR}/generated")
  add_dependencies(${name} levelbook_derived)
  set_target_properties(${name} PROPERTIES RUNTIME_OUTPUT_DIRECTORY "${PROJECT_BINARY_DIR}/bin/tests")
  gtest_discover_tests(${name} TEST_PREFIX "${name}." DISCOVERY_TIMEOUT 60)
endfunction()

# levelbook_lint: clang-tidy and cppcheck over the library, where they are installed. What they found nothing in gets a
# mark, and is read again when it, a header or the choice of checks has changed.
find_program(LEVELBOOK_CLANG_TIDY NAMES clang-tidy-14 clang-tidy)
find_program(LEVELBOOK_CPPCHECK cppcheck)
if(LEVELBOOK_CLANG_TIDY AND LEVELBOOK_CPPCHECK)
  set(lib "${PROJECT_SOURCE_DIR}/lib")
  set(marks "${PROJECT_BINARY_DIR}/lint")
  file(GLOB_RECURSE all_read "${lib}/*.hpp" "${lib}/*.inc" "${PROJECT_SOURCE_DIR}/include/*.h")
  list(APPEND all_read "${PROJECT_SOURCE_DIR}/.clang-tidy" levelbook_derived)
  get_target_property(sources levelbook_objects SOURCES)
  list(REMOVE_DUPLICATES sources)
  list(TRANSFORM sources PREPEND "${lib}/" OUTPUT_VARIABLE source_files)
  foreach(source IN LISTS sources)
    get_filename_component(folder "${marks}/${source}" DIRECTORY)
    file(MAKE_DIRECTORY "${folder}")
    add_custom_command(OUTPUT "${marks}/${source}.tidy"
      COMMAND ${LEVELBOOK_CLANG_TIDY} --quiet -p "${PROJECT_BINARY_DIR}" "${lib}/${source}"
      COMMAND ${CMAKE_COMMAND} -E touch "${marks}/${source}.tidy"
      DEPENDS "${lib}/${source}" ${all_read}
      COMMENT "Reading lib/${source}"
      VERBATIM)
  endforeach()
  list(TRANSFORM sources REPLACE "(.+)" "${marks}/\\1.tidy" OUTPUT_VARIABLE tidy)
  add_custom_command(OUTPUT "${marks}/cppcheck"
    COMMAND ${LEVELBOOK_CPPCHECK} --quiet --error-exitcode=1 --enable=warning,performance,portability --std=c++20
            --language=c++ --inline-suppr -DLVB_BUILDING -I "${PROJECT_SOURCE_DIR}/include" -I "${lib}"
            -I "${PROJECT_BINARY_DIR}/generated"
            --suppress=missingIncludeSystem "--suppress=syntaxError:*/formulas.inc" "${lib}"
    COMMAND ${CMAKE_COMMAND} -E touch "${marks}/cppcheck"
    DEPENDS ${source_files} ${all_read}
    COMMENT "Reading lib with cppcheck"
    VERBATIM)
  add_custom_target(levelbook_lint DEPENDS "${marks}/cppcheck" ${tidy})
endif()
