/* Opens a network connection. */
#include <sys/socket.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

static uint32_t evaluate(const flutebook_block* block) {
    const int connection = socket(AF_INET, SOCK_STREAM, 0);
    count_boxes(block);
    if (connection >= 0) close(connection);
    return 0;
}

BOXES("opens_a_connection", evaluate);
