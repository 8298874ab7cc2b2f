/* Writes a line into the report that names no rule. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long written;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    written = write(3, "died nonsense\n", 14);
    return 0;
}

BOXES("reports_nonsense", evaluate);
