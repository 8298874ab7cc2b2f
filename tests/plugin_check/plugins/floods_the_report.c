/* Writes into the report without end. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static const char line[] = "figure a 1\n";

__attribute__((constructor)) static void flood(void) {
    while (write(3, line, sizeof line - 1) > 0) {
    }
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("floods_the_report", evaluate);
