/* Needs the area of a box, and uses it only with a certain choice and a price. This is correct. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const char* const bases[] = {"by-box", "by-run", "by-area"};
static const flutebook_name needs[] = {
    QUANTITY, {.name = "box.area", .unit = "m2", .meaning = "area of a box", .high = 1000, .axis = FLUTEBOOK_ORDER}};
static const flutebook_setting settings[] = {
    {.name = "basis", .unit = "1", .meaning = "what is charged for", .high = 2, .choices = LIST(bases)},
    {.name = "price", .unit = "money/m2", .meaning = "price of the area; 0 where it is free", .high = 100}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row)
        if (block->settings[0][row] == 2) block->rates[0][row] = block->needs[1][row] * block->settings[1][row];
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER,
                                          TEXTS("matters_seldom"),
                                          .needs = LIST(needs),
                                          .settings = LIST(settings),
                                          .lines = LIST(boxes_lines),
                                          .evaluate = evaluate};
