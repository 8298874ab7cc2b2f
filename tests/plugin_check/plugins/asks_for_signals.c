/* Has the system send signals to its parent process. */
#define _GNU_SOURCE
#include <fcntl.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    done = fcntl(3, F_SETOWN, getppid());
    return 0;
}

BOXES("asks_for_signals", evaluate);
