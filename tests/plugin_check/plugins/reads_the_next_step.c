/* Takes the waste of the step after each, the last one's too: what it reads there is another name's number. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name needs[] = {
    {.name = "step.run_waste", .unit = "1", .meaning = "waste of each step", .high = 1, .axis = FLUTEBOOK_STEP},
    QUANTITY};

static uint32_t evaluate(const flutebook_block* block) {
    for (uint32_t k = 0; k < block->steps; ++k)
        for (uint32_t row = 0; row < block->rows; ++row) {
            block->quantities[0][k * block->pitch + row] = block->needs[1][row];
            block->rates[0][k * block->pitch + row] = block->needs[0][(k + 1) * block->pitch + row];
        }
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("reads_the_next_step"), .needs = LIST(needs),
                                          .lines = LIST(boxes_lines), .evaluate = evaluate};
