// What a posting did, for scripts.
//
// `post --json`: {"dry_run", "posted", "skipped" (rows), "first_entry" (the posted rows' entries follow each other from
// it; null where none was posted), "head" (hash of the ledger's newest entry; null after a dry run),
//   "files": [{"file", "document" (paper, corrugator-run, converter-run, weighed-scrap, bale, ticket, centre-cost,
//   count), "posted", "skipped"}...], in the order asked,
//   "moved": [{"from", "to", "cause" (empty where nothing was lost), "kg", "amount"}...]}, sums over the posted rows,
//   sorted by from, to and cause
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "host/answers/post_answer.hpp"

namespace flutebook::answers {

[[nodiscard]] nlohmann::ordered_json post_json(const PostAnswer& answer, PostOptions::Keep keep);

}  // namespace flutebook::answers
