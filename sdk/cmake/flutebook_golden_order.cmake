# flutebook_golden_order(varnish golden): a test that quotes golden/order.yaml on the plant in golden/ with the varnish.so
# just built, and compares what the model charges with golden/expected.csv. The target varnish_golden shows the
# difference and takes what was found as expected.
#
# Without a flutebook program and the host's models there is nothing to quote with, and no test.
function(flutebook_golden_order model folder)
  if(NOT flutebook_PROGRAM OR NOT flutebook_MODELS)
    message(STATUS "the host's models are not installed beside this SDK: the golden order of ${model} is not tried")
    return()
  endif()
  set(compare
      ${CMAKE_COMMAND} -DPROGRAM=${flutebook_PROGRAM} -DMODEL=${model} -DPLUGIN=$<TARGET_FILE:${model}>
      -DGOLDEN=${CMAKE_CURRENT_SOURCE_DIR}/${folder} -DPLACE=${CMAKE_CURRENT_BINARY_DIR}/${model}_golden)
  set(script ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/flutebook_compare_golden.cmake)
  add_test(NAME ${model}_golden_order COMMAND ${compare} -P ${script})
  add_custom_target(
    ${model}_golden
    COMMAND ${compare} -DTAKE=ON -P ${script}
    DEPENDS ${model}
    VERBATIM)
endfunction()
