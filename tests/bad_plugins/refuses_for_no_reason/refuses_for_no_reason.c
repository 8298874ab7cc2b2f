/* Refuses the unlucky order for its third reason, and has one. */
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name needs[] = {QUANTITY};
static const char* const reasons[] = {"bad luck"};

static uint32_t evaluate(const flutebook_block* block) {
    for (uint32_t row = 0; row < block->rows; ++row)
        if (block->needs[0][row] == 5000) block->refused[row] = 3;
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("refuses_for_no_reason"), .needs = LIST(needs),
                                          .reasons = LIST(reasons), .evaluate = evaluate};
