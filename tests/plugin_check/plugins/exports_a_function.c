/* Exports what the host looks for, but as a function. */
#define flutebook_plugin described_elsewhere
#include <flutebook/plugin.h>
#undef flutebook_plugin

__attribute__((visibility("default"))) int flutebook_plugin(void);

int flutebook_plugin(void) {
    return FLUTEBOOK_MAJOR;
}
