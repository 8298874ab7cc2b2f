/* The second name that it needs has no name. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {
    QUANTITY,
    {.name = NULL, .unit = "m", .meaning = "forgotten", .low = 0, .high = 1, .axis = FLUTEBOOK_ORDER},
};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("null_name"), .needs = LIST(needs), .evaluate = do_nothing};
