/* Changes the rounding mode when it is called. */
#include <fenv.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    fesetround(FE_UPWARD);
    return 0;
}

BOXES("rounds_upwards_when_called", evaluate);
