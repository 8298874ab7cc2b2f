/* One name is needed twice. Through the C++ header this does not compile. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {QUANTITY, QUANTITY};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("duplicate_name"), .needs = LIST(needs),
                                          .evaluate = do_nothing};
