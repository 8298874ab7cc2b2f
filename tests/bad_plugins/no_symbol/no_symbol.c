/* A shared library like any other: it exports something, but no model. */
#include <stdint.h>

__attribute__((visibility("default"))) uint32_t boxes(uint32_t sheets, uint32_t ups);

uint32_t boxes(uint32_t sheets, uint32_t ups) {
    return sheets * ups;
}
