/* Allocates and frees memory in every call. */
#include <stdlib.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static void* volatile last;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    last = malloc(block->rows * sizeof(double));
    free(last);
    return 0;
}

BOXES("allocates", evaluate);
