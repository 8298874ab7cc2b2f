/* Declares a setting for the rate, and charges another rate. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_setting settings[] = {{.name = "rate",
                                              .unit = "money",
                                              .meaning = "what a box costs",
                                              .initial = 1,
                                              .high = 100,
                                              .varies_by = FLUTEBOOK_BY_PLANT}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES_AND("set_for_nothing", evaluate, .settings = LIST(settings));
