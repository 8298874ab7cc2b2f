# How all of our own code is built: language level, optimisation, warnings, sanitizers. Third-party headers never see
# the warnings: the targets here are linked to our code only.

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release)
endif()
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
# Eight sources a compiler run: most of a build's time goes to reading the same headers again.
set(CMAKE_UNITY_BUILD ON CACHE BOOL "compile sources of a room together")
set(CMAKE_UNITY_BUILD_BATCH_SIZE 8)
set(CMAKE_ARCHIVE_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/archives)
# The build tree has the shape of an installed one, so that the program finds its plugins in both.
set(CMAKE_RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR}/bin)
set(FLUTEBOOK_PLUGIN_DIR ${PROJECT_BINARY_DIR}/lib/flutebook/plugins)

option(FLUTEBOOK_WERROR "treat our own warnings as errors" OFF)
option(FLUTEBOOK_SANITIZE "address and undefined-behaviour sanitizers" OFF)

# Links what only tests run in a third of the time; without it the compiler's own linker does.
find_program(FLUTEBOOK_LLD ld.lld)

# Without -Wnull-dereference: g++ 12 reports it inside the standard library's own strings. The sanitizer build finds a
# null pointer that is followed.
add_library(flutebook_warnings INTERFACE)
target_compile_options(
  flutebook_warnings
  INTERFACE
    -ffp-contract=off
    $<$<COMPILE_LANGUAGE:CXX>:-Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Wold-style-cast
    -Wnon-virtual-dtor -Woverloaded-virtual -Wcast-qual -Wformat=2 -Wundef -Wextra-semi
    -Wmissing-declarations -Wdouble-promotion>
    # g++ 12 takes `"text" + string` for a copy over itself, in the standard library's own headers.
    $<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond -Wduplicated-branches -Wlogical-op -Wno-restrict>)
if(FLUTEBOOK_WERROR)
  target_compile_options(flutebook_warnings INTERFACE -Werror)
endif()

# What the product and its plugins are built with. Test programs take the warnings and the sanitizers' libraries alone:
# the sanitizers watch the product, and watching the tests as well makes them three times as long to compile.
add_library(flutebook_own INTERFACE)
target_link_libraries(flutebook_own INTERFACE flutebook_warnings)
if(FLUTEBOOK_SANITIZE)
  target_compile_definitions(flutebook_warnings INTERFACE FLUTEBOOK_SANITIZED)
  target_compile_options(flutebook_own INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=undefined
                                                 -fno-omit-frame-pointer)
  # Instrumented code is large: g++ would spend a sixth of its time on sweeping its memory, which seldom frees any.
  target_compile_options(
    flutebook_own
    INTERFACE
      "$<$<COMPILE_LANG_AND_ID:CXX,GNU>:SHELL:--param ggc-min-heapsize=500000 --param ggc-min-expand=200>")
  target_link_options(flutebook_warnings INTERFACE -fsanitize=address,undefined)
  # Each instrumented place has its addresses written in the program. Tests start the program thousands of times, and one
  # that may lie anywhere would have them all written again at each start. Plugins are libraries, which must.
  set(in_a_program "$<NOT:$<BOOL:$<TARGET_PROPERTY:POSITION_INDEPENDENT_CODE>>>")
  target_compile_options(flutebook_warnings INTERFACE $<${in_a_program}:-fno-pie>)
  set(is_a_program "$<STREQUAL:$<TARGET_PROPERTY:TYPE>,EXECUTABLE>")
  target_link_options(flutebook_warnings INTERFACE $<${is_a_program}:-no-pie>)
  if(FLUTEBOOK_LLD)
    target_link_options(flutebook_warnings INTERFACE $<${is_a_program}:-fuse-ld=lld>)
  endif()
endif()

# A room of our own: a static library with explicit sources.
function(flutebook_room name)
  add_library(${name} STATIC ${ARGN})
  target_include_directories(${name} PUBLIC ${PROJECT_SOURCE_DIR})
  target_link_libraries(${name} PRIVATE flutebook_own)
endfunction()
