/* Charges kilograms at a price a tonne: a thousand times too much. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_setting settings[] = {{.name = "price",
                                              .unit = "money/t",
                                              .meaning = "a tonne of glue",
                                              .low = 0,
                                              .high = 1000,
                                              .varies_by = FLUTEBOOK_BY_PLANT,
                                              .required = 1}};
static const flutebook_line lines[] = {{.name = "glue",
                                        .unit = "kg",
                                        .title = "Glue",
                                        .axis = FLUTEBOOK_ORDER,
                                        .cost_class = FLUTEBOOK_MATERIAL,
                                        .behaviour = FLUTEBOOK_PER_UNIT}};

static uint32_t evaluate(const flutebook_block* block) {
    for (uint32_t r = 0; r < block->rows; ++r) {
        FLUTEBOOK_CELL(block, quantities, 0, 0, r) = FLUTEBOOK_CELL(block, needs, 0, 0, r) / 100;
        FLUTEBOOK_CELL(block, rates, 0, 0, r) = FLUTEBOOK_CELL(block, settings, 0, 0, r);
    }
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER,
                                          TEXTS("takes_tonnes_for_kilograms"),
                                          .needs = LIST(boxes_needs),
                                          .settings = LIST(settings),
                                          .lines = LIST(lines),
                                          .evaluate = evaluate};
