/* Exports another function too: it is reported, and breaks no rule. */
#include "tests/plugin_check/plugins/plain_boxes.h"

extern double rate_of_a_box(void);

__attribute__((visibility("default"))) double rate_of_a_box(void) {
    return 2;
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = rate_of_a_box();
    return 0;
}

BOXES("shows_too_much", evaluate);
