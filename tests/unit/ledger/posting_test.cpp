// Documents into the ledger: each once, all or none.
#include "ledger/writing/posting.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

std::string refusal_of(const Draft& draft) {
    auto store = Store::in_memory();
    Posting posting(store, "mara");
    try {
        posting.add(draft);
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return error.what();
    }
    return "";
}

std::int64_t posted_number(const Added& added) {
    return std::get<Posted>(added).number;
}

}  // namespace

TEST_CASE("what was posted is read back as it was") {
    const SetClock clock;
    auto store = Store::in_memory(clock);
    auto count = floor_count("N1", day(2026, 10, 31), 700);
    count.count->value = Money::of_ten_thousandths(123456);
    const std::vector<Draft> drafts = {paper_issue("P1", day(2026, 10, 2), 1200, 800),
                                       corrugator_run("R1", day(2026, 10, 3), "500123"), count};
    const auto batch = post(store, drafts, "mara");
    REQUIRE(batch.added.size() == 3);
    CHECK(batch.receipt.posted == 3);

    for (std::int64_t number = 1; number <= 3; ++number) {
        const auto entry = find_entry(store, number);
        REQUIRE(entry);
        const auto& draft = drafts[static_cast<std::size_t>(number - 1)];
        CHECK(entry->number == number);
        CHECK(entry->who == "mara");
        CHECK(entry->when == clock.now());
        CHECK_FALSE(entry->reverses);
        CHECK_FALSE(entry->reversed_by);
        CHECK(entry->draft.kind == draft.kind);
        CHECK(entry->draft.ref == draft.ref);
        CHECK(entry->draft.content == draft.content);
        CHECK(entry->draft.date == draft.date);
        CHECK(entry->draft.shift == draft.shift);
        CHECK(entry->draft.centre == draft.centre);
        CHECK(entry->draft.order == draft.order);
        CHECK(entry->draft.board == draft.board);
        CHECK(entry->draft.note == draft.note);
        REQUIRE(entry->draft.movements.size() == draft.movements.size());
        for (std::size_t i = 0; i < draft.movements.size(); ++i) {
            CHECK(entry->draft.movements[i].from == draft.movements[i].from);
            CHECK(entry->draft.movements[i].to == draft.movements[i].to);
            CHECK(entry->draft.movements[i].material == draft.movements[i].material);
            CHECK(entry->draft.movements[i].cause == draft.movements[i].cause);
            CHECK(entry->draft.movements[i].mass == draft.movements[i].mass);
            CHECK(entry->draft.movements[i].money == draft.movements[i].money);
        }
        REQUIRE(entry->draft.expected.size() == draft.expected.size());
        for (std::size_t i = 0; i < draft.expected.size(); ++i) {
            CHECK(entry->draft.expected[i].cause == draft.expected[i].cause);
            CHECK(entry->draft.expected[i].mass == draft.expected[i].mass);
        }
        REQUIRE(entry->draft.count.has_value() == draft.count.has_value());
        if (draft.count) {
            CHECK(entry->draft.count->account == "floor");
            CHECK(entry->draft.count->material == "board");
            CHECK(entry->draft.count->mass == draft.count->mass);
            CHECK(entry->draft.count->value == draft.count->value);
        }
    }
    CHECK(find_entry(store, 3)->hash == batch.receipt.head);
    CHECK(head(store)->hash == batch.receipt.head);
    CHECK(head(store)->entry == 3);
    CHECK(find_entry(store, "corrugator-run", "R1")->number == 2);
    CHECK_FALSE(find_entry(store, "paper", "R1"));
    CHECK_FALSE(find_entry(store, 4));
}

TEST_CASE("the same documents posted twice are posted once") {
    auto store = Store::in_memory();
    const auto drafts = DocumentStream(7).take(60);
    const auto first = post(store, drafts, "mara");
    CHECK(first.receipt.posted == 60);
    const auto again = post(store, drafts, "jonas");
    CHECK(again.receipt.posted == 0);
    CHECK(again.receipt.skipped == 60);
    CHECK(again.receipt.head == first.receipt.head);
    for (std::size_t i = 0; i < drafts.size(); ++i)
        CHECK(std::get<AlreadyPosted>(again.added[i]).number == posted_number(first.added[i]));
}

