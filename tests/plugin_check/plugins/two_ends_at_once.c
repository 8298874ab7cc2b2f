/* Gives numbers with each setting at either end, but not with two settings at their ends at once. */
#include "tests/plugin_check/plugins/plain_boxes.h"

#define SHARE(its_name) \
    { .name = its_name, .unit = "1", .meaning = "a share of the boxes", .initial = 0.5, .high = 1 }
static const flutebook_setting settings[] = {SHARE("first"), SHARE("second")};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row)
        block->rates[0][row] = 1 / (2 - block->settings[0][row] - block->settings[1][row]);
    return 0;
}

BOXES_AND("two_ends_at_once", evaluate, .settings = LIST(settings));
