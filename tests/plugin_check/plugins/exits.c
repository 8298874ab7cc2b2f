/* Ends the whole program when it is called. */
#include <stdlib.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    _Exit(0);
}

BOXES("exits", evaluate);
