/* Writes through a null pointer when it is called. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static double* volatile nowhere;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    *nowhere = 1;
    return 0;
}

BOXES("crashes", evaluate);
