/* Limits how many files its parent process may open. */
#define _GNU_SOURCE
#include <sys/resource.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    const struct rlimit few = {8, 8};
    done = prlimit(getppid(), RLIMIT_NOFILE, &few, NULL);
    return 0;
}

BOXES("sets_the_hosts_limits", evaluate);
