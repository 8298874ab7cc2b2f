/* A good plugin of seven minor versions later: every struct has grown at its end, and so has the block. A host of
 * today takes what it knows of each element and finds the next one by the stride. Charges a price for every box, and
 * a stamp at every folder-gluer.
 */
#define flutebook_plugin flutebook_plugin_of_minor_0
#include <flutebook/plugin.h>
#undef flutebook_plugin

struct grown_name {
    flutebook_name known;
    const char* source;
    double typical;
};
struct grown_setting {
    flutebook_setting known;
    double step;
};
struct grown_line {
    flutebook_line known;
    const char* account;
};
struct grown_text {
    const char* known;
    const char* translation;
};
struct grown_model {
    flutebook_model known;
    const char* author;
    flutebook_span certificates;
};
struct grown_block {
    flutebook_block known;
    const double* weights;
};

#define GROWN(array) \
    { array, sizeof(array) / sizeof(array[0]), sizeof(array[0]) }

static const struct grown_name needs[] = {
    {{"order.quantity", "1", "boxes ordered", 1, 1e7, FLUTEBOOK_ORDER, 0}, "the request", 2000},
    {{"step.kind", "1", "what each machine is", 0, 4, FLUTEBOOK_STEP, 0}, "the route", 3},
};
static const struct grown_text papers[] = {{"plain", "glatt"}, {"waxed", "gewachst"}};
static const struct grown_setting settings[] = {
    {{"price", "money/box", "a label", 0, 0, 100, {0}, FLUTEBOOK_BY_PLANT, 1}, 0.01},
    {{"paper", "1", "what labels are made of", 0, 0, 1, GROWN(papers), FLUTEBOOK_BY_PLANT, 0}, 1},
};
static const struct grown_line lines[] = {
    {{"label", "box", "Labels", FLUTEBOOK_STEP, FLUTEBOOK_MATERIAL, FLUTEBOOK_PER_UNIT, 0}, "6110"},
    {{"stamp", "1", "Stamps", FLUTEBOOK_STEP, FLUTEBOOK_SYSTEM, FLUTEBOOK_PER_RUN, 0}, "6120"},
};
static const struct grown_text reasons[] = {{"no label fits", "kein Etikett passt"},
                                            {"no stamp fits", "kein Stempel passt"}};

static uint32_t evaluate(const flutebook_block* block) {
    const double folder_gluer = 3;
    /* What the host of today does not hand over is not there to be read. */
    const double* weights =
        block->size >= sizeof(struct grown_block) ? ((const struct grown_block*)block)->weights : NULL;
    for (uint32_t row = 0; row < block->rows; ++row) {
        const size_t dispatch = (block->steps - 1) * block->pitch + row;
        const double waxed = 1 + block->settings[1][row];
        block->quantities[0][dispatch] = block->needs[0][row];
        block->rates[0][dispatch] = block->settings[0][row] * waxed * (weights == NULL ? 1 : weights[row]);
        for (size_t step = 0; step < block->steps; ++step) {
            const size_t at = step * block->pitch + row;
            if (block->needs[1][at] != folder_gluer) continue;
            block->quantities[1][at] = 1;
            block->rates[1][at] = 0.25;
        }
    }
    return 0;
}

__attribute__((visibility("default"))) extern const struct grown_model flutebook_plugin;
const struct grown_model flutebook_plugin = {
    {.size = sizeof(struct grown_model),
     .magic = FLUTEBOOK_MAGIC,
     .major = FLUTEBOOK_MAJOR,
     .minor = 7,
     .built_with = "an SDK of days to come",
     .id = "newer_minor",
     .version = "7.0.0",
     .title = "Labels",
     .needs = GROWN(needs),
     .settings = GROWN(settings),
     .lines = GROWN(lines),
     .reasons = GROWN(reasons),
     .evaluate = evaluate},
    "somebody",
    {NULL, 0, 0},
};
