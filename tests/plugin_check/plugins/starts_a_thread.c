/* Starts a thread that waits for ever. */
#include <pthread.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static void* wait_for_ever(void* nothing) {
    for (;;) pause();
    return nothing;
}

__attribute__((constructor)) static void begin(void) {
    pthread_t thread;
    pthread_create(&thread, NULL, wait_for_ever, NULL);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("starts_a_thread", evaluate);
