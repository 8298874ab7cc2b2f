// A production document as it would be posted, row by row, and what stands in its way: nothing is written.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/month_answers/ledger_answer.hpp"

namespace flutebook::answers {

/// A row as a sentence is about it; `faults` refuse the whole file, `doubts` do not.
struct TriedRow {
    std::int64_t line;
    std::vector<std::string> fields;
    std::vector<std::string> faults, doubts;  // without the file and the line
};

struct DocumentTrial {
    std::string file;                  // as messages call it
    std::optional<PostAnswer> answer;  // what it would post; nothing where it is refused
    std::vector<std::string> heads;    // the fields of its first line
    std::vector<TriedRow> rows;        // those with a fault or a doubt, and the first others
    std::size_t all_rows = 0;
    std::vector<std::string> faults;    // of the file as a whole
    std::vector<std::string> warnings;  // likewise
};

/// {"file", "refused", "rows" (how many it has), "faults": [{"line", "fault"}...] (line null: of the file as a whole),
///  "doubts": the same, "would_post" (null where it is refused), "would_skip"}
[[nodiscard]] std::string document_trial_document(const DocumentTrial& answer);

}  // namespace flutebook::answers
