/* What it needs may be no less than 1 and no more than 0. Through the C++ header this does not compile. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {
    {.name = "order.quantity", .unit = "1", .meaning = "boxes ordered", .low = 1, .high = 0, .axis = FLUTEBOOK_ORDER},
};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("upside_down_range"), .needs = LIST(needs),
                                          .evaluate = do_nothing};
