/* Is linked so that its stack, and with it the stack of the whole program, can be executed. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("runs_on_the_stack", evaluate);
