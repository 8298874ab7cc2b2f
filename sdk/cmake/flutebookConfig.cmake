# The package for plugin makers: find_package(flutebook 1 REQUIRED) gives
#
#   flutebook::sdk                    the headers
#   flutebook_add_plugin(NAME ...)    builds NAME.so
#   flutebook_golden_order(NAME DIR)  holds a built plugin against an order whose cost is known
#   flutebook_PROGRAM                 the program that quotes, where it was installed as well
#
# The same file serves an installed SDK and the project's own build tree.
include(${CMAKE_CURRENT_LIST_DIR}/flutebookTargets.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/flutebook_add_plugin.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/flutebook_golden_order.cmake)

# share/cmake/flutebook is three below the prefix. Never another Flutebook that happens to be on the PATH.
find_program(flutebook_PROGRAM flutebook PATHS ${CMAKE_CURRENT_LIST_DIR}/../../../bin NO_DEFAULT_PATH)
