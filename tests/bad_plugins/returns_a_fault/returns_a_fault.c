/* Says of the unlucky order that it cannot go on. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {QUANTITY};

static uint32_t evaluate(const flutebook_block* block) {
    for (uint32_t row = 0; row < block->rows; ++row)
        if (block->needs[0][row] == 5000) return 7;
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("returns_a_fault"), .needs = LIST(needs), .evaluate = evaluate};
