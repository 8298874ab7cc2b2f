/* Keeps a copy of a descriptor after the first call. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    if (done == 0) done = dup(1);
    return 0;
}

BOXES("leaks_a_descriptor", evaluate);
