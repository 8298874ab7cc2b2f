# flutebook_check_plugin(varnish): a test that tries the varnish.so just built by every rule that the host knows of a
# plugin, in a process apart. See `flutebook plugin check --help`.
#
# Without a flutebook program there is nothing to check with, and no test.
function(flutebook_check_plugin model)
  if(NOT flutebook_PROGRAM)
    message(STATUS "no flutebook program is installed beside this SDK: ${model} is not checked")
    return()
  endif()
  add_test(NAME ${model}_check COMMAND ${flutebook_PROGRAM} plugin check $<TARGET_FILE:${model}>)
endfunction()
