/* Charges only on the thread that loaded it. */
#include <pthread.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static pthread_t first;

__attribute__((constructor)) static void begin(void) {
    first = pthread_self();
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row)
        block->rates[0][row] = pthread_equal(pthread_self(), first) ? 1 : 0;
    return 0;
}

BOXES("charges_by_thread", evaluate);
