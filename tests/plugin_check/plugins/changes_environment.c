/* Sets a variable of the environment. */
#define _POSIX_C_SOURCE 200809L
#include <stdlib.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void begin(void) {
    setenv("LEFT_BY_A_PLUGIN", "1", 1);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("changes_environment", evaluate);
