# Quotes a golden order with one built plugin and compares what it charges; of a model that charges nothing, what it
# provides to others. Run by flutebook_golden_order with
#   PROGRAM  the flutebook program        MODEL  the model's id        PLUGIN  its built file
#   GOLDEN   the folder of the golden order: a plant's files, order.yaml, expected.csv
#   PLACE    a scratch folder of ours     TAKE   on: what was found becomes expected.csv
# The golden plant is copied, so that the author's folder is never written to but by TAKE.
cmake_minimum_required(VERSION 3.25)

file(REMOVE_RECURSE ${PLACE})
file(COPY ${GOLDEN}/ DESTINATION ${PLACE})
file(MAKE_DIRECTORY ${PLACE}/plugins)
file(COPY_FILE ${PLUGIN} ${PLACE}/plugins/${MODEL}.so)

execute_process(
  COMMAND ${PROGRAM} --plant ${PLACE} quote ${PLACE}/order.yaml --json --provided ${MODEL}
  OUTPUT_VARIABLE answer
  ERROR_VARIABLE complaints
  RESULT_VARIABLE result)
if(NOT result EQUAL 0)
  message(FATAL_ERROR "the golden order has no quote: ${PROGRAM} ended with ${result}\n${complaints}")
endif()

# What the answer says of the model, one row a line of it or a number that it provides. Numbers as the answer spells
# them: read as JSON by CMake they would come out with all digits of a double. Steps count from 0, the corrugator, plies
# from 1, the outside one.
function(flutebook_rows pattern keys rows)
  set(boxes "\"quantity\": [0-9]+,[ \n]*\"corrugator\"")
  string(REGEX MATCHALL "${boxes}|${pattern}" parts "${answer}")
  set(found "")
  foreach(part IN LISTS parts)
    if(part MATCHES "^\"quantity\": ([0-9]+)")
      set(ordered ${CMAKE_MATCH_1})
      continue()
    endif()
    set(row ${ordered})
    foreach(key IN LISTS keys)
      string(REGEX MATCH "\"${key}\": \"?([^\",}]*)" value "${part}")
      string(REPLACE "null" "" value "${CMAKE_MATCH_1}")
      if(key STREQUAL "ply" AND NOT value STREQUAL "")
        math(EXPR value "${value} + 1")
      endif()
      string(APPEND row ",${value}")
    endforeach()
    list(APPEND found "${row}")
  endforeach()
  set(${rows} "${found}" PARENT_SCOPE)
endfunction()

set(verb charges)
set(found "boxes,line,step,ply,amount")
flutebook_rows("{\"plugin\": \"${MODEL}\"[^}]*}" "line;step;ply;amount" rows)
if(NOT rows)
  flutebook_rows("{\"name\": \"[^\"]*\", \"step\"[^}]*}" "name;step;ply;value" rows)
  if(rows)
    set(verb provides)
    set(found "boxes,name,step,ply,value")
  endif()
endif()
list(APPEND found ${rows})

set(expected "")
if(EXISTS ${GOLDEN}/expected.csv)
  file(STRINGS ${GOLDEN}/expected.csv expected)
endif()
if(found STREQUAL expected)
  message(STATUS "${MODEL} ${verb} what golden/expected.csv says")
  return()
endif()

# Rows of both, in their order: those that were expected alone begin with -, those that were found alone with +.
message(NOTICE "- expected   + found")
foreach(row IN LISTS expected)
  if(NOT row IN_LIST found)
    message(NOTICE "- ${row}")
  endif()
endforeach()
foreach(row IN LISTS found)
  if(row IN_LIST expected)
    message(NOTICE "  ${row}")
  else()
    message(NOTICE "+ ${row}")
  endif()
endforeach()
if(TAKE)
  list(JOIN found "\n" text)
  file(WRITE ${GOLDEN}/expected.csv "${text}\n")
  message(NOTICE "taken as expected: ${GOLDEN}/expected.csv")
else()
  message(FATAL_ERROR "${MODEL} ${verb} something else than ${GOLDEN}/expected.csv says: see the rows above\n"
                      "where what was found is right, build the target ${MODEL}_golden: it takes it as expected")
endif()
