/* Never ends when the program does. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile int goes_on = 1;

__attribute__((destructor)) static void wait_for_ever(void) {
    while (goes_on) {
    }
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("hangs_at_the_end", evaluate);
