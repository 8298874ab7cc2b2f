/* When it is loaded, writes the end of a good trial into the report, and ends the process. */
#include <stdlib.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void lie(void) {
    if (write(3, "holds\nend\n", 10) > 0) _Exit(0);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("says_it_has_passed", evaluate);
