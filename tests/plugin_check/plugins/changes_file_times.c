/* Changes the time of a file. */
#define _GNU_SOURCE
#include <fcntl.h>
#include <sys/stat.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static volatile long done;

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    done = utimensat(AT_FDCWD, "/tmp", NULL, 0);
    return 0;
}

BOXES("changes_file_times", evaluate);
