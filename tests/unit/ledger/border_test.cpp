// What the ledger itself takes for a name, a note or a reason, whoever calls it.
#include "ledger/writing/draft_check.hpp"

#include <catch2/catch.hpp>
#include <cstdint>
#include <functional>

#include "host/base/characters.hpp"
#include "ledger/proof/verify.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

// The character of this number in UTF-8.
std::string utf8_of(std::uint32_t point) {
    const auto tail = [&](unsigned shift) { return static_cast<char>(0x80U | ((point >> shift) & 0x3FU)); };
    if (point < 0x80) return {static_cast<char>(point)};
    if (point < 0x800) return {static_cast<char>(0xC0U | (point >> 6U)), tail(0)};
    if (point < 0x10000) return {static_cast<char>(0xE0U | (point >> 12U)), tail(6), tail(0)};
    return {static_cast<char>(0xF0U | (point >> 18U)), tail(12), tail(6), tail(0)};
}

std::string line_of_refusal(const std::function<void()>& work) {
    try {
        work();
    } catch (const LedgerError& error) {
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("names, notes and reasons that cannot be seen or are no UTF-8 are refused at the ledger's own border") {
    const auto good = paper_issue("P1", day(2026, 10, 2), 1200);
    const std::vector<std::pair<std::string, std::string>> faults = {{"a\xE2\x80\xAE"
                                                                      "b",
                                                                      "found U+202E, which cannot be seen"},
                                                                     {"a\xC2\x9B"
                                                                      "b",
                                                                      "found U+009B, which cannot be seen"},
                                                                     {"a\xFF"
                                                                      "b",
                                                                      "found bytes that are not UTF-8"}};
    for (const auto& [text, found] : faults) {
        CAPTURE(found);
        using Place = std::function<std::string&(Draft&)>;
        const std::vector<Place> places = {[](Draft& d) -> std::string& { return d.ref; },
                                           [](Draft& d) -> std::string& { return d.content; },
                                           [](Draft& d) -> std::string& { return d.shift; },
                                           [](Draft& d) -> std::string& { return d.centre; },
                                           [](Draft& d) -> std::string& { return d.order; },
                                           [](Draft& d) -> std::string& { return d.board; },
                                           [](Draft& d) -> std::string& { return d.note; },
                                           [](Draft& d) -> std::string& { return d.movements[0].to; },
                                           [](Draft& d) -> std::string& { return d.movements[0].material; },
                                           [](Draft& d) -> std::string& { return d.movements[0].cause; }};
        for (const auto& place : places) {
            auto draft = good;
            place(draft) = text;
            auto store = Store::in_memory();
            CHECK(line_of_refusal([&] { Posting(store, "mara").add(draft); }).find(found) != std::string::npos);
        }
        const auto tells = [&](const std::string& line) { return line.find(found) != std::string::npos; };
        auto store = Store::in_memory();
        static_cast<void>(post(store, std::vector{good}, "mara"));
        const QuoteDraft quote{text, {}};
        CHECK(tells(line_of_refusal([&] { Posting(store, text); })));
        CHECK(tells(line_of_refusal([&] { static_cast<void>(reverse(store, {1, day(2026, 10, 3), text, "mara"})); })));
        CHECK(tells(line_of_refusal([&] {
            static_cast<void>(close_month(store, {month(2026, 10), {}, {}, text, "mara"}));
        })));
        CHECK(tells(line_of_refusal([&] { static_cast<void>(save_quotes(store, {&quote, 1}, "mara")); })));
        CHECK(tells(line_of_refusal([&] { take_order(store, {text, "Q000001", 5, {}}, "mara"); })));
        CHECK(head(store)->entry == 1);
    }
}

TEST_CASE("the ledger and the program's doors take the same characters in a name") {
    std::vector<std::uint32_t> differ;
    for (std::uint32_t point = 0; point < 0x110000; ++point)
        if (const auto text = utf8_of(point); fault_of_name("a name", text).has_value() == base::is_plain_line(text))
            differ.push_back(point);
    CHECK(differ.empty());
}

TEST_CASE("an entry whose names an older version took is reversed, and its month closed") {
    auto store = Store::in_memory();
    auto old = paper_issue("P1", day(2026, 10, 2), 1200);
    old.order = old.movements[0].material =
        "KL\xE2\x80\xAE"
        "135";
    {
        Posting posting(store, "mara");
        static_cast<void>(posting.add(old, DraftSource::books));
        static_cast<void>(posting.commit());
    }
    CHECK(reverse(store, {1, day(2026, 10, 3), "typed twice", "mara"}).number == 2);
    CHECK(close_month(store, {month(2026, 10), {"C1"}, {}, "", "mara"}).entry == 3);
    CHECK(verify(store).holds());
}
