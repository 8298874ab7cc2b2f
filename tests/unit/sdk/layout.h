/* Every struct and every constant of the C header as C sees them, in a table that C++ can read. */
#ifndef FLUTEBOOK_TESTS_LAYOUT_H
#define FLUTEBOOK_TESTS_LAYOUT_H
#include <stddef.h>
#ifdef __cplusplus
extern "C" {
#endif

/* A field of a struct; or the struct itself, where `field` is null: its fields follow. */
typedef struct layout_row {
    const char *type, *field, *kind;
    size_t offset, size;
} layout_row;
extern const layout_row layout_rows[];
extern const size_t layout_row_count;

typedef struct layout_constant {
    const char* name;
    unsigned long value;
} layout_constant;
extern const layout_constant layout_constants[];
extern const size_t layout_constant_count;

#ifdef __cplusplus
}
#endif
#endif
