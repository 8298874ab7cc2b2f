/* Reads the row after the last, and does not use it. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile double seen;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    seen = block->needs[0][block->rows];
    return 0;
}

BOXES("reads_a_row_too_many", evaluate);
