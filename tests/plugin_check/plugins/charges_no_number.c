/* Charges small orders NaN. */
#include <math.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row)
        if (block->needs[0][row] < 1000) block->rates[0][row] = NAN;
    return 0;
}

BOXES("charges_no_number", evaluate);
