/* Prints when the program ends, after the program's own answer. */
#include <stdio.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((destructor)) static void say_goodbye(void) {
    puts("12 boxes counted");
    fflush(stdout);
}

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

BOXES("prints_at_the_end", evaluate);
