/* Writes into a field that has no meaning yet. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_line lines[] = {{.name = "fee",
                                        .unit = "1",
                                        .title = "Fee",
                                        .axis = FLUTEBOOK_ORDER,
                                        .cost_class = FLUTEBOOK_SYSTEM,
                                        .reserved = 3}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("reserved_field"), .lines = LIST(lines),
                                          .evaluate = do_nothing};
