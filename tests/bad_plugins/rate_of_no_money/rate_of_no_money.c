/* Kilograms at a price by area. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_line lines[] = {{.name = "freight",
                                        .unit = "kg",
                                        .title = "Freight",
                                        .axis = FLUTEBOOK_ORDER,
                                        .cost_class = FLUTEBOOK_SYSTEM,
                                        .rate_unit = "money/m2"}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("rate_of_no_money"), .lines = LIST(lines),
                                          .evaluate = do_nothing};
