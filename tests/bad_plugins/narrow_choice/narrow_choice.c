/* Three choices, of which its range leaves the last out: nobody may choose that one. */
#include "tests/bad_plugins/plain_model.h"

static const char* const choices[] = {"plain", "printed", "varnished"};
static const flutebook_setting settings[] = {
    {.name = "finish", .unit = "1", .meaning = "what is done to the box", .high = 1, .choices = LIST(choices)}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("narrow_choice"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
