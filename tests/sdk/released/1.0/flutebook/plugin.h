/* flutebook/plugin.h: the whole binary contract between the host and a cost model, in C99.
 *
 * A plugin is a shared library that exports one symbol, `flutebook_plugin`: constant data that describes a model
 * and points to its one function. Describing a plugin runs none of its code.
 *
 * R1  A struct that is passed alone begins with `size`: sizeof as its writer knew it. A reader touches nothing past
 *     it and takes what is missing as zero. Fields are only ever appended, never moved or given another meaning.
 * R2  A list is a span, walked by its writer's stride, so that list elements may grow as well.
 * R3  Strings are UTF-8 and end with NUL. All that a description points to lives until the process ends: the host
 *     never unloads a plugin.
 * R4  Reserved fields are zero, and constants have values that are listed here: a host refuses anything else. A model
 *     that must not be used by a host without some later rule says so in `requires_minor`.
 * R5  `evaluate` is pure: the same rows in give the same bits out, on any thread, any number of threads at once, in
 *     any division into blocks. It does not allocate, lock, read a clock or keep state; nothing is thrown or freed
 *     across the border; the floating-point environment is left as it was found.
 */
#ifndef FLUTEBOOK_PLUGIN_H
#define FLUTEBOOK_PLUGIN_H
#include <stddef.h>
#include <stdint.h>
#ifdef __cplusplus
extern "C" {
#endif

#define FLUTEBOOK_MAGIC 0x4B425446u /* "FTBK" in memory on a little-endian machine */
#define FLUTEBOOK_MAJOR 1u          /* another major is another contract: the host refuses it */
#define FLUTEBOOK_MINOR 0u          /* grows with appended fields; any minor loads in any host of the same major */

/* The most that a description may hold, and that a host passes in one block. */
#define FLUTEBOOK_MOST_NAMES 64u    /* needs; and as many provides */
#define FLUTEBOOK_MOST_SETTINGS 64u /* and choices of one setting */
#define FLUTEBOOK_MOST_LINES 32u
#define FLUTEBOOK_MOST_LOSSES 16u
#define FLUTEBOOK_MOST_REASONS 16u
#define FLUTEBOOK_MOST_TEXT 400u /* bytes of one text, without its end */
#define FLUTEBOOK_MOST_PLIES 8u
#define FLUTEBOOK_MOST_STEPS 16u /* the corrugator, the converters and dispatch */
#define FLUTEBOOK_MOST_ROWS 1024u

/* `count` elements from `at`, `stride` bytes apart. */
typedef struct flutebook_span {
    const void* at;
    uint32_t count, stride;
} flutebook_span;

/* The span of an array: FLUTEBOOK_LIST(needs). */
#define FLUTEBOOK_LIST(array) \
    { (array), sizeof(array) / sizeof((array)[0]), sizeof((array)[0]) }

/* How many numbers a name has: one, one per ply (outside first), or one per step (0 the corrugator, 1..K the
 * converters of the route, K+1 dispatch). */
enum { FLUTEBOOK_ORDER = 0, FLUTEBOOK_PLY = 1, FLUTEBOOK_STEP = 2 };

/* A number that the model needs or provides. Units in udunits spelling, `money` for the plant's currency. A value
 * outside low..high is a fault, and its row costs nothing at all. Names that begin with order. inside. blank. box.
 * sheet. board. web. ply. step. cost. or plant. are the host's: a model provides one of them only where the plant
 * prefers it. A model that needs one of the cost. names is evaluated after all models that do not. */
typedef struct flutebook_name {
    const char *name, *unit, *meaning;
    double low, high;
    uint32_t axis, reserved;
} flutebook_name;

/* What a setting varies by decides how many numbers it has: one per ply for PAPER and FLUTE (a liner has the default
 * of a FLUTE setting), one per step for MACHINE, else one. CUSTOMER, BOARD and STYLE are tables by the plant's own
 * texts, CHOICE is a table by the names of a choice setting of the same model. */
enum {
    FLUTEBOOK_BY_PLANT = 0,
    FLUTEBOOK_BY_PAPER = 1,
    FLUTEBOOK_BY_FLUTE = 2,
    FLUTEBOOK_BY_MACHINE = 3,
    FLUTEBOOK_BY_REQUEST = 4,
    FLUTEBOOK_BY_CUSTOMER = 5,
    FLUTEBOOK_BY_BOARD = 6,
    FLUTEBOOK_BY_STYLE = 7,
    FLUTEBOOK_BY_CHOICE = 8
};

/* A number that a person sets. `required` non-zero: there is no default, and `initial` means nothing. `choices`
 * (const char *) turns it into a choice among names; its value is then the index of the chosen name.
 * `usual_low < usual_high`: a value outside is allowed, and the plant is warned.
 * `stepped_over`: 0, or 1 + the index of a need of the order or of the setting's own axis; its file may then give
 * steps,
 * `{0: 31, 8: 24}`, and the model gets the value of the largest step that is not above the need.
 * `keyed_by`: of a setting BY_CHOICE, 1 + the index of the choice setting whose names are the keys; else 0. */
typedef struct flutebook_setting {
    const char *name, *unit, *meaning;
    double initial, low, high;
    flutebook_span choices;
    uint32_t varies_by, required;
    double usual_low, usual_high;
    uint32_t stepped_over, keyed_by;
} flutebook_setting;

/* Cost classes after ISO 14051; recovery is income, and its amounts are negative. */
enum {
    FLUTEBOOK_MATERIAL = 0,
    FLUTEBOOK_ENERGY = 1,
    FLUTEBOOK_SYSTEM = 2,
    FLUTEBOOK_WASTE_MANAGEMENT = 3,
    FLUTEBOOK_RECOVERY = 4
};
/* per unit: grows with the quantity; per run: once a run; period: plant cost absorbed by the hour */
enum { FLUTEBOOK_PER_UNIT = 0, FLUTEBOOK_PER_RUN = 1, FLUTEBOOK_PERIOD = 2 };

/* A line of the cost sheet: quantity (in `unit`) x rate (in `rate_unit`, which is money per `unit` where it is null;
 * their product must be money). `axis` is STEP, PLY, which belongs to step 0, or ORDER, which belongs to dispatch. */
typedef struct flutebook_line {
    const char *name, *unit, *title;
    uint32_t axis, cost_class, behaviour, reserved;
    const char* rate_unit;
} flutebook_line;

/* A loss of paper and adhesive in kg, one number per step. Only the model that provides `run.good` sheds. */
typedef struct flutebook_loss {
    const char *cause, *title;
} flutebook_loss;

/* Rows of one shape, in columns of doubles. The number of name n at axis index i in row r stands at
 * column[n][i * pitch + r]; an ORDER name has the one index 0. Names, settings, lines and losses stand in the order
 * of the description. Columns start on 64 bytes. */
typedef struct flutebook_block {
    uint32_t size, rows, plies, steps; /* steps = K + 2 */
    size_t pitch;
    const double* const* needs;    /* finite, in range, in the declared unit; read only */
    const double* const* settings; /* finite, in range, in the declared unit; read only */
    double* const* provides;       /* arrive as NaN; one left so is a fault */
    double* const* quantities;     /* of lines; arrive as 0: a line may stay silent */
    double* const* rates;          /* of lines; arrive as 0 */
    double* const* losses;         /* kg; arrive as 0 */
    uint32_t* refused;             /* arrives as 0; 1 + an index into `reasons` refuses the row */
} flutebook_block;

/* One number of a list of columns: FLUTEBOOK_CELL(block, needs, n, i, r). */
#define FLUTEBOOK_CELL(block, list, name, index, row) ((block)->list[name][(size_t)(index) * (block)->pitch + (row)])

typedef struct flutebook_model {
    uint32_t size, magic, major, minor;
    const char* built_with;           /* compiler and SDK version, shown in error reports */
    const char *id, *version, *title; /* id: lower-case letters, digits, '-' and '_'; the file is id.so */
    flutebook_span needs, provides;   /* flutebook_name */
    flutebook_span settings;          /* flutebook_setting */
    flutebook_span lines;             /* flutebook_line */
    flutebook_span losses;            /* flutebook_loss */
    flutebook_span reasons;           /* const char *: why a row may be refused */
    uint32_t (*evaluate)(const flutebook_block* block); /* 0, or the model is at fault for the whole block */
    const char *author, *contact;      /* who answers for the model, shown in every refusal; may be null */
    uint32_t requires_minor, reserved; /* the least minor whose rules a host must know */
} flutebook_model;

#if defined(__GNUC__)
__attribute__((visibility("default")))
#endif
extern const flutebook_model flutebook_plugin;

#ifdef __cplusplus
}
#endif
#endif
