/* Calls a library that a plant's machine does not have. */
#include "tests/plugin_check/plugins/plain_boxes.h"

extern double rate_of_elsewhere(void);

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = rate_of_elsewhere();
    return 0;
}

BOXES("needs_a_library", evaluate);
