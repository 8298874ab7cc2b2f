# Quotes a golden order with one built plugin and compares its lines. Run by flutebook_golden_order with
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
  COMMAND ${PROGRAM} --plant ${PLACE} quote ${PLACE}/order.yaml --json
  OUTPUT_VARIABLE answer
  ERROR_VARIABLE complaints
  RESULT_VARIABLE result)
if(NOT result EQUAL 0)
  message(FATAL_ERROR "the golden order has no quote: ${PROGRAM} ended with ${result}\n${complaints}")
endif()

# Numbers as the answer spells them: read as JSON by CMake they would come out with all digits of a double.
set(line "{\"plugin\": \"${MODEL}\"[^}]*}")
set(boxes "\"quantity\": [0-9]+,[ \n]*\"corrugator\"")
string(REGEX MATCHALL "${boxes}|${line}" parts "${answer}")
set(found "boxes,line,step,ply,amount\n")
foreach(part IN LISTS parts)
  if(part MATCHES "^\"quantity\": ([0-9]+)")
    set(ordered ${CMAKE_MATCH_1})
    continue()
  endif()
  set(row ${ordered})
  foreach(key line step ply amount)
    string(REGEX MATCH "\"${key}\": \"?([^\",}]*)" value "${part}")
    string(REPLACE "null" "" value "${CMAKE_MATCH_1}")
    string(APPEND row ",${value}")
  endforeach()
  string(APPEND found "${row}\n")
endforeach()

set(expected "")
if(EXISTS ${GOLDEN}/expected.csv)
  file(READ ${GOLDEN}/expected.csv expected)
endif()
if(found STREQUAL expected)
  message(STATUS "${MODEL} charges what golden/expected.csv says")
  return()
endif()
set(difference "expected\n${expected}\nfound\n${found}")
if(TAKE)
  file(WRITE ${GOLDEN}/expected.csv "${found}")
  message("${difference}\ntaken as expected: ${GOLDEN}/expected.csv")
else()
  message(FATAL_ERROR "${MODEL} does not charge what ${GOLDEN}/expected.csv says\n${difference}\n"
                      "where what was found is right, build the target ${MODEL}_golden: it takes it as expected")
endif()
