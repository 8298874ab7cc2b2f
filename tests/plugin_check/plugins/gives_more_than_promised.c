/* Provides the number of boxes, with a declared range that is too small. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name provides[] = {{.name = "boxes.counted",
                                           .unit = "1",
                                           .meaning = "boxes counted",
                                           .low = 0,
                                           .high = 1000,
                                           .axis = FLUTEBOOK_ORDER}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->provides[0][row] = block->needs[0][row];
    return 0;
}

BOXES_AND("gives_more_than_promised", evaluate, .provides = LIST(provides));
