/* A list whose elements lie on top of each other. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {QUANTITY, QUANTITY};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("absurd_stride"), .needs = {needs, 2, 1},
                                          .evaluate = do_nothing};
