/* Has a symbol that exists once in the whole process, whichever plugin brought it. */
#include "tests/plugin_check/plugins/plain_boxes.h"

extern double shared_rate;

__asm__(
    ".data\n.globl shared_rate\n.type shared_rate, @gnu_unique_object\n.size shared_rate, 8\nshared_rate:\n"
    ".double 2\n.text\n");

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = shared_rate;
    return 0;
}

BOXES("shares_a_symbol", evaluate);
