/* A line of the whole order, which belongs to no step. Through the C++ header this does not compile. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_line lines[] = {
    {.name = "fee", .unit = "1", .title = "Fee", .axis = FLUTEBOOK_ORDER, .cost_class = FLUTEBOOK_SYSTEM},
};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("line_of_no_step"), .lines = LIST(lines),
                                          .evaluate = do_nothing};
