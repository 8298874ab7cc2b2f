/* Starts a thread when it is called, and the thread aborts. */
#include <pthread.h>
#include <stdlib.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static void* give_up(void* nothing) {
    abort();
    return nothing;
}

static uint32_t evaluate(const flutebook_block* block) {
    pthread_t thread;
    count_boxes(block);
    if (pthread_create(&thread, NULL, give_up, NULL) == 0) pthread_join(thread, NULL);
    return 0;
}

BOXES("crashes_on_a_thread_of_its_own", evaluate);
