/* Declares a need for the area of a box, and does not use it. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name needs[] = {
    QUANTITY, {.name = "box.area", .unit = "m2", .meaning = "area of a box", .high = 1000, .axis = FLUTEBOOK_ORDER}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("needs_for_nothing"), .needs = LIST(needs),
                                          .lines = LIST(boxes_lines), .evaluate = evaluate};
