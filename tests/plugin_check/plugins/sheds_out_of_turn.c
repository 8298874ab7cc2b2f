/* Sheds paper, but does not provide run.good. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_loss losses[] = {{"damage", "Damage"}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES_AND("sheds_out_of_turn", evaluate, .losses = LIST(losses));
