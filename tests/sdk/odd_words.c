/* odd_words: a good model whose author writes whatever comes to mind: signs of Markdown, of YAML, of Graphviz, and
 * sentences longer than a line. Charges nothing worth the name. */
#include <flutebook/plugin.h>

#define LIST(array) \
    { array, sizeof(array) / sizeof((array)[0]), sizeof((array)[0]) }

static const flutebook_name needs[] = {
    {.name = "order.quantity",
     .unit = "1",
     .meaning = "boxes | \"ordered\" \\ <b>*not*</b> _sheets_ `code` [link](x) # heading",
     .low = 1,
     .high = 1e7,
     .axis = FLUTEBOOK_ORDER},
};
static const char* const choices[] = {"on", "off", "null"};
static const flutebook_setting settings[] = {
    {.name = "loose",
     .unit = "1",
     .meaning =
         "key: value # no comment, {a: b}, - item; and so that it cannot stand on one line of a page, it goes on "
         "and on about the very same thing that was said before, until the line has ended long ago: here",
     .initial = -0.5,
     .low = -1e15,
     .high = 1e15,
     .varies_by = FLUTEBOOK_BY_PLANT},
    {.name = "switch",
     .unit = "1",
     .meaning = "a word that YAML may take for something else",
     .initial = 2,
     .low = 0,
     .high = 2,
     .choices = LIST(choices),
     .varies_by = FLUTEBOOK_BY_PLANT},
    {.name = "each_flute",
     .unit = "degC",
     .meaning = "by flute",
     .initial = 20,
     .low = -40,
     .high = 1e15,
     .varies_by = FLUTEBOOK_BY_FLUTE},
};
static const flutebook_line lines[] = {
    {.name = "odd",
     .unit = "1",
     .title = "Odd | \"words\"",
     .axis = FLUTEBOOK_STEP,
     .cost_class = FLUTEBOOK_SYSTEM,
     .behaviour = FLUTEBOOK_PERIOD},
};
static const char* const reasons[] = {"*nothing* is | right"};

static uint32_t evaluate(const flutebook_block* block) {
    for (uint32_t row = 0; row < block->rows; ++row)
        block->rates[0][row] =
            block->needs[0][row] + block->settings[0][row] + block->settings[1][row] + block->settings[2][row];
    return 0;
}

const flutebook_model flutebook_plugin = {
    .size = sizeof(flutebook_model),
    .magic = FLUTEBOOK_MAGIC,
    .major = FLUTEBOOK_MAJOR,
    .minor = FLUTEBOOK_MINOR,
    .built_with = "a compiler | of \"sorts\"",
    .id = "odd_words",
    .version = "1.0.0",
    .title = "Odd | words <of> \"mine\" # here",
    .needs = LIST(needs),
    .settings = LIST(settings),
    .lines = LIST(lines),
    .reasons = LIST(reasons),
    .evaluate = evaluate,
};
