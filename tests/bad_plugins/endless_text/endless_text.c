/* A meaning of 5000 letters. */
#include "tests/bad_plugins/plain_model.h"

#define TEN(text) text text text text text text text text text text

static const flutebook_name needs[] = {
    {.name = "order.quantity",
     .unit = "1",
     .meaning = TEN(TEN(TEN("words"))),
     .low = 1,
     .high = 1e7,
     .axis = FLUTEBOOK_ORDER},
};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("endless_text"), .needs = LIST(needs), .evaluate = do_nothing};
