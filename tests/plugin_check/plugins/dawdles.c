/* Returns from every call, and takes its time. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    volatile uint32_t turns = 0;
    count_boxes(block);
    while (turns < 20000000) turns = turns + 1;
    return 0;
}

BOXES("dawdles", evaluate);
