/* Crashes when the program ends. */
#include <stdlib.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((destructor)) static void give_up(void) {
    abort();
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("crashes_at_the_end", evaluate);
