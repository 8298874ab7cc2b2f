/* Declares three choices, and a range without the third. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const char* const choices[] = {"plain", "printed", "varnished"};
static const flutebook_setting settings[] = {{.name = "finish",
                                              .unit = "1",
                                              .meaning = "what is done to the box",
                                              .high = 1,
                                              .choices = LIST(choices),
                                              .varies_by = FLUTEBOOK_BY_REQUEST}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = block->settings[0][row];
    return 0;
}

BOXES_AND("choice_out_of_reach", evaluate, .settings = LIST(settings));
