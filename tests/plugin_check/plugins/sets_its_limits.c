/* Limits how many files the program may open. */
#include <sys/resource.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    const struct rlimit few = {8, 8};
    done = setrlimit(RLIMIT_NOFILE, &few);
    return 0;
}

BOXES("sets_its_limits", evaluate);
