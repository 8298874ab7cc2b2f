/* Needs a name that nobody gives: a slip of run.fed. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name needs[] = {
    QUANTITY, {.name = "run.fedd", .unit = "1", .meaning = "pieces fed", .high = 1e9, .axis = FLUTEBOOK_STEP}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = block->needs[1][row];
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("needs_nobodys_name"), .needs = LIST(needs),
                                          .lines = LIST(boxes_lines), .evaluate = evaluate};
