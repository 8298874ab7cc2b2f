// The hash chain: the bytes that are hashed, worked out elsewhere, and that no two entries read the same.
#include "ledger/writing/chain.hpp"

#include <catch2/catch.hpp>

#include <functional>
#include <set>

#include "ledger/reading/entries.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "ledger/writing/sealed_content.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

Hash hash_of(const Draft& draft, const std::string& who = "mara", std::int64_t number = 1, std::int64_t when = 5,
             std::int64_t reverses = 0, const Hash& before = Hash{}) {
    ChainText text;
    return entry_hash(text, before, draft,
                      {number, who, std::chrono::sys_seconds(std::chrono::seconds(when)), reverses});
}

}  // namespace

TEST_CASE("SHA-256 gives the digests that its standard publishes") {
    // FIPS 180-4 examples (NIST, "Secure Hash Standard" example values for SHA-256: "abc" and the 448-bit message);
    // values from memory, and computed with a second implementation (Python's hashlib).
    CHECK(to_hex(sha256("abc")) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(to_hex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")) ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(to_hex(sha256("")) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("hexadecimal digits of either case are read, and nothing else") {
    const auto hash = sha256("abc");
    CHECK(from_hex(to_hex(hash)) == hash);
    CHECK(from_hex("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD") == hash);
    CHECK_FALSE(from_hex("ba78"));
    CHECK_FALSE(from_hex(std::string(63, 'a') + "g"));
    CHECK_FALSE(from_bytes("short"));
}

TEST_CASE("a chain has the hashes that a second program works out from the table") {
    // By a script of a dozen lines in another language, from nothing but the table in ledger/chain.hpp.
    const SetClock clock(1'792'000'000);
    auto store = Store::in_memory(clock);
    const std::vector<Draft> drafts = {paper_issue("P1", day(2026, 10, 2), 1200, 800),
                                       corrugator_run("R1", day(2026, 10, 3), "500123"),
                                       floor_count("N1", day(2026, 10, 31), 700)};
    static_cast<void>(post(store, drafts, "mara"));
    static_cast<void>(reverse(store, {1, day(2026, 11, 2), "typed twice", "jonas"}));
    CHECK(find_entry(store, 1)->hash == "4dd79133316538e280e668582539c2bdd9bff5e3fa67f339a94c9c403e69e235");
    CHECK(find_entry(store, 2)->hash == "293804ecdcbed4c6367ba56cd593af6d4a4e3cf288f8cc3b7386935e48882c6d");
    CHECK(find_entry(store, 3)->hash == "59a77e40ccad2bd40832a5fdde5fe3d3f52a9b4c9c6f1f74701a83fa973d6421");
    CHECK(find_entry(store, 4)->hash == "4f50f0b3c89ca20acc7d60618a344e8cc791d23093983dd68ad708f6f676b368");
}

TEST_CASE("an entry of a clock that went back has the hash that a second program works out from the table") {
    // By a second script from the same table. The entry before it is hashed as ever.
    SetClock clock(1'792'000'000);
    auto store = Store::in_memory(clock);
    static_cast<void>(post(store, std::vector{paper_issue("P1", day(2026, 10, 2), 1200, 800)}, "mara"));
    clock.set(1'791'990'000);
    static_cast<void>(post(store, std::vector{paper_issue("P2", day(2026, 10, 2), 5)}, "mara"));
    CHECK(find_entry(store, 1)->hash == "4dd79133316538e280e668582539c2bdd9bff5e3fa67f339a94c9c403e69e235");
    CHECK(find_entry(store, 2)->hash == "c7744f06b363c90b088895e146055f4a2fc16643a65b69433803a855f906ae1c");
}

TEST_CASE("whatever is changed of an entry, its hash is another") {
    auto whole = corrugator_run("R1", day(2026, 10, 3), "500123");
    whole.count = Count{"floor", "board", Grams::of(7), Money::of_ten_thousandths(9)};
    using Change = std::function<void(Draft&)>;
    const std::vector<Change> changes = {
        [](Draft& d) { d.kind += 'x'; },
        [](Draft& d) { d.ref += 'x'; },
        [](Draft& d) { d.content += 'x'; },
        [](Draft& d) { d.date = day(2026, 10, 4); },
        [](Draft& d) { d.shift += 'x'; },
        [](Draft& d) { d.centre += 'x'; },
        [](Draft& d) { d.order += 'x'; },
        [](Draft& d) { d.board += 'x'; },
        [](Draft& d) { d.note += 'x'; },
        [](Draft& d) { d.movements[1].from += 'x'; },
        [](Draft& d) { d.movements[1].to += 'x'; },
        [](Draft& d) { d.movements[1].material += 'x'; },
        [](Draft& d) { d.movements[1].cause += 'x'; },
        [](Draft& d) { d.movements[1].mass += Grams::of(1); },
        [](Draft& d) { d.movements[1].money += Money::of_ten_thousandths(1); },
        [](Draft& d) { std::swap(d.movements[1], d.movements[2]); },
        [](Draft& d) { d.movements.pop_back(); },
        [](Draft& d) { d.expected[0].cause += 'x'; },
        [](Draft& d) { d.expected[0].mass += Grams::of(1); },
        [](Draft& d) { d.expected.pop_back(); },
        [](Draft& d) { d.count.reset(); },
        [](Draft& d) { d.count->account += 'x'; },
        [](Draft& d) { d.count->material += 'x'; },
        [](Draft& d) { d.count->mass += Grams::of(1); },
        [](Draft& d) { d.count->value.reset(); },
        [](Draft& d) { d.count->value = Money::of_ten_thousandths(10); },
        // What stands at the end of one field is not what stands at the beginning of the next.
        [](Draft& d) { d.shift = "lat", d.centre = "eC1"; },
        [](Draft& d) { d.movements[1].from = "C1f", d.movements[1].to = "loor"; },
    };
    std::set<Hash> hashes = {hash_of(whole),
                             hash_of(whole, "jonas"),
                             hash_of(whole, "mara", 2),
                             hash_of(whole, "mara", 1, 6),
                             hash_of(whole, "mara", 1, 5, 1),
                             hash_of(whole, "mara", 1, 5, 0, sha256("another past"))};
    CHECK(hashes.size() == 6);
    for (std::size_t i = 0; i < changes.size(); ++i) {
        INFO("change " << i);
        auto changed = whole;
        changes[i](changed);
        CHECK(hashes.insert(hash_of(changed)).second);
    }
}

TEST_CASE("days and months are written as people read them") {
    CHECK(to_number(day(2026, 10, 5)) == 20261005);
    CHECK(date_of(20261005) == day(2026, 10, 5));
    CHECK(to_number(month(2026, 10)) == 202610);
    CHECK(month_of(202610) == month(2026, 10));
    CHECK(to_text(month(2026, 3)) == "2026-03");
    CHECK(to_text(day(2026, 3, 9)) == "2026-03-09");
}

TEST_CASE("what a closing entry says is read back, and nothing that only looks like it") {
    SealedContent content;
    content.month = month(2026, 10);
    content.totals = sha256("totals");
    content.stocks = sha256("stocks");
    content.inner_accounts = {"C1", "loose-scrap"};
    const auto text = to_text(content);
    const auto read = parse_sealed(text);
    REQUIRE(read);
    CHECK(read->month == content.month);
    CHECK(read->totals == content.totals);
    CHECK(read->stocks == content.stocks);
    CHECK(read->quotes == Hash{});
    CHECK(read->inner_accounts == content.inner_accounts);
    CHECK_FALSE(parse_sealed(text + "outer mill\n"));
    CHECK_FALSE(parse_sealed(text.substr(1)));
    CHECK_FALSE(parse_sealed(text.substr(0, text.size() - 1)));
    CHECK_FALSE(parse_sealed(""));
}
