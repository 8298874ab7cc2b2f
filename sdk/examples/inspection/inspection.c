/* inspection: one box of every `every` boxes is taken off the pallet and measured. In plain C99, with the C header
 * only.
 *
 *   hours = boxes to inspect x minutes a box / 60,   boxes to inspect = order / every, rounded up
 * Nothing is inspected where `every` is 0. Source: common practice, no published source.
 */
#include <flutebook/plugin.h>

#define LIST(array) \
    { array, sizeof(array) / sizeof((array)[0]), sizeof((array)[0]) }

/* A block holds the model's numbers in the order in which they are declared here. */
enum { QUANTITY };
static const flutebook_name needs[] = {
    {.name = "order.quantity", .unit = "1", .meaning = "boxes ordered", .low = 1, .high = 1e7, .axis = FLUTEBOOK_ORDER},
};

enum { EVERY, MINUTES, HOURLY };
static const flutebook_setting settings[] = {
    {.name = "every",
     .unit = "1",
     .meaning = "one box of so many is inspected; 0 where none is",
     .initial = 0,
     .low = 0,
     .high = 1e7,
     .varies_by = FLUTEBOOK_BY_REQUEST},
    {.name = "minutes",
     .unit = "min",
     .meaning = "time to inspect one box",
     .initial = 3,
     .low = 0,
     .high = 600,
     .varies_by = FLUTEBOOK_BY_PLANT},
    {.name = "hourly",
     .unit = "money/h",
     .meaning = "whoever inspects, by the hour",
     .low = 0,
     .high = 10000,
     .varies_by = FLUTEBOOK_BY_PLANT,
     .required = 1},
};

enum { INSPECTION };
static const flutebook_line lines[] = {
    {.name = "inspection",
     .unit = "h",
     .title = "Inspection",
     .axis = FLUTEBOOK_STEP,
     .cost_class = FLUTEBOOK_SYSTEM,
     .behaviour = FLUTEBOOK_PER_UNIT},
};

enum { LESS_THAN_ONE };
static const char* const reasons[] = {"inspection: one box of less than one cannot be inspected; give 0 or 1 and more"};

/* The least whole number that is not below `x`; an order has at most 1e7 boxes. */
static double whole_up(double x) {
    const double down = (double)(int64_t)x;
    return down < x ? down + 1 : down;
}

static uint32_t evaluate(const flutebook_block* block) {
    const double minutes_per_hour = 60;
    const size_t dispatch = (block->steps - 1) * block->pitch;
    for (uint32_t row = 0; row < block->rows; ++row) {
        const double every = block->settings[EVERY][row];
        const double inspected = every >= 1 ? whole_up(block->needs[QUANTITY][row] / every) : 0;
        if (every > 0 && every < 1) block->refused[row] = 1 + LESS_THAN_ONE;
        block->quantities[INSPECTION][dispatch + row] = inspected * block->settings[MINUTES][row] / minutes_per_hour;
        block->rates[INSPECTION][dispatch + row] = block->settings[HOURLY][row];
    }
    return 0;
}

const flutebook_model flutebook_plugin = {
    .size = sizeof(flutebook_model),
    .magic = FLUTEBOOK_MAGIC,
    .major = FLUTEBOOK_MAJOR,
    .minor = FLUTEBOOK_MINOR,
    .built_with = "flutebook sdk 1.0, in C",
    .id = "inspection",
    .version = "1.0.0",
    .title = "Inspection of samples",
    .needs = LIST(needs),
    .settings = LIST(settings),
    .lines = LIST(lines),
    .reasons = LIST(reasons),
    .evaluate = evaluate,
};
