/* Changes the file mode mask, so that everybody may write to later files. */
#include <sys/stat.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void begin(void) {
    umask(0);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("changes_file_mode", evaluate);
