/* A description that ends before its function, as no release ever wrote one. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {.size = offsetof(flutebook_model, evaluate),
                                          .magic = FLUTEBOOK_MAGIC,
                                          .major = FLUTEBOOK_MAJOR,
                                          TEXTS("too_small"),
                                          .evaluate = do_nothing};
