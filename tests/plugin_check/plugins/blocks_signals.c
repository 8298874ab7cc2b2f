/* Blocks a signal when it is called. */
#define _GNU_SOURCE
#include <signal.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    sigset_t some;
    sigemptyset(&some);
    sigaddset(&some, SIGTERM);
    sigprocmask(SIG_BLOCK, &some, NULL);
    return 0;
}

BOXES("blocks_signals", evaluate);
