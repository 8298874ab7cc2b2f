/* Calls a function that does not exist. */
#include "tests/plugin_check/plugins/plain_boxes.h"

extern double rate_of_nobody(void);

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = rate_of_nobody();
    return 0;
}

BOXES("calls_nobody", evaluate);
