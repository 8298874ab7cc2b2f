#include "ledger/proof/seal_check.hpp"

#include <fmt/format.h>

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "ledger/proof/chain_proof.hpp"
#include "ledger/proof/sealed_sums.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/writing/chain.hpp"
#include "ledger/writing/sealed_content.hpp"

namespace flutebook::ledger {

namespace {

using proof::ChainRead;
using proof::Findings;

struct SealRow {
    std::int64_t month = 0, entry = 0;
};

// One month with the seal that it begins with and, where it is closed, its own.
class SealCheck {
public:
    enum class State { open, closed };

    SealCheck(Database& books, Month month) : books_(books), names_(books), month_(to_number(month)) {
        own_ = seal("SELECT month, entry FROM seal WHERE month = ?");
        before_ = seal("SELECT month, entry FROM seal WHERE month < ? ORDER BY month DESC LIMIT 1");
        closing_ = closing_entry(month);
    }

    // A month is closed where its closing entry or its seal says so: neither can be taken away alone.
    [[nodiscard]] State state() const { return own_ || closing_ != 0 ? State::closed : State::open; }
    [[nodiscard]] std::int64_t last_sealed_entry() const { return before_ ? before_->entry : 0; }

    // What the month's entries come to, entries `first` to `last` re-hashed with them.
    void recount(std::int64_t first, std::int64_t last) {
        read_ = proof::prove_part_of_chain(books_, names_, {month_, first, last}, findings_);
    }
    void prove_totals() { proof::prove_totals_of(books_, month_, names_, read_.recount, findings_); }

    void prove_own_seal() {
        const auto content = sealed_content(closing_, month_);
        if (!own_ || own_->entry != closing_) find("is closed by its entry, but not sealed");
        if (!content) return;
        const auto month = month_of(month_);
        if (totals_hash(month, proof::sealed_flows(read_.recount, names_, month_),
                        proof::sealed_expected(read_.recount, names_, month_)) != content->totals)
            find("its totals are not those that were sealed");
        auto stocks = before_ ? proof::stored_stocks(books_, before_->month) : proof::StockSums();
        proof::add_flows(stocks, read_.recount, month_);
        const auto closing_stocks = proof::sorted_stocks(stocks, names_);
        if (stocks_hash(month, closing_stocks) != content->stocks)
            find("its closing stocks are not those that were sealed");
        if (!proof::are_equal(closing_stocks, proof::sorted_stocks(proof::stored_stocks(books_, month_), names_)))
            find("its stored closing stocks are not what its entries make");
    }

    void prove_seal_before() {
        if (!before_) return;
        const auto month = month_of(before_->month);
        const auto content = sealed_content(before_->entry, before_->month);
        if (content && stocks_hash(month, proof::sorted_stocks(proof::stored_stocks(books_, before_->month), names_)) !=
                           content->stocks)
            findings_.add(fmt::format("{}: its closing stocks are not those that were sealed", to_text(month)));
        Statement between(books_, "SELECT month FROM month_flow WHERE month > ?1 AND month < ?2 LIMIT 1");
        between.bind(1, before_->month).bind(2, month_);
        if (own_ && between.step())
            findings_.add(
                fmt::format("{}: holds movements, but no seal covers them", to_text(month_of(between.number(0)))));
    }

    void throw_if_found(const std::string& what) {
        const auto found = findings_.take();
        if (found.empty()) return;
        std::vector<std::string> lines = {
            fmt::format("{}: {} {}; run `flutebook verify`, and restore a verified backup", books_.file(),
                        to_text(month_of(month_)), what)};
        for (const auto& one : found) lines.push_back(books_.file() + ": " + one.text);
        throw LedgerError(LedgerError::Kind::refused, lines);
    }

private:
    void find(const std::string& what) { findings_.add(fmt::format("{}: {}", to_text(month_of(month_)), what)); }

    std::optional<SealRow> seal(const char* sql) {
        Statement row(books_, sql);
        row.bind(1, month_);
        return row.step() ? std::optional(SealRow{row.number(0), row.number(1)}) : std::nullopt;
    }

    std::int64_t closing_entry(Month month) {
        const auto ref = to_text(month);
        Statement row(books_,
                      "SELECT id FROM entry WHERE kind = (SELECT id FROM name WHERE text = 'close') AND ref = ?");
        row.bind(1, ref);
        return row.step() ? row.number(0) : 0;
    }

    // What the closing entry says it sealed.
    std::optional<SealedContent> sealed_content(std::int64_t entry, std::int64_t month) {
        Statement row(books_, "SELECT content FROM entry WHERE id = ?");
        row.bind(1, entry);
        auto content = row.step() ? parse_sealed(row.view(0)) : std::nullopt;
        if (content && to_number(content->month) == month) return content;
        findings_.add(fmt::format("{}: no entry says what was sealed", to_text(month_of(month))));
        return std::nullopt;
    }

    Database& books_;
    proof::NameList names_;
    std::int64_t month_, closing_ = 0;
    std::optional<SealRow> own_, before_;
    ChainRead read_;
    Findings findings_;
};

}  // namespace

void expect_seal_holds(const Store& store, Month month) {
    const Snapshot snapshot(store);
    SealCheck check(store.connection().books(), month);
    const bool is_closed = check.state() == SealCheck::State::closed;
    const auto before = check.last_sealed_entry();
    if (is_closed) {
        check.recount(before, before);
        check.prove_totals();
        check.prove_own_seal();
    }
    check.prove_seal_before();
    check.throw_if_found(is_closed ? "is closed, but differs from its seal: nothing of it is shown"
                                   : "cannot be shown: the closed month before it differs from its seal");
}

void expect_fit_to_close(const Store& store, Month month) {
    SealCheck check(store.connection().books(), month);
    check.recount(check.last_sealed_entry(), std::numeric_limits<std::int64_t>::max());
    check.prove_totals();
    check.prove_seal_before();
    check.throw_if_found("is not closed: its totals differ from what was posted");
}

}  // namespace flutebook::ledger
