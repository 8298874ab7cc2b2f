/* Changes the rounding mode when it is loaded. */
#include <fenv.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void begin(void) {
    fesetround(FE_UPWARD);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("rounds_upwards_when_loaded", evaluate);
