/* The common part of the plugins here: a model of one line, which counts the boxes of an order, so that each file shows
 * only its error. Count them with `count_boxes`, and export the model with BOXES(id, evaluate). */
#ifndef FLUTEBOOK_TESTS_PLAIN_BOXES_H
#define FLUTEBOOK_TESTS_PLAIN_BOXES_H
#include "tests/bad_plugins/plain_model.h"

static const flutebook_name boxes_needs[] = {QUANTITY};
static const flutebook_line boxes_lines[] = {
    {"boxes", "1", "Boxes counted", FLUTEBOOK_STEP, FLUTEBOOK_SYSTEM, FLUTEBOOK_PER_UNIT, 0}};

/* Charges each box once, at dispatch. */
static inline void count_boxes(const flutebook_block* block) {
    const size_t dispatch = (block->steps - 1) * block->pitch;
    for (uint32_t row = 0; row < block->rows; ++row) {
        block->quantities[0][dispatch + row] = block->needs[0][row];
        block->rates[0][dispatch + row] = 1;
    }
}

#define BOXES(its_id, its_evaluate) BOXES_AND(its_id, its_evaluate, .losses = {0, 0, 0})

/* With another list, given as it stands in the description. */
#define BOXES_AND(its_id, its_evaluate, ...)                                                                         \
    const flutebook_model flutebook_plugin = {                                                                       \
        HEADER,     TEXTS(its_id), .needs = LIST(boxes_needs), .lines = LIST(boxes_lines), .evaluate = its_evaluate, \
        __VA_ARGS__}

#endif
