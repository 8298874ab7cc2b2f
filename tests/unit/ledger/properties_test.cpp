// What always holds of a ledger, for any stream of documents, reversals and closed months.
#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <random>
#include <tuple>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

// A ledger of the simplest kind: a list of movements with their months.
class PlainBook {
public:
    struct Line {
        Month month;
        Movement movement;
    };

    void add(const Draft& draft, std::int64_t sign = 1) { add(draft, draft.date, sign); }
    void add(const Draft& draft, Date date, std::int64_t sign) {
        for (auto movement : draft.movements) {
            movement.mass = Grams::of(sign * movement.mass.count());
            movement.money = Money::of_ten_thousandths(sign * movement.money.ten_thousandths());
            lines_.push_back({date.year() / date.month(), movement});
        }
    }

    using Key = std::tuple<std::string, std::string, std::string, std::string>;
    [[nodiscard]] std::map<Key, std::pair<Grams, Money>> flows(Month month) const {
        std::map<Key, std::pair<Grams, Money>> sums;
        for (const auto& [of, movement] : lines_)
            if (of == month) {
                auto& sum = sums[{movement.from, movement.to, movement.material, movement.cause}];
                sum.first += movement.mass;
                sum.second += movement.money;
            }
        return sums;
    }
    [[nodiscard]] std::map<std::pair<std::string, std::string>, std::pair<Grams, Money>> balances_before(
        Month month) const {
        std::map<std::pair<std::string, std::string>, std::pair<Grams, Money>> held;
        for (const auto& [of, movement] : lines_)
            if (of < month) {
                held[{movement.to, movement.material}].first += movement.mass;
                held[{movement.to, movement.material}].second += movement.money;
                held[{movement.from, movement.material}].first += -movement.mass;
                held[{movement.from, movement.material}].second += -movement.money;
            }
        std::erase_if(held, [](const auto& one) { return one.second == std::pair<Grams, Money>(); });
        return held;
    }

private:
    std::vector<Line> lines_;
};

bool agree(const Store& store, const PlainBook& book, Month month) {
    std::map<PlainBook::Key, std::pair<Grams, Money>> found;
    for (const auto& flow : flows(store, month))
        found[{flow.from, flow.to, flow.material, flow.cause}] = {flow.mass, flow.money};
    std::map<std::pair<std::string, std::string>, std::pair<Grams, Money>> held;
    for (const auto& balance : balances_before(store, month))
        held[{balance.account, balance.material}] = {balance.mass, balance.money};
    return found == book.flows(month) && held == book.balances_before(month);
}

bool is_balanced(const Store& store, Month before) {
    Grams mass;
    Money money;
    for (const auto& balance : balances_before(store, before)) {
        mass += balance.mass;
        money += balance.money;
    }
    return mass == Grams() && money == Money();
}

// Posts, reverses and closes by lot, and keeps the plain book alongside.
class AnyYear {
public:
    explicit AnyYear(std::uint64_t seed) : random_(seed), stream_(seed, 4) {}

    void run(Store& store, int acts) {
        for (int act = 0; act < acts; ++act) {
            const auto lot = random_() % 10;
            if (lot < 7)
                post_some(store);
            else if (lot < 9)
                reverse_one(store);
            else if (act > acts / 2)
                close_one(store);
        }
    }
    [[nodiscard]] const PlainBook& book() const { return book_; }

private:
    void post_some(Store& store) {
        std::vector<Draft> drafts;
        for (auto& draft : stream_.take(1 + random_() % 12))
            if (!is_closed(store, draft.date.year() / draft.date.month())) drafts.push_back(std::move(draft));
        const auto batch = post(store, drafts, "mara");
        RC_ASSERT(!batch.is_refused());
        for (const auto& draft : drafts) book_.add(draft);
    }
    void reverse_one(Store& store) {
        const auto newest = head(store);
        if (!newest) return;
        const auto number = 1 + static_cast<std::int64_t>(random_() % static_cast<std::uint64_t>(newest->entry));
        const auto entry = find_entry(store, number);
        const auto last_day = day(2026, 12, 31);
        try {
            static_cast<void>(reverse(store, {number, last_day, "by lot", "mara"}));
            book_.add(entry->draft, last_day, -1);
        } catch (const LedgerError&) {
            const bool may_not = entry->reversed_by || entry->reverses || entry->draft.kind == close_kind;
            RC_ASSERT(may_not);
        }
    }
    void close_one(Store& store) {
        const auto last = last_seal(store);
        const Month next = last ? last->month + std::chrono::months(1) : month(2026, 9);
        if (next < month(2026, 12)) static_cast<void>(close_month(store, {next, {}, {}, "", "mara"}));
    }