TEST_CASE("a row that is twice among the documents of one posting is posted once") {
    auto store = Store::in_memory();
    const auto draft = paper_issue("P1", day(2026, 10, 2), 1200);
    const auto batch = post(store, std::vector<Draft>{draft, draft}, "mara");
    CHECK(posted_number(batch.added[0]) == 1);
    CHECK(std::get<AlreadyPosted>(batch.added[1]).number == 1);
    CHECK(batch.receipt.posted == 1);
    CHECK(batch.receipt.skipped == 1);
}

TEST_CASE("a row changed under the same ref is refused, and nothing of its posting is kept") {
    auto store = Store::in_memory();
    const auto before = post(store, std::vector<Draft>{paper_issue("P1", day(2026, 10, 2), 1200)}, "mara");
    const std::vector<Draft> drafts = {paper_issue("P2", day(2026, 10, 2), 900),
                                       paper_issue("P1", day(2026, 10, 2), 1201),
                                       paper_issue("P3", day(2026, 10, 2), 900)};
    const auto batch = post(store, drafts, "mara");
    CHECK(batch.is_refused());
    CHECK(posted_number(batch.added[0]) == 2);
    CHECK(std::get<KnownRef>(batch.added[1]).number == 1);
    CHECK(std::get<KnownRef>(batch.added[1]).content == "ref=P1\npaper=KL135\nkg=1200\n");
    CHECK(posted_number(batch.added[2]) == 3);  // what comes after a refusal is examined too
    CHECK(head(store)->hash == before.receipt.head);
    CHECK_FALSE(find_entry(store, "paper", "P2"));
    CHECK(flows(store, month(2026, 10)).size() == 1);
}

TEST_CASE("the same ref of another kind is another document") {
    auto store = Store::in_memory();
    auto other = paper_issue("P1", day(2026, 10, 2), 1200);
    other.kind = "weighed-scrap";
    const auto batch = post(store, std::vector<Draft>{paper_issue("P1", day(2026, 10, 2), 900), other}, "mara");
    CHECK(batch.receipt.posted == 2);
}

TEST_CASE("a dry run answers what a posting would, and keeps nothing") {
    auto store = Store::in_memory();
    const std::vector<Draft> first = {paper_issue("P1", day(2026, 10, 2), 1200)};
    const std::vector<Draft> more = {first[0], paper_issue("P2", day(2026, 10, 2), 900)};
    static_cast<void>(post(store, first, "mara"));
    const auto would = would_post(store, more, "mara");
    CHECK(std::get<AlreadyPosted>(would.added[0]).number == 1);
    CHECK(posted_number(would.added[1]) == 2);
    CHECK(head(store)->entry == 1);
    const auto flow = flows(store, month(2026, 10)).at(0);
    CHECK(flow.mass == Grams::of(1'200'000));
    CHECK(post(store, more, "mara").receipt.posted == 1);
    CHECK(verify(store).holds());
}

TEST_CASE("a posting sees what it has added so far, and its totals") {
    auto store = Store::in_memory();
    Posting posting(store, "mara");
    posting.add(paper_issue("P1", day(2026, 10, 2), 1000, 700));
    CHECK(find_entry(store, 1)->draft.ref == "P1");
    CHECK(flows(store, month(2026, 10)).at(0).mass == Grams::of(1'000'000));
    posting.add(paper_issue("P2", day(2026, 10, 3), 500, 360));
    CHECK(flows(store, month(2026, 10)).at(0).mass == Grams::of(1'500'000));
    CHECK(last_priced(store, "paper-store", "C1", "KL135", day(2026, 10, 3))->entry == 2);
    posting.commit();
    CHECK(flows(store, month(2026, 10)).at(0).movements == 2);
    CHECK(verify(store).holds());
}

