/* Waits for ever when it is loaded, without using the processor. */
#include <sys/select.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void wait_for_ever(void) {
    for (;;) select(0, NULL, NULL, NULL, NULL);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("hangs_when_loaded", evaluate);
