/* Makes a harmless system call with the numbers of an older architecture. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
#if defined(__x86_64__)
    int answer = 20; /* which process this is, by that machine's numbers */
    __asm__ volatile("int $0x80" : "+a"(answer) : : "memory", "r8", "r9", "r10", "r11");
#endif
    return 0;
}

BOXES("asks_as_another_machine", evaluate);
