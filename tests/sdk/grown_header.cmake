# grown_header(FOLDER): FOLDER/flutebook/plugin.h, today's header as a later minor version might have it: every struct
# that may grow has a field more at its end, the function's block among them.
function(grown_header folder)
  set(header ${PROJECT_SOURCE_DIR}/sdk/include/flutebook/plugin.h)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${header})
  file(READ ${header} text)
  foreach(struct name setting line loss block model)
    string(REPLACE "} flutebook_${struct};" "    double grown_by;\n    const char* and_by;\n} flutebook_${struct};" grown
                   "${text}")
    if(grown STREQUAL text)
      message(FATAL_ERROR "flutebook_${struct} was not found in ${header}, so it has not grown")
    endif()
    set(text "${grown}")
  endforeach()
  file(CONFIGURE OUTPUT ${folder}/flutebook/plugin.h CONTENT "${text}" @ONLY)
endfunction()
