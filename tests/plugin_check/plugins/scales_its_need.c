/* Scales a need in its place: the models after it would read what it wrote. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    double* boxes = (double*)(uintptr_t)block->needs[0];
    for (uint32_t row = 0; row < block->rows; ++row) boxes[row] *= 2;
    return 0;
}

BOXES("scales_its_need", evaluate);
