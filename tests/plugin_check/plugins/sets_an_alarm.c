/* Has the system end the program in an hour. */
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    alarm(3600);
    return 0;
}

BOXES("sets_an_alarm", evaluate);
