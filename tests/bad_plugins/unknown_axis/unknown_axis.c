/* A need by an axis that this contract does not have. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {
    {.name = "order.quantity", .unit = "1", .meaning = "boxes ordered", .low = 1, .high = 1e7, .axis = 3},
};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("unknown_axis"), .needs = LIST(needs), .evaluate = do_nothing};
