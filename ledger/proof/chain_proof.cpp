#include "ledger/proof/chain_proof.hpp"

#include <fmt/format.h>

#include <chrono>

#include "ledger/writing/chain.hpp"

namespace flutebook::ledger::proof {

namespace {

// Entries and what belongs to them, each in the order of its numbers.
struct ChainRows {
    Statement entries, movements, expected, counts;
};

constexpr const char* entry_columns =
    "SELECT e.id, e.kind, e.ref, e.content, e.day, e.shift, e.centre, e.order_, e.board, e.note, e.who, e.written, "
    "coalesce(e.reverses, 0), e.hash, e.clock FROM ";
constexpr const char* movement_columns =
    "SELECT m.id, m.from_account, m.to_account, m.material, m.cause, m.grams, m.money, m.day FROM ";
constexpr const char* expected_columns = "SELECT x.id, x.cause, x.grams FROM ";
constexpr const char* count_columns = "SELECT s.entry, s.account, s.material, s.grams, s.money, s.day FROM ";

ChainRows all_rows(Database& books) {
    const auto rows = [&](const char* columns, const char* from) {
        return Statement(books, (std::string(columns) + from).c_str());
    };
    return {rows(entry_columns, "entry AS e ORDER BY e.id"), rows(movement_columns, "movement AS m ORDER BY m.id"),
            rows(expected_columns, "expected AS x ORDER BY x.id"),
            rows(count_columns, "stock_count AS s ORDER BY s.entry")};
}

ChainRows rows_in(Database& books, const ChainScope& scope) {
    const auto rows = [&](const char* columns, const char* from) {
        Statement statement(books,
                            (std::string("WITH scope (id) AS (SELECT id FROM entry WHERE month = ?1 UNION SELECT id "
                                         "FROM entry WHERE id BETWEEN ?2 AND ?3) ") +
                             columns + "scope CROSS JOIN " + from)
                                .c_str());
        statement.bind(1, scope.month).bind(2, scope.first).bind(3, scope.last);
        return statement;
    };
    return {
        rows(entry_columns, "entry AS e ON e.id = scope.id ORDER BY e.id"),
        rows(movement_columns, "movement AS m ON m.id BETWEEN scope.id * 1000 AND scope.id * 1000 + 999 ORDER BY m.id"),
        rows(expected_columns, "expected AS x ON x.id BETWEEN scope.id * 1000 AND scope.id * 1000 + 999 ORDER BY x.id"),
        rows(count_columns, "stock_count AS s ON s.entry = scope.id ORDER BY s.entry")};
}

// Rows that belong to entries, read alongside them in the same order.
class ParallelReads {
public:
    enum class Numbered { by_line, by_entry };

    ParallelReads(Statement rows, const char* what, Numbered numbered)
        : rows_(std::move(rows)), what_(what), numbered_(numbered), has_row_(rows_.step()) {}

    [[nodiscard]] bool is_of(std::int64_t entry) const { return has_row_ && entry_of_row() == entry; }
    /// Rows before this entry belong to none.
    void skip_to(std::int64_t entry, Findings& findings) {
        for (; has_row_ && entry_of_row() < entry; next())
            findings.add_at(entry_of_row(),
                            fmt::format("entry {}: {} exists without its entry", entry_of_row(), what_));
    }
    void finish(Findings& findings) {
        for (; has_row_; next())
            findings.add_at(entry_of_row(),
                            fmt::format("entry {}: {} exists without its entry", entry_of_row(), what_));
    }
    [[nodiscard]] std::int64_t line() const { return rows_.number(0) % 1000; }
    [[nodiscard]] std::int64_t number(int column) const { return rows_.number(column); }
    [[nodiscard]] bool is_nothing(int column) const { return rows_.is_nothing(column); }
    void next() { has_row_ = rows_.step(); }

private:
    [[nodiscard]] std::int64_t entry_of_row() const {
        return numbered_ == Numbered::by_line ? rows_.number(0) / 1000 : rows_.number(0);
    }

    Statement rows_;
    const char* what_;
    Numbered numbered_;
    bool has_row_;
};

// The fields of an entry that a chain text is made of, as they stand in the file.
class ChainProof {
public:
    ChainProof(Database& books, ChainRows rows, const NameList& names, const std::optional<Hash>& kept,
               Findings& findings)
        : names_(names),
          kept_(kept),
          findings_(findings),
          stored_hash_(books, "SELECT hash FROM entry WHERE id = ?"),
          entries_(std::move(rows.entries)),
          movements_(std::move(rows.movements), "a movement", ParallelReads::Numbered::by_line),
          expected_(std::move(rows.expected), "an expected loss", ParallelReads::Numbered::by_line),
          counts_(std::move(rows.counts), "a count", ParallelReads::Numbered::by_entry) {}

