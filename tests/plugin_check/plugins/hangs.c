/* Never returns when it is called. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile int goes_on = 1;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    while (goes_on) {
    }
    return 0;
}

BOXES("hangs", evaluate);
