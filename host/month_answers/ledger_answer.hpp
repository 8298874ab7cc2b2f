// What posting documents, reversing and listing entries and proving a ledger answer: plain values, and the documents
// that `post`, `reverse`, `entries`, `verify` and `backup` write with --json.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/production/document_format.hpp"
#include "ledger/proof/backup.hpp"
#include "ledger/proof/verify.hpp"
#include "ledger/values/entry.hpp"
#include "ledger/values/mass.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::answers {

struct PostOptions {
    /// A dry run stores nothing.
    enum class Keep { all, nothing };
    /// What is done with rows that are likely a slip.
    enum class Doubtful { warn, refuse };
    std::vector<std::string> files;
    std::string who;  // written into every entry
    Keep keep;
    std::optional<base::Date> today = {};  // by the machine's clock; nothing: no row is judged
    Doubtful doubtful = Doubtful::warn;
    std::map<std::string, std::string> names = {};  // of files that messages call otherwise

    [[nodiscard]] const std::string& name_of(const std::string& file) const {
        const auto name = names.find(file);
        return name == names.end() ? file : name->second;
    }
};

/// How many of one file's rows were posted. A row that was posted before is skipped.
struct PostedFile {
    std::string file;
    production::Kind kind;
    std::int64_t posted, skipped;
};

/// The sum that the posted rows moved from one account to another for one cause.
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
    /// Rows that are likely a slip (many are counted at the end) and a clock that is behind, a sentence each.
    std::vector<std::string> warnings;
};

struct ReverseAnswer {
    ledger::Entry reversal;
    std::string reversed_kind, reversed_ref;  // of the document that was undone
};

/// Entries dated in a month, in the order of posting, without what they moved.
struct EntriesAnswer {
    ledger::Month month;
    std::vector<ledger::Entry> entries;
};

/// {"dry_run", "posted", "skipped" (rows), "first_entry" (the posted rows' entries follow each other from
/// it; null where none was posted), "head" (hash of the ledger's newest entry; null after a dry run),
///   "files": [{"file", "document" (paper, corrugator-run, converter-run, weighed-scrap, bale, ticket, centre-cost,
///   count), "posted", "skipped"}...], in the order asked,
///   "moved": [{"from", "to", "cause" (empty where nothing was lost), "kg", "amount"}...], sums over the posted rows,
///   sorted by from, to and cause, "warnings": [SENTENCE...] (rows that are likely a slip, a clock
///   that is behind the ledger)}
[[nodiscard]] std::string post_document(const PostAnswer& answer, PostOptions::Keep keep);

/// {"entry", "reverses" (entries' numbers), "date", "document" (its kind), "ref", "head"}
[[nodiscard]] std::string reverse_document(const ReverseAnswer& answer);

/// {"month", "entries": [{"entry" (its number), "date", "document" (its kind), "ref", "shift", "centre", "order",
/// "board", "note", "who", "written" (UTC), "clock" (what the computer's clock said where it was behind; else null),
/// "reverses", "reversed_by" (entries' numbers or null), "head" (its hash)}...]}
[[nodiscard]] std::string entries_document(const EntriesAnswer& answer);

/// {"holds", "entries" (how many), "head", "kept_at" (the entry whose hash is the kept head; null where none was
/// given), "findings": [{"entry" (null of the whole ledger), "finding"}...]}
[[nodiscard]] std::string verify_document(const ledger::Proof& proof);
/// The same of a copy; "file", its name; "cleared": [FILE...], what backups into its folder left that were broken off.
[[nodiscard]] std::string backup_document(const ledger::BackupProof& proof, const std::string& file);

}  // namespace flutebook::answers
