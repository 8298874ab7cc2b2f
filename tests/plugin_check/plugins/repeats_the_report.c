/* Reads what its own process has reported, if it can, and writes it again. */
#include <fcntl.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static char seen[4000];
static volatile long again;

__attribute__((constructor)) static void repeat(void) {
    const int report = open("/proc/self/fd/3", O_RDONLY | O_NONBLOCK);
    const long count = report < 0 ? read(3, seen, 0) : read(report, seen, sizeof seen);
    again = write(3, seen, count > 0 ? (size_t)count : 1);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("repeats_the_report", evaluate);
