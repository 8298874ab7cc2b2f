/* Charges more with every call. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static double calls;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    calls += 1;
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = calls;
    return 0;
}

BOXES("counts_its_calls", evaluate);
