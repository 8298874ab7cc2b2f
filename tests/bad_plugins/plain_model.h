/* What every description written by hand here begins with, so that each file shows the one thing that is wrong. */
#ifndef FLUTEBOOK_TESTS_PLAIN_MODEL_H
#define FLUTEBOOK_TESTS_PLAIN_MODEL_H
#include <flutebook/plugin.h>

#define HEADER \
    .size = sizeof(flutebook_model), .magic = FLUTEBOOK_MAGIC, .major = FLUTEBOOK_MAJOR, .minor = FLUTEBOOK_MINOR
#define TEXTS(its_id) .id = its_id, .version = "1.0.0", .title = "Written by hand"
#define LIST(array) \
    { array, sizeof(array) / sizeof(array[0]), sizeof(array[0]) }

#define QUANTITY                                                                                  \
    {                                                                                             \
        .name = "order.quantity", .unit = "1", .meaning = "boxes ordered", .low = 1, .high = 1e7, \
        .axis = FLUTEBOOK_ORDER                                                                   \
    }

/* A model that does nothing, and does it right. */
static inline uint32_t do_nothing(const flutebook_block* block) {
    (void)block;
    return 0;
}

#endif
