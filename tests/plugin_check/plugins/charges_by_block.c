/* Charges a row by the number of rows in its block. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = block->rows;
    return 0;
}

BOXES("charges_by_block", evaluate);
