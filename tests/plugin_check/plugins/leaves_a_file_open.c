/* Opens a file that the sandbox lets it read, and does not close it. */
#include <fcntl.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void begin(void) {
    if (open("/etc/ld.so.cache", O_RDONLY) < 0) return;
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("leaves_a_file_open", evaluate);
