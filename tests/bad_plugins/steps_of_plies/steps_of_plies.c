/* One number, in steps over a number of each ply. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {
    {.name = "ply.grammage", .unit = "g/m2", .meaning = "air-dry mass", .high = 1e4, .axis = FLUTEBOOK_PLY}};
static const flutebook_setting settings[] = {
    {.name = "rate", .unit = "money/kg", .meaning = "a price", .high = 100, .stepped_over = 1}};

const flutebook_model flutebook_plugin = {HEADER, TEXTS("steps_of_plies"), .needs = LIST(needs),
                                          .settings = LIST(settings), .evaluate = do_nothing};
