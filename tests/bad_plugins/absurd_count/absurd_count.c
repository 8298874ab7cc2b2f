/* A list of four thousand million needs. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {QUANTITY};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("absurd_count"), .needs = {needs, 0xFFFFFFFFu, sizeof needs[0]},
                                          .evaluate = do_nothing};
