/* Provides a number in a unit that does not exist. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name provides[] = {{"boxes.counted", "boxfuls", "boxes counted", 0, 1e7, FLUTEBOOK_ORDER, 0}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->provides[0][row] = block->needs[0][row];
    return 0;
}

BOXES_AND("unknown_unit", evaluate, .provides = LIST(provides));
