/* Declares a setting without a meaning. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_setting settings[] = {
    {.name = "rate", .unit = "money", .meaning = "", .initial = 1, .high = 100, .varies_by = FLUTEBOOK_BY_PLANT}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = block->settings[0][row];
    return 0;
}

BOXES_AND("says_nothing", evaluate, .settings = LIST(settings));
