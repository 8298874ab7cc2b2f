/* Charges another rate from the year 2100 on: until then it gives the same bits. */
#include <time.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    const double rate = time(NULL) < 4102444800 ? 1 : 2;
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row) block->rates[0][row] = rate;
    return 0;
}

BOXES("looks_at_the_clock", evaluate);
