/* Needs the area of a box in kilograms. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name needs[] = {
    QUANTITY, {.name = "box.area", .unit = "kg", .meaning = "area of a box", .high = 1000, .axis = FLUTEBOOK_ORDER}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = block->needs[1][row];
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("weighs_an_area"), .needs = LIST(needs),
                                          .lines = LIST(boxes_lines), .evaluate = evaluate};
