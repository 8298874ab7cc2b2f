/* Starts a process that remains. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    if (fork() == 0)
        for (;;) pause();
    return 0;
}

BOXES("forks", evaluate);
