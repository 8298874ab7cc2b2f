/* The first bytes say that this is something else. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {.size = sizeof(flutebook_model),
                                          .magic = 0x21212121u,
                                          .major = FLUTEBOOK_MAJOR,
                                          TEXTS("wrong_magic"),
                                          .evaluate = do_nothing};
