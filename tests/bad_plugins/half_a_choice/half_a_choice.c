/* A range that begins between two choices. */
#include "tests/bad_plugins/plain_model.h"

static const char* const choices[] = {"plain", "printed"};
static const flutebook_setting settings[] = {{.name = "finish",
                                              .unit = "1",
                                              .meaning = "what is done to the box",
                                              .initial = 1,
                                              .low = 0.5,
                                              .high = 1,
                                              .choices = LIST(choices)}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("half_a_choice"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
