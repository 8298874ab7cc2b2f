/* Sets the locale of the process. */
#include <locale.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void begin(void) {
    setlocale(LC_ALL, "C.UTF-8");
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("changes_locale", evaluate);
