/* Installs a signal handler when it is loaded. */
#include <signal.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static void listen(int number) {
    (void)number;
}

__attribute__((constructor)) static void begin(void) {
    signal(SIGUSR1, listen);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("changes_signals", evaluate);
