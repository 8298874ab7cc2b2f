/* The table is filled by the compiler, as C11: offsets, sizes and kinds of fields are what a plugin in C gets. */
#include "tests/unit/sdk/layout.h"

#include <flutebook/plugin.h>

#define KIND(expression) \
    _Generic((expression),               \
        double: "double",                \
        uint32_t: "uint32_t",            \
        size_t: "size_t",                \
        const char*: "text",             \
        const void*: "pointer",          \
        const double* const*: "columns", \
        double* const*: "columns, written", \
        uint32_t*: "uint32_t, written",  \
        flutebook_span: "span",          \
        uint32_t (*)(const flutebook_block*): "function")

#define STRUCT(type) \
    { #type, NULL, "", 0, sizeof(type) }
#define FIELD(type, field) \
    { #type, #field, KIND(((const type*)0)->field), offsetof(type, field), sizeof(((const type*)0)->field) }
#define CONSTANT(name) \
    { #name, name }

const layout_row layout_rows[] = {
    STRUCT(flutebook_span),
    FIELD(flutebook_span, at),
    FIELD(flutebook_span, count),
    FIELD(flutebook_span, stride),
    STRUCT(flutebook_name),
    FIELD(flutebook_name, name),
    FIELD(flutebook_name, unit),
    FIELD(flutebook_name, meaning),
    FIELD(flutebook_name, low),
    FIELD(flutebook_name, high),
    FIELD(flutebook_name, axis),
    FIELD(flutebook_name, reserved),
    STRUCT(flutebook_setting),
    FIELD(flutebook_setting, name),
    FIELD(flutebook_setting, unit),
    FIELD(flutebook_setting, meaning),
    FIELD(flutebook_setting, initial),
    FIELD(flutebook_setting, low),
    FIELD(flutebook_setting, high),
    FIELD(flutebook_setting, choices),
    FIELD(flutebook_setting, varies_by),
    FIELD(flutebook_setting, required),
    STRUCT(flutebook_line),
    FIELD(flutebook_line, name),
    FIELD(flutebook_line, unit),
    FIELD(flutebook_line, title),
    FIELD(flutebook_line, axis),
    FIELD(flutebook_line, cost_class),
    FIELD(flutebook_line, behaviour),
    FIELD(flutebook_line, reserved),
    STRUCT(flutebook_loss),
    FIELD(flutebook_loss, cause),
    FIELD(flutebook_loss, title),
    STRUCT(flutebook_block),
    FIELD(flutebook_block, size),
    FIELD(flutebook_block, rows),
    FIELD(flutebook_block, plies),
    FIELD(flutebook_block, steps),
    FIELD(flutebook_block, pitch),
    FIELD(flutebook_block, needs),
    FIELD(flutebook_block, settings),
    FIELD(flutebook_block, provides),
    FIELD(flutebook_block, quantities),
    FIELD(flutebook_block, rates),
    FIELD(flutebook_block, losses),
    FIELD(flutebook_block, refused),
    STRUCT(flutebook_model),
    FIELD(flutebook_model, size),
    FIELD(flutebook_model, magic),
    FIELD(flutebook_model, major),
    FIELD(flutebook_model, minor),
    FIELD(flutebook_model, built_with),
    FIELD(flutebook_model, id),
    FIELD(flutebook_model, version),
    FIELD(flutebook_model, title),
    FIELD(flutebook_model, needs),
    FIELD(flutebook_model, provides),
    FIELD(flutebook_model, settings),
    FIELD(flutebook_model, lines),
    FIELD(flutebook_model, losses),
    FIELD(flutebook_model, reasons),
    FIELD(flutebook_model, evaluate),
};
const size_t layout_row_count = sizeof layout_rows / sizeof layout_rows[0];

const layout_constant layout_constants[] = {
    CONSTANT(FLUTEBOOK_MAGIC),      CONSTANT(FLUTEBOOK_MAJOR),
    CONSTANT(FLUTEBOOK_ORDER),      CONSTANT(FLUTEBOOK_PLY),
    CONSTANT(FLUTEBOOK_STEP),       CONSTANT(FLUTEBOOK_BY_PLANT),
    CONSTANT(FLUTEBOOK_BY_PAPER),   CONSTANT(FLUTEBOOK_BY_FLUTE),
    CONSTANT(FLUTEBOOK_BY_MACHINE), CONSTANT(FLUTEBOOK_BY_REQUEST),
    CONSTANT(FLUTEBOOK_MATERIAL),   CONSTANT(FLUTEBOOK_ENERGY),
    CONSTANT(FLUTEBOOK_SYSTEM),     CONSTANT(FLUTEBOOK_WASTE_MANAGEMENT),
    CONSTANT(FLUTEBOOK_RECOVERY),   CONSTANT(FLUTEBOOK_PER_UNIT),
    CONSTANT(FLUTEBOOK_PER_RUN),    CONSTANT(FLUTEBOOK_PERIOD),
};
const size_t layout_constant_count = sizeof layout_constants / sizeof layout_constants[0];
