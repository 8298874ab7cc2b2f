# flutebook_add_plugin(varnish varnish.cpp): builds varnish.so, a model as the host expects it.
#
# -O3: the SDK's loop over rows is vectorised. -ffp-contract=off: the same bits as every other build of this model.
# Hidden visibility, no unique symbols, nothing undefined: the file shows one symbol and needs nothing of the host.
function(flutebook_add_plugin name)
  add_library(${name} MODULE ${ARGN})
  target_link_libraries(${name} PRIVATE flutebook::sdk)
  target_compile_options(${name} PRIVATE -O3 -ffp-contract=off $<$<CXX_COMPILER_ID:GNU>:-fno-gnu-unique>)
  set_target_properties(
    ${name}
    PROPERTIES PREFIX ""
               CXX_VISIBILITY_PRESET hidden
               C_VISIBILITY_PRESET hidden
               VISIBILITY_INLINES_HIDDEN ON)
  if(NOT (FLUTEBOOK_SANITIZE AND CMAKE_CXX_COMPILER_ID STREQUAL "Clang"))
    target_link_options(${name} PRIVATE -Wl,-z,defs)
  endif()
endfunction()
