/* A default that nobody would be allowed to set. Through the C++ header this does not compile. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_setting settings[] = {
    {.name = "price", .unit = "money/kg", .meaning = "glue, delivered", .initial = 7, .low = 0, .high = 5},
};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("default_out_of_range"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
