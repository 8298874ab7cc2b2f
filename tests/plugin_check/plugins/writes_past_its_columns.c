/* Writes the step after the last one of its line: another column's first numbers. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->quantities[0][block->steps * block->pitch + row] = 1;
    return 0;
}

BOXES("writes_past_its_columns", evaluate);
