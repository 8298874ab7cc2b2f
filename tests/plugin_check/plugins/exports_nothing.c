/* Does not export its description. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

/* Under another name: no file may hide what the header shows. */
#define flutebook_plugin some_plugin
__attribute__((used)) static BOXES("exports_nothing", evaluate);
