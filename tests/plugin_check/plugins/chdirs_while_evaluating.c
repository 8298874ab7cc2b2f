/* Changes the working folder when it is called. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    done = chdir("/");
    return 0;
}

BOXES("chdirs_while_evaluating", evaluate);
