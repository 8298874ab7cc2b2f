/* Changes the working folder of the process. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void begin(void) {
    if (chdir("/") != 0) _exit(1);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("changes_folder", evaluate);
