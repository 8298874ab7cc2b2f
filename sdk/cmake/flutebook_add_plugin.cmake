# flutebook_add_plugin(varnish varnish.cpp): builds varnish.so, a model as the host expects it. One definition for the
# project's own models and for a plugin in a folder of its own.
#
# -O3: the SDK's loop over rows is vectorised. -ffp-contract=off and no fast arithmetic: the same bits as every other
# build of this model. Hidden visibility, no unique symbols, a version script, nothing undefined: the file shows the one
# symbol that the host looks for, whatever was linked into it, and needs nothing of the host.
# Sources in C are C99, sources in C++ are C++20, unless the target or the project says otherwise.
function(flutebook_add_plugin name)
  add_library(${name} MODULE ${ARGN})
  target_link_libraries(${name} PRIVATE flutebook::sdk)
  target_compile_options(${name} PRIVATE -O3 -fno-fast-math -ffp-contract=off
                                         $<$<CXX_COMPILER_ID:GNU>:-fno-gnu-unique>)
  set_target_properties(
    ${name}
    PROPERTIES PREFIX ""
               CXX_VISIBILITY_PRESET hidden
               C_VISIBILITY_PRESET hidden
               VISIBILITY_INLINES_HIDDEN ON
               POSITION_INDEPENDENT_CODE ON)
  if(NOT CMAKE_CXX_STANDARD)
    set_target_properties(${name} PROPERTIES CXX_STANDARD 20 CXX_STANDARD_REQUIRED ON CXX_EXTENSIONS OFF)
  endif()
  if(NOT CMAKE_C_STANDARD)
    set_target_properties(${name} PROPERTIES C_STANDARD 99 C_STANDARD_REQUIRED ON C_EXTENSIONS OFF)
  endif()

  set(symbols ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/flutebook_plugin.map)
  target_link_options(${name} PRIVATE -Wl,--version-script=${symbols})
  set_property(TARGET ${name} APPEND PROPERTY LINK_DEPENDS ${symbols})
  if(NOT (FLUTEBOOK_SANITIZE AND CMAKE_CXX_COMPILER_ID STREQUAL "Clang"))
    target_link_options(${name} PRIVATE -Wl,-z,defs)
  endif()
endfunction()
