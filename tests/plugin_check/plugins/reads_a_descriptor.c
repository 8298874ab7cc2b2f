/* Reads from a descriptor that it did not open. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    char byte;
    done = read(4, &byte, 1);
    return 0;
}

BOXES("reads_a_descriptor", evaluate);
