/* Nothing wrong in here: it is linked for fast arithmetic, and that code runs as soon as the file is opened. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {HEADER, TEXTS("flushes_when_loaded"), .evaluate = do_nothing};
