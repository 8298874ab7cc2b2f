// What posting documents and reversing an entry answer. Plain values.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "host/production/document_format.hpp"
#include "ledger/values/entry.hpp"
#include "ledger/values/mass.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

struct PostOptions {
    /// A dry run keeps nothing.
    enum class Keep { all, nothing };
    std::vector<std::string> files;
    std::string who;  // written into every entry
    Keep keep;
};

/// What became of one file's rows. A row that was posted before is skipped.
struct PostedFile {
    std::string file;
    production::Kind kind;
    std::int64_t posted, skipped;
};

/// All that the posted rows moved from one account to another for one cause.
struct PostedFlow {
    std::string from, to, cause;
    Grams mass;
    Money money;
};

struct PostAnswer {
    std::vector<PostedFile> files;  // in the order asked
    std::vector<PostedFlow> flows;  // by account and cause, in the order of their bytes
    std::int64_t posted, skipped;
    std::int64_t first_entry;  // of those posted, which follow each other; 0 where none was
    std::string head;          // hash of the ledger's newest entry, in hex; empty after a dry run
};

struct ReverseAnswer {
    ledger::Entry reversal;
    std::string reversed_kind, reversed_ref;  // of the document that was undone
};

}  // namespace flutebook::answers
