/* A setting under the key by which plugins.yaml names the file of a model. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_setting settings[] = {{.name = "model", .unit = "money/kg", .meaning = "a price", .high = 100}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("setting_called_model"), .settings = LIST(settings),
                                          .evaluate = do_nothing};
