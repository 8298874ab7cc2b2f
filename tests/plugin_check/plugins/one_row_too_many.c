/* Writes one row after the last. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    block->rates[0][block->rows] = 0;
    return 0;
}

BOXES("one_row_too_many", evaluate);
