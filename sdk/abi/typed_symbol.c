/* A library that exports the plugin's symbol with its type and all that the type leads to: what a tool that reads
 * debug information compares between two headers. */
#include <flutebook/plugin.h>

static uint32_t evaluate(const flutebook_block* block) {
    return block->rows;
}

const flutebook_model flutebook_plugin = {.size = sizeof(flutebook_model), .evaluate = evaluate};

/* The elements of lists are reached through spans, whose type says nothing: exported for their own sake. */
extern const flutebook_name flutebook_typed_name;
extern const flutebook_setting flutebook_typed_setting;
extern const flutebook_line flutebook_typed_line;
extern const flutebook_loss flutebook_typed_loss;
const flutebook_name flutebook_typed_name = {.name = ""};
const flutebook_setting flutebook_typed_setting = {.name = ""};
const flutebook_line flutebook_typed_line = {.name = ""};
const flutebook_loss flutebook_typed_loss = {.cause = ""};
