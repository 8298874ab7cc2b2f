/* Needs a quantity in a unit that is a sum: the library takes it for -1. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {{.name = "order.quantity",
                                        .unit = "1--1",
                                        .meaning = "boxes ordered",
                                        .low = 1,
                                        .high = 1e7,
                                        .axis = FLUTEBOOK_ORDER}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("sum_in_a_unit"), .needs = LIST(needs), .evaluate = do_nothing};
