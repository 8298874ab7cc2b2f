/* Built for a contract that does not exist yet. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {.size = sizeof(flutebook_model),
                                          .magic = FLUTEBOOK_MAGIC,
                                          .major = FLUTEBOOK_MAJOR + 1,
                                          TEXTS("newer_major"),
                                          .evaluate = do_nothing};
