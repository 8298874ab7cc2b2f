/* Scales a setting in its place: the next block would be evaluated with what it wrote. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_setting settings[] = {{.name = "rate",
                                              .unit = "1",
                                              .meaning = "what a box counts",
                                              .initial = 1,
                                              .low = 1,
                                              .high = 9,
                                              .varies_by = FLUTEBOOK_BY_PLANT}};

static uint32_t evaluate(const flutebook_block* block) {
    double* rate = (double*)(uintptr_t)block->settings[0];
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) {
        rate[row] *= 2;
        block->rates[0][row] = rate[row];
    }
    return 0;
}

BOXES_AND("scales_its_setting", evaluate, .settings = LIST(settings));
