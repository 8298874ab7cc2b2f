/* All is declared, and nothing can be called. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {HEADER, TEXTS("null_evaluate")};