TEST_CASE("the receipt of a refused batch says that nothing was posted") {
    auto store = Store::in_memory();
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P1", day(2026, 10, 2), 1200)}, "mara"));
    const Batch batch = post(store, std::vector<Draft>{paper_issue("P1", day(2026, 10, 2), 1201)}, "mara");
    REQUIRE(batch.is_refused());
    CHECK(batch.receipt.posted == 0);
    CHECK(batch.receipt.skipped == 0);
    CHECK(batch.receipt.head.empty());
}

TEST_CASE("a posting that was refused, or has ended, takes and keeps nothing more") {
    auto store = Store::in_memory();
    {
        Posting posting(store, "mara");
        posting.add(paper_issue("P1", day(2026, 10, 2), 1200));
        posting.add(paper_issue("P1", day(2026, 10, 2), 1201));
        CHECK_THROWS_AS(posting.commit(), LedgerError);
        CHECK_THROWS_AS(posting.add(paper_issue("P2", day(2026, 10, 2), 1)), LedgerError);
        CHECK_THROWS_AS(posting.commit(), LedgerError);
    }
    CHECK_FALSE(head(store));
    Posting posting(store, "mara");
    posting.add(paper_issue("P1", day(2026, 10, 2), 1200));
    const auto receipt = posting.commit();
    CHECK(receipt.posted == 1);
}

TEST_CASE("a store does one posting at a time, and none when opened for reading") {
    const LedgerFolder folder;
    {
        auto store = Store::open_for_writing(folder.file(), IfMissing::create);
        Posting posting(store, "mara");
        CHECK_THROWS_AS(Posting(store, "mara"), LedgerError);
        posting.add(paper_issue("P1", day(2026, 10, 2), 1200));
        posting.commit();
        CHECK_NOTHROW(Posting(store, "mara"));
    }
    auto reader = Store::open_for_reading(folder.file());
    CHECK_THROWS_AS(Posting(reader, "mara"), LedgerError);
    CHECK(find_entry(reader, 1)->draft.ref == "P1");
}

TEST_CASE("a reader sees a posting whole or not at all") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    const auto reader = Store::open_for_reading(folder.file());
    Posting posting(store, "mara");
    for (const auto& draft : DocumentStream(3).take(200)) posting.add(draft);
    CHECK_FALSE(head(reader));
    CHECK(months(reader).empty());
    posting.commit();
    CHECK(head(reader)->entry == 200);
    CHECK(verify(reader).holds());
}

TEST_CASE("a snapshot goes on showing what was there when it was taken") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    static_cast<void>(post(store, DocumentStream(3).take(10), "mara"));
    const auto reader = Store::open_for_reading(folder.file());
    {
        const Snapshot snapshot(reader);
        static_cast<void>(post(store, DocumentStream(4, 2, 100).take(10), "mara"));
        CHECK(head(reader)->entry == 10);
    }
    CHECK(head(reader)->entry == 20);
}

