/* Writes a file into the working folder. */
#include <stdio.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    FILE* file = fopen("left_by_a_plugin", "w");
    count_boxes(block);
    if (file != NULL) fclose(file);
    return 0;
}

BOXES("writes_a_file", evaluate);
