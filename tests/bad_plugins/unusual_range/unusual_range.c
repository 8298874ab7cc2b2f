/* A usual range that reaches past the range. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_setting settings[] = {
    {.name = "price", .unit = "money/kg", .meaning = "a price", .high = 100, .usual_low = 10, .usual_high = 200}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("unusual_range"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