    // Entries that are read are not all there are.
    void follow_gaps() { follows_gaps_ = true; }

    void prove() {
        while (entries_.step()) prove_entry();
        movements_.finish(findings_);
        expected_.finish(findings_);
        counts_.finish(findings_);
    }

    [[nodiscard]] ChainRead& read() { return read_; }

private:
    void prove_entry() {
        number_ = entries_.number(0);
        day_ = entries_.number(4);
        if (follows_gaps_ && number_ != read_.entries + 1) read_.head = stored_hash(number_ - 1);
        if (!follows_gaps_ && number_ != read_.entries + 1)
            findings_.add_at(read_.entries + 1,
                             fmt::format("entry {}: is missing: the next is entry {}", read_.entries + 1, number_));
        movements_.skip_to(number_, findings_);
        expected_.skip_to(number_, findings_);
        counts_.skip_to(number_, findings_);
        write_words();
        write_movements();
        write_expected();
        write_count();
        prove_hash();
        prove_time();
        const auto& kind = text_of_name(entries_.number(1));
        if (kind == "saved") read_.saved.push_back({number_, entries_.text(3)});
        if (kind == "close") read_.closings.push_back({number_, day_ / 100, entries_.text(3)});
        read_.entries = number_;
    }

    // Of the entry before one that is read, which is not read itself; zeros before the first.
    Hash stored_hash(std::int64_t number) {
        stored_hash_.bind(1, number);
        const bool is_there = stored_hash_.step();
        const auto hash = is_there ? from_bytes(stored_hash_.view(0)).value_or(Hash{}) : Hash{};
        stored_hash_.reset();
        if (!is_there && number > 0) findings_.add_at(number, fmt::format("entry {}: is missing", number));
        return hash;
    }

    const std::string& text_of_name(std::int64_t number) {
        static const std::string none;
        const auto* name = names_.find(number);
        if (name == nullptr)
            findings_.add_at(number_,
                             fmt::format("entry {}: has a name that is not there: number {}", number_, number));
        return name == nullptr ? none : *name;
    }
    void write_name(std::int64_t number) { text_.text(text_of_name(number)); }

    void write_words() {
        const bool has_clock = !entries_.is_nothing(14);
        text_.begin(read_.head, has_clock ? "entry 2" : "entry 1");
        text_.number(number_);
        write_name(entries_.number(1));
        text_.text(entries_.view(2));
        text_.text(entries_.view(3));
        text_.number(day_);
        for (const int column : {5, 6, 7, 8}) write_name(entries_.number(column));
        text_.text(entries_.view(9));
        write_name(entries_.number(10));
        text_.number(entries_.number(11));
        text_.number(entries_.number(12));
        if (has_clock) text_.number(entries_.number(14));
    }

    // How many lines there are stands before them in the text, so they are kept for a moment.
    template <std::size_t Columns>
    std::vector<std::array<std::int64_t, Columns>> take_lines(ParallelReads& rows, const char* what) {
        std::vector<std::array<std::int64_t, Columns>> lines;
        for (; rows.is_of(number_); rows.next()) {
            if (rows.line() != static_cast<std::int64_t>(lines.size()))
                findings_.add_at(number_, fmt::format("entry {}: {} {} is missing", number_, what, lines.size() + 1));
            auto& line = lines.emplace_back();
            for (std::size_t column = 0; column < Columns; ++column)
                line[column] = rows.number(static_cast<int>(column) + 1);
        }
        return lines;
    }

    void write_movements() {
        const auto lines = take_lines<7>(movements_, "movement");
        text_.number(static_cast<std::int64_t>(lines.size()));
        const auto month = day_ / 100;
        for (const auto& [from, to, material, cause, grams, money, day] : lines) {
            for (const auto name : {from, to, material, cause}) write_name(name);
            text_.number(grams);
            text_.number(money);
            if (day != day_)
                findings_.add_at(number_,
                                 fmt::format("entry {}: a movement is of another day: found {}, the entry is of {}",
                                             number_, day, day_));
            read_.recount.flows[{month, from, to, material, cause}].add(grams, money);
            read_.recount.details[{month, entries_.number(6), entries_.number(5), entries_.number(8), from, to, cause}]
                .add(grams, money);
        }
    }

    void write_expected() {
        const auto lines = take_lines<2>(expected_, "expected loss");
        text_.number(static_cast<std::int64_t>(lines.size()));
        for (const auto& [cause, grams] : lines) {
            write_name(cause);
            text_.number(grams);
            read_.recount.expected[{day_ / 100, entries_.number(6), entries_.number(5), entries_.number(8), cause}].add(
                grams, 0);
        }
    }

