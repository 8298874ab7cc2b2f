/* Refuses large orders for a reason that it does not declare. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row)
        if (block->needs[0][row] > 1000) block->refused[row] = 1;
    return 0;
}

BOXES("refuses_for_no_reason", evaluate);
