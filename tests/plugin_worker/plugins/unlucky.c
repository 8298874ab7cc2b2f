/* Counts boxes correctly and passes every check. For an order of 5000 boxes it calls MISDEED, one of the functions
 * here. */
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static double* volatile nowhere;
static volatile int goes_on = 1;

static inline void crash(const flutebook_block* block) {
    *nowhere = block->needs[0][0];
}

static inline void hang(const flutebook_block* block) {
    while (goes_on && block != NULL) {
    }
}

static inline void leave(const flutebook_block* block) {
    if (block != NULL) _Exit(0);
}

/* Over everything that it shares with the host, from the first page to well past the last column. */
static inline void scribble(const flutebook_block* block) {
    char* page = (char*)((uintptr_t)block->needs[0] & ~(uintptr_t)4095);
    memset(page, 0xEE, 1 << 20);
}

static inline void kill_the_host(const flutebook_block* block) {
    if (block != NULL) kill(getppid(), SIGKILL);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    for (uint32_t row = 0; row < block->rows; ++row)
        if (block->needs[0][row] == 5000) MISDEED(block);
    return 0;
}

BOXES(UNLUCKY_ID, evaluate);
