/* Charges a recovery, which is income, as a cost. */
#include "tests/plugin_check/plugins/plain_boxes.h"

static const flutebook_line lines[] = {{.name = "boxes",
                                        .unit = "1",
                                        .title = "Boxes given back",
                                        .axis = FLUTEBOOK_STEP,
                                        .cost_class = FLUTEBOOK_RECOVERY,
                                        .behaviour = FLUTEBOOK_PER_UNIT}};

static uint32_t evaluate(const flutebook_block* block) {
    count_boxes(block);
    return 0;
}

const flutebook_model flutebook_plugin = {HEADER, TEXTS("adds_a_recovery"), .needs = LIST(boxes_needs),
                                          .lines = LIST(lines), .evaluate = evaluate};
