/* When it is loaded, writes a description to the host's pipe itself, and ends the process. */
#include <stdlib.h>
#include <unistd.h>

#include "tests/plugin_check/plugins/plain_boxes.h"

__attribute__((constructor)) static void lie(void) {
    static const char told[] = "field nobody\nfield lies\nfield 1.0.0\nfield Trust me\nfield 4000000000\nend\n";
    if (write(3, told, sizeof told - 1) > 0) _Exit(0);
}

BOXES("lies", do_nothing);
