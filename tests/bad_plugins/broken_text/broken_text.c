/* A title that is no UTF-8: people would see rubbish, and an answer in JSON could not be written. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {HEADER, .id = "broken_text", .version = "1.0.0", .title = "Gl\xE9m\xE9",
                                          .evaluate = do_nothing};
