/* A table by the names of a choice, and there is no choice. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_setting settings[] = {{.name = "rate",
                                              .unit = "money/kg",
                                              .meaning = "a price",
                                              .high = 100,
                                              .varies_by = FLUTEBOOK_BY_CHOICE,
                                              .keyed_by = 1}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("keys_of_no_choice"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
