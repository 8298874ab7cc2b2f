/* Handles a signal from its first call on. */
#define _GNU_SOURCE
#include <signal.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    signal(SIGUSR1, SIG_IGN);
    return 0;
}

BOXES("handles_a_signal_later", evaluate);
