/* Reads a file when it is called. */
#define _GNU_SOURCE
#include <fcntl.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    const int file = open("/etc/ld.so.cache", O_RDONLY | O_CLOEXEC);
    done = file < 0 ? 1 : close(file);
    return 0;
}

BOXES("reads_a_file", evaluate);
