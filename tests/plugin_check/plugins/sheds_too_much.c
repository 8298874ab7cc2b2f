/* Provides run.good, and sheds a kilogram of every order that was not issued. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_name provides[] = {{.name = "run.good",
                                           .unit = "1",
                                           .meaning = "good pieces of each step",
                                           .low = 0,
                                           .high = 1e15,
                                           .axis = FLUTEBOOK_STEP}};
static const flutebook_loss losses[] = {{"rejects", "Rejects"}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t step = 0; step < block->steps; ++step)
        for (uint32_t row = 0; row < block->rows; ++row) {
            block->provides[0][step * block->pitch + row] = block->needs[0][row];
            block->losses[0][step * block->pitch + row] = 1;
        }
    return 0;
}

BOXES_AND("sheds_too_much", evaluate, .provides = LIST(provides), .losses = LIST(losses));
