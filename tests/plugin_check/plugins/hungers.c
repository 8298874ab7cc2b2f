/* Allocates memory without end. */
#include <stdlib.h>
#include <string.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static void* volatile last;

static uint32_t evaluate(const flutebook_block* block) {
    const size_t much = (size_t)1 << 20;
    count_boxes(block);
    for (;;) {
        void* more = malloc(much);
        if (more != NULL) memset(more, 1, much);
        last = more;
    }
}

BOXES("hungers", evaluate);
