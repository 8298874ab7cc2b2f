/* Calls a function that no library has. Found only when it is called, it would end the whole process. */
#include "tests/bad_plugins/plain_model.h"

uint32_t left_at_home(const flutebook_block* block);

static uint32_t evaluate(const flutebook_block* block) {
    return left_at_home(block);
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("undefined_symbol"), .evaluate = evaluate};
