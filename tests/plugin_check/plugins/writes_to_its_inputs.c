/* Writes a need back to its own place, unchanged. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    volatile double* boxes = (double*)(uintptr_t)block->needs[0];
    count_boxes(block);
    boxes[0] = boxes[0];
    return 0;
}

BOXES("writes_to_its_inputs", evaluate);
