/* Says itself that an older host would understand it wrongly. */
#include "tests/bad_plugins/plain_model.h"

const flutebook_model flutebook_plugin = {HEADER, TEXTS("newer_rules"), .evaluate = do_nothing, .requires_minor = 7};
