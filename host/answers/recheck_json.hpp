// The answer to `quote recheck --json`.
//
// {"quote", "request", "saved": {"who", "when" (UTC)}, "date" (whose prices; null where unknown), "plant", "currency",
//  "differs" (true false), "cause" (nothing-differs plant-files plugins both unknown),
//  "plant_files": [{"file", "key", "was", "now", "place" ("FILE:LINE:COLUMN" of today, null of what is gone)}...],
//  "plugins": [{"id", "was", "now"}...], was and now {"version", "sha256"} or null,
//  "saved_files": {"ends" (to-the-byte otherwise unfit), "complaints": [sentence...]},
//  "today": {"ends" (answered refused model-at-fault), "complaints": [sentence...]},
//  "heading": [D...], the plant's name and currency,
//  "quantities": [{"quantity", "differs", "was": T, "saved_files": T, "now": T, "figures": [D...], "lines": [L...],
//    "limits": ["WAY: LIMIT"...]}...]}
// T = {"cost", "cost_per_thousand", "price_per_thousand"}, null where it could not be made; "saved_files" is what the
// files that were kept come to by today's plugins, so that now - was = (saved_files - was) by the plugins or the
// program + (now - saved_files) by the plant's files.
// D = {"key" (as in `quote --json`, entries of lists counted from 1), "was", "now" (texts, null where there was
// nothing), "by" (null of what is no number)}.
// L = {"plugin", "line", "step", "ply", "was": F, "now": F, "by"}, F = {"machine", "quantity", "rate", "unit",
// "amount"} or null.
#pragma once

#include <string>

#include "host/answers/recheck_answer.hpp"

namespace flutebook::answers {

[[nodiscard]] std::string recheck_json(const Recheck& checked);

}  // namespace flutebook::answers
