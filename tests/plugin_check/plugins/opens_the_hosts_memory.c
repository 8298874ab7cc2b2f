/* Ends its process where it can open the memory of its parent process as a file. */
#define _GNU_SOURCE
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void look(void) {
    char path[40];
    snprintf(path, sizeof path, "/proc/%d/mem", (int)getppid());
    if (open(path, O_RDONLY | O_CLOEXEC) >= 0) _Exit(7);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("opens_the_hosts_memory", evaluate);
