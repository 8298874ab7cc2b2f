# The package for plugin makers: find_package(flutebook 1 REQUIRED) gives
#
#   flutebook::sdk                    the headers
#   flutebook_add_plugin(NAME ...)    builds NAME.so
#   flutebook_check_plugin(NAME)      tries a built plugin by every rule
#   flutebook_golden_order(NAME DIR)  holds a built plugin against an order whose cost is known
#   flutebook_PROGRAM                 the program that checks, and quotes where the host's models were installed as well
#   flutebook_MODELS                  those models; false where they were not
#
# The same file serves an installed SDK and the project's own build tree.
include(${CMAKE_CURRENT_LIST_DIR}/flutebookTargets.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/flutebook_add_plugin.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/flutebook_check_plugin.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/flutebook_golden_order.cmake)

# share/cmake/flutebook is three below the prefix. Never another Flutebook that happens to be on the PATH.
find_program(flutebook_PROGRAM flutebook PATHS ${CMAKE_CURRENT_LIST_DIR}/../../../bin NO_DEFAULT_PATH)
find_path(flutebook_MODELS run.so PATHS ${CMAKE_CURRENT_LIST_DIR}/../../../lib/flutebook/plugins NO_DEFAULT_PATH)
