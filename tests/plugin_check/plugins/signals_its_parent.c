/* Sends a harmless signal to its parent process. */
#define _GNU_SOURCE
#include <sys/syscall.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    syscall(SYS_tgkill, getppid(), getppid(), 0);
    return 0;
}

BOXES("signals_its_parent", evaluate);
