/* Sets up a ring for asynchronous input and output, which would write files without a system call of its own. */
#define _GNU_SOURCE
#include <sys/syscall.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    char about[256] = {0};
    count_boxes(block);
    syscall(SYS_io_uring_setup, 1, about);
    return 0;
}

BOXES("asks_around_the_filter", evaluate);
