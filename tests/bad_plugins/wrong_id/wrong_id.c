/* The file is called one thing, the model in it another. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {HEADER, TEXTS("somebody_else"), .evaluate = do_nothing};