    std::mt19937_64 random_;
    DocumentStream stream_;
    PlainBook book_;
};

}  // namespace

TEST_CASE("totals and balances are those of a plain list of movements, all accounts sum to zero, and the proof holds") {
    CHECK(holds_for_seeds(60, [](std::uint64_t seed) {
        auto store = Store::in_memory();
        AnyYear year(seed);
        year.run(store, 40);
        for (unsigned of = 8; of <= 12; ++of) {
            RC_ASSERT(agree(store, year.book(), month(2026, of)));
            RC_ASSERT(is_balanced(store, month(2026, of)));
        }
        RC_ASSERT(agree(store, year.book(), month(2027, 1)));
        const auto proof = verify(store);
        if (!proof.holds()) RC_FAIL(proof.findings[0].text);
    }));
}

TEST_CASE("when every entry is reversed, every account holds nothing of anything") {
    CHECK(holds_for_seeds(30, [](std::uint64_t seed) {
        auto store = Store::in_memory();
        const auto drafts = DocumentStream(seed, 3).take(25);
        static_cast<void>(post(store, drafts, "mara"));
        for (std::int64_t number = 1; number <= 25; ++number)
            static_cast<void>(reverse(store, {number, day(2026, 12, 1), "all of it", "mara"}));
        RC_ASSERT(balances_before(store, month(2027, 1)).empty());
        for (const auto& expected : expected_losses(store, month(2026, 12))) {
            Grams mass = expected.mass;
            for (unsigned of = 9; of <= 11; ++of)
                for (const auto& one : expected_losses(store, month(2026, of)))
                    if (one.centre == expected.centre && one.cause == expected.cause) mass += one.mass;
            RC_ASSERT(mass == Grams());
        }
        RC_ASSERT(verify(store).holds());
    }));
}

TEST_CASE("the order and the grouping of postings change no total") {
    CHECK(holds_for_seeds(30, [](std::uint64_t seed) {
        auto drafts = DocumentStream(seed, 2).take(60);
        auto whole = Store::in_memory();
        static_cast<void>(post(whole, drafts, "mara"));
        std::mt19937_64 random(seed);
        std::shuffle(drafts.begin(), drafts.end(), random);
        auto pieces = Store::in_memory();
        for (std::size_t i = 0; i < drafts.size(); i += 7)
            static_cast<void>(
                post(pieces, std::span(drafts).subspan(i, std::min<std::size_t>(7, drafts.size() - i)), "jonas"));
        const auto shown = [](const Store& store) {
            std::vector<std::tuple<std::string, std::string, std::string, std::string, std::int64_t, Grams, Money>>
                rows;
            for (unsigned of = 9; of <= 10; ++of)
                for (const auto& flow : flows(store, month(2026, of)))
                    rows.emplace_back(flow.from, flow.to, flow.material, flow.cause, flow.movements, flow.mass,
                                      flow.money);
            return rows;
        };
        RC_ASSERT(shown(whole) == shown(pieces));
    }));
}

TEST_CASE("however a month is divided, its parts add up to its flows and expected losses") {
    CHECK(holds_for_seeds(20, [](std::uint64_t seed) {
        auto store = Store::in_memory();
        static_cast<void>(post(store, DocumentStream(seed, 1).take(80), "mara"));
        using Key = std::tuple<std::string, std::string, std::string>;
        std::map<Key, std::pair<Grams, Money>> wanted;
        for (const auto& flow : flows(store, month(2026, 9))) {
            wanted[{flow.from, flow.to, flow.cause}].first += flow.mass;
            wanted[{flow.from, flow.to, flow.cause}].second += flow.money;
        }
        Grams expected;
        for (const auto& loss : expected_losses(store, month(2026, 9))) expected += loss.mass;
        for (const auto axis : {Axis::centre, Axis::shift, Axis::board, Axis::order}) {
            std::map<Key, std::pair<Grams, Money>> found;
            for (const auto& share : shares(store, month(2026, 9), axis)) {
                found[{share.from, share.to, share.cause}].first += share.mass;
                found[{share.from, share.to, share.cause}].second += share.money;
            }
            RC_ASSERT(found == wanted);
            Grams parts;
            for (const auto& share : expected_shares(store, month(2026, 9), axis)) parts += share.mass;
            RC_ASSERT(parts == expected);
        }
    }));
}
