/* Gives a file to somebody else. */
#define _GNU_SOURCE
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    done = chown("/tmp", 1, 1);
    return 0;
}

BOXES("changes_an_owner", evaluate);
