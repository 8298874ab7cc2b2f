/* Divides by a setting that may be 0. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_setting settings[] = {{.name = "bundle",
                                              .unit = "1",
                                              .meaning = "boxes in a bundle",
                                              .initial = 10,
                                              .high = 100,
                                              .varies_by = FLUTEBOOK_BY_PLANT}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = 1 / block->settings[0][row];
    return 0;
}

BOXES_AND("divides_by_a_setting", evaluate, .settings = LIST(settings));
