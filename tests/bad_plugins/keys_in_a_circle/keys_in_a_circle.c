/* A choice whose names are the keys of its own table. */
#include "tests/bad_plugins/plain_model.h"

static const char* const finishes[] = {"plain", "printed"};
static const flutebook_setting settings[] = {{.name = "finish",
                                              .unit = "1",
                                              .meaning = "a finish",
                                              .high = 1,
                                              .choices = LIST(finishes),
                                              .varies_by = FLUTEBOOK_BY_CHOICE,
                                              .keyed_by = 1}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("keys_in_a_circle"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