    void write_count() {
        const bool has_count = counts_.is_of(number_);
        text_.number(has_count ? 1 : 0);
        if (!has_count) return;
        write_name(counts_.number(1));
        write_name(counts_.number(2));
        text_.number(counts_.number(3));
        text_.number(counts_.is_nothing(4) ? 0 : 1);
        if (!counts_.is_nothing(4)) text_.number(counts_.number(4));
        if (counts_.number(5) != day_)
            findings_.add_at(number_, fmt::format("entry {}: its count is of another day", number_));
        counts_.next();
    }

    void prove_hash() {
        const auto hash = text_.hash();
        if (entries_.view(13) != bytes_of(hash))
            findings_.add_at(number_,
                             fmt::format("entry {}: was changed, or one before it: its hash does not match its "
                                         "content",
                                         number_));
        else if (kept_ && hash == *kept_)
            read_.kept_at = number_;
        // From what is stored on: one changed entry is one finding.
        read_.head = from_bytes(entries_.view(13)).value_or(hash);
    }

    void prove_time() {
        const auto date = date_of(day_);
        if (!date.ok())
            findings_.add_at(number_, fmt::format("entry {}: there is no such day: found {}", number_, day_));
        if (entries_.number(11) < newest_time_)
            findings_.add_at(number_, fmt::format("entry {}: was written before the entry before it", number_));
        newest_time_ = entries_.number(11);
        if (!read_.closings.empty() && day_ / 100 <= read_.closings.back().month)
            findings_.add_at(number_, fmt::format("entry {}: is dated in a month that entry {} had closed", number_,
                                                  read_.closings.back().entry));
    }

    const NameList& names_;
    const std::optional<Hash>& kept_;
    Findings& findings_;
    Statement stored_hash_, entries_;
    ParallelReads movements_, expected_, counts_;
    ChainText text_;
    ChainRead read_;
    std::int64_t number_ = 0, day_ = 0, newest_time_ = 0;
    bool follows_gaps_ = false;
};

void add_unreadable(const ChainRead& read, const LedgerError& error, Findings& findings) {
    const auto next = read.entries + 1;
    findings.add_at(next, fmt::format("entry {}: it or what follows cannot be read: {}", next, error.what()));
}

// Lines of a reversal are those of what it reverses, one by one, with the other sign.
void prove_mirrors(Database& books, Findings& findings) {
    Statement reversals(books,
                        "SELECT r.id, e.id, e.reverses IS NOT NULL FROM entry AS r LEFT JOIN entry AS e "
                        "ON e.id = r.reverses WHERE r.reverses IS NOT NULL ORDER BY r.id");
    Statement differ(
        books,
        "SELECT 1 FROM (SELECT id % 1000, from_account, to_account, material, cause, -grams, -money "
        "FROM movement WHERE id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 EXCEPT "
        "SELECT id % 1000, from_account, to_account, material, cause, grams, money "
        "FROM movement WHERE id BETWEEN ?2 * 1000 AND ?2 * 1000 + 999) UNION ALL "
        "SELECT 1 FROM (SELECT id % 1000, cause, -grams FROM expected "
        "WHERE id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 EXCEPT SELECT id % 1000, cause, grams FROM expected "
        "WHERE id BETWEEN ?2 * 1000 AND ?2 * 1000 + 999)");
    while (reversals.step()) {
        const auto number = reversals.number(0);
        if (reversals.is_nothing(1)) {
            findings.add_at(number, fmt::format("entry {}: reverses an entry that is not there", number));
            continue;
        }
        const auto mirrored = reversals.number(1);
        if (reversals.number(2) != 0)
            findings.add_at(number, fmt::format("entry {}: reverses entry {}, a reversal itself", number, mirrored));
        // Both ways, so that neither has a line more.
        for (const auto& [left, right] : {std::pair(mirrored, number), std::pair(number, mirrored)}) {
            differ.bind(1, left).bind(2, right);
            const bool is_different = differ.step();
            differ.reset();
            if (!is_different) continue;
            findings.add_at(
                number, fmt::format("entry {}: is not the mirror of entry {}, which it reverses", number, mirrored));
            break;
        }
    }
}

}  // namespace

ChainRead prove_chain(Database& books, const NameList& names, const std::optional<Hash>& kept, Findings& findings) {
    ChainProof proof(books, all_rows(books), names, kept, findings);
    try {
        proof.prove();
        prove_mirrors(books, findings);
    } catch (const LedgerError& error) {
        add_unreadable(proof.read(), error, findings);
    }
    return std::move(proof.read());
}

ChainRead prove_part_of_chain(Database& books, const NameList& names, const ChainScope& scope, Findings& findings) {
    const std::optional<Hash> none;
    ChainProof proof(books, rows_in(books, scope), names, none, findings);
    proof.follow_gaps();
    try {
        proof.prove();
    } catch (const LedgerError& error) {
        add_unreadable(proof.read(), error, findings);
    }
    return std::move(proof.read());
}

}  // namespace flutebook::ledger::proof
