/* As the first header of 1.0 wrote it, with another magic and shorter structs. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {.size = offsetof(flutebook_model, author),
                                          .magic = 0x45544C46u,
                                          .major = 1,
                                          TEXTS("first_release"),
                                          .evaluate = do_nothing};
