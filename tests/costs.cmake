# What takes longest, by seconds of a test under the sanitizers: where several run at a time, ctest begins these tests
# first, so that none of them runs alone at the end. Read by ctest after the tests of each program; a name that no test
# has costs nothing.
foreach(test_and_seconds
    "plugin_check:a plugin that hangs is killed, in whatever phase=20"
    "plugin_check:a plugin that ends its process or affects others breaks that rule only=15"
    "plugin_check:a wrong evaluation breaks that rule only=13"
    "plugin_check:each of the host's own models keeps every rule=12"
    "plugin_check:each of the host's own models passes its trial=12"
    "system_short_answer:every figure of a quote is explained, by the key that the document has for it=30"
    "unit_engine:mass balances for every candidate of 10,000 generated plants and orders=24"
    "unit_engine:mass balances for every candidate of 2,500 generated orders, alone and whatever share of trim they pay=20"
    "web:a model that hangs while it costs is told on the page, and others are answered meanwhile=21"
    "web:clients that send a byte a second are cut off, and others are answered meanwhile=10"
    "sdk_commands:a plugin that would end the program, or never come back, is refused by name and the program ends in order=20"
    "sdk_commands:every name, setting, line and cause of a plugin stands in each form of its description=12"
    "faults_ledger:whatever it does, a ledger on a disk that fills up stays whole and goes on when there is room=19"
    "faults_at_speed:killed at 120 instants of posting, a ledger keeps what it acknowledged, and no half of a group=10"
    "system_beside:a ranking has the same bytes on one thread and on two=14"
    "unit_ledger:whichever column of whichever row is changed, the proof finds it=13"
    "plugin_worker:a hang ends at the deadline and loses its own order=10"
    "system_face:an answer of a thousand requests in JSON takes the memory of a hundred=8")
  string(REGEX MATCH "^(.*)=([0-9]+)$" whole "${test_and_seconds}")
  set_tests_properties("${CMAKE_MATCH_1}" PROPERTIES COST "${CMAKE_MATCH_2}")
endforeach()