TEST_CASE("what is no document is refused with what is wrong with it") {
    const auto good = paper_issue("P1", day(2026, 10, 2), 1200);
    CHECK(refusal_of(good).empty());
    const auto refusal_after = [&](const auto& spoil) {
        auto draft = good;
        spoil(draft);
        return refusal_of(draft);
    };
    const std::string start = "a ledger in memory: paper P1: ";
    CHECK(refusal_after([](Draft& d) { d.ref.clear(); }) ==
          "a ledger in memory: paper : a document has no kind or no ref");
    CHECK(refusal_after([](Draft& d) { d.kind = "reversal"; }) ==
          "a ledger in memory: reversal P1: no document may be of this kind");
    CHECK(refusal_after([](Draft& d) { d.kind = "close"; }) ==
          "a ledger in memory: close P1: no document may be of this kind");
    CHECK(refusal_after([](Draft& d) { d.date = day(2026, 2, 30); }) ==
          start + "there is no such day; give a day of the years 2000 to 2999");
    CHECK(refusal_after([](Draft& d) { d.date = day(1999, 2, 3); }) ==
          start + "there is no such day; give a day of the years 2000 to 2999");
    CHECK(refusal_after([](Draft& d) { d.shift = "ea\nrly"; }) ==
          start + "a name is no plain text: found U+000A, which cannot be seen; leave it out");
    CHECK(refusal_after([](Draft& d) { d.content = std::string("a\0b", 3); }) ==
          start + "the content is no plain text: found U+0000, which cannot be seen; leave it out");
    CHECK(refusal_after([](Draft& d) { d.note.assign(1, '\xff'); }) ==
          start + "the note is no plain text: found bytes that are not UTF-8; leave it out");
    CHECK(refusal_after([](Draft& d) { d.board = std::string(201, 'b'); }) ==
          start + "a name is too long: found 201 bytes; at most 200 can be stored");
    CHECK(refusal_after([](Draft& d) { d.movements[0].to = "paper-store"; }) ==
          start + "a movement ends where it began: found paper-store at both ends");
    CHECK(refusal_after([](Draft& d) { d.movements[0].from.clear(); }) ==
          start + "a movement has no account at one end");
    CHECK(refusal_after([](Draft& d) { d.movements[0].mass = Grams::of(1'000'000'000'001); }) ==
          start +
              "a mass is out of bounds: found 1000000000001 g; at most 1000000000000 g can be stored, above or below "
              "zero");
    CHECK(refusal_after([](Draft& d) { d.movements[0].money = Money::of_ten_thousandths(-900'000'000'000'001); }) ==
          start +
              "an amount is out of bounds: found -90000000000.0001; at most 90000000000 can be stored, above or below "
              "zero");
    CHECK(refusal_after([](Draft& d) { d.movements.resize(1001, d.movements[0]); }) ==
          start + "has too many lines: found 1001 movements, 0 expected losses; at most 1000 of each can be stored");
    CHECK(refusal_after([](Draft& d) {
              d.count = Count{"", "board", Grams(), std::nullopt};
          }) == start + "a count names no account");
}

TEST_CASE("masses and amounts at their bounds are kept, and so are a thousand movements") {
    auto store = Store::in_memory();
    auto draft = paper_issue("P1", day(2026, 10, 2), 0);
    draft.movements[0].mass = Grams::of(1'000'000'000'000);
    draft.movements[0].money = Money::of_ten_thousandths(-900'000'000'000'000);
    draft.movements.resize(1000, draft.movements[0]);
    draft.note = "tons of ÄÖÜ and 紙\nand a second line";
    CHECK(post(store, std::vector<Draft>{draft}, "mara").receipt.posted == 1);
    CHECK(find_entry(store, 1)->draft.movements.size() == 1000);
    CHECK(find_entry(store, 1)->draft.note == draft.note);
    CHECK(flows(store, month(2026, 10)).at(0).mass == Grams::of(1'000'000'000'000'000));
    CHECK(verify(store).holds());
}

TEST_CASE("a total that leaves the numbers that can be kept refuses the posting") {
    auto store = Store::in_memory();
    auto draft = paper_issue("P1", day(2026, 10, 2), 0);
    draft.movements[0].money = Money::of_ten_thousandths(900'000'000'000'000);
    draft.movements.resize(1000, draft.movements[0]);
    Posting posting(store, "mara");
    const auto add = [&](int number) {
        draft.ref = fmt::format("P{}", number);
        draft.content = draft.ref;
        posting.add(draft);
    };
    for (int number = 1; number <= 10; ++number) add(number);
    CHECK_THROWS_AS(add(11), LedgerError);
    CHECK_FALSE(head(store));
}

TEST_CASE("a clock that was set back never makes an entry older than the one before it") {
    SetClock clock(2'000'000);
    auto store = Store::in_memory(clock);
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P1", day(2026, 10, 2), 1)}, "mara"));
    clock.set(1'000'000);
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P2", day(2026, 10, 2), 1)}, "mara"));
    clock.set(3'000'000);
    static_cast<void>(post(store, std::vector<Draft>{paper_issue("P3", day(2026, 10, 2), 1)}, "mara"));
    CHECK(find_entry(store, 2)->when == find_entry(store, 1)->when);
    CHECK(find_entry(store, 3)->when == clock.now());
    CHECK_FALSE(find_entry(store, 1)->clock);
    CHECK_FALSE(find_entry(store, 3)->clock);
    CHECK(verify(store).holds());
}
