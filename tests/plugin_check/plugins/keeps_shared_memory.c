/* Creates shared memory that remains after its process has ended. */
#include <sys/ipc.h>
#include <sys/shm.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    const int memory = shmget(IPC_PRIVATE, 4096, IPC_CREAT | 0600);
    count_boxes(block);
    if (memory >= 0) shmctl(memory, IPC_RMID, 0);
    return 0;
}

BOXES("keeps_shared_memory", evaluate);
