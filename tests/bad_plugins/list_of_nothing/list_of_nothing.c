/* Three lines, and no address where they stand. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {HEADER, TEXTS("list_of_nothing"), .lines = {NULL, 3, sizeof(flutebook_line)},
                                          .evaluate = do_nothing};
