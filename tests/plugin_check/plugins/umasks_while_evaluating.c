/* Changes the rights of new files when it is called. */
#include <sys/stat.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    umask(0);
    return 0;
}

BOXES("umasks_while_evaluating", evaluate);
