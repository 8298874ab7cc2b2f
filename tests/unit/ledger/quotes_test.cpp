// Saved quotes and the orders taken from them.
#include "ledger/reading/quotes.hpp"

#include <catch2/catch.hpp>

#include "ledger/proof/verify.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

QuoteDraft quote_of(const std::string& request) {
    return {request,
            {{"request.yaml", "request: " + request + "\n"},
             {"plant/papers.yaml", "papers: {}\n"},
             {"plugins", std::string("run 1.0.0\0", 10)},
             {"empty", ""}}};
}

template <typename Act>
std::string refusal_in_memory(const Act& act) {
    try {
        act();
    } catch (const LedgerError& error) {
        CHECK(error.kind() == LedgerError::Kind::refused);
        return std::string(error.what()).substr(std::string("a ledger in memory: ").size());
    }
    return "";
}

}  // namespace

TEST_CASE("a saved quote is shown as it was, byte by byte") {
    const SetClock clock;
    auto store = Store::in_memory(clock);
    const std::vector<QuoteDraft> drafts = {quote_of("R-1001"), quote_of("R-1002")};
    CHECK(save_quotes(store, drafts, "mara") == std::vector<std::string>{"Q000001", "Q000002"});
    CHECK(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "jonas") ==
          std::vector<std::string>{"Q000003"});
    const auto quote = find_quote(store, "Q000002");
    REQUIRE(quote);
    CHECK(quote->number == "Q000002");
    CHECK(quote->request == "R-1002");
    CHECK(quote->who == "mara");
    CHECK(quote->when == clock.now());
    REQUIRE(quote->parts.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(quote->parts[i].name == drafts[1].parts[i].name);
        CHECK(quote->parts[i].content == drafts[1].parts[i].content);
    }
    CHECK(quote_numbers(store) == std::vector<std::string>{"Q000001", "Q000002", "Q000003"});
    CHECK(verify(store).holds());
}

TEST_CASE("a quote's number is written in one way only") {
    auto store = Store::in_memory();
    static_cast<void>(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "mara"));
    for (const auto* number :
         {"Q000002", "Q1", "q000001", "Q0000001", "Q00000x", "000001", "", "Q00000000000000000001"})
        CHECK_FALSE(find_quote(store, number));
}

TEST_CASE("what many quotes have in common is stored once") {
    const LedgerFolder folder;
    auto store = Store::open_for_writing(folder.file(), IfMissing::create);
    for (int i = 0; i < 5; ++i)
        static_cast<void>(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "mara"));
    CHECK(run_behind(folder.file(), "SELECT count(*) FROM content") == std::vector<std::string>{"4"});
    CHECK(run_behind(folder.file(), "SELECT count(*) FROM quote_part") == std::vector<std::string>{"20"});
}

TEST_CASE("an order is taken from a saved quote under the plant's own number") {
    auto store = Store::in_memory();
    static_cast<void>(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "mara"));
    take_order(store, {"500123", "Q000001", 5000, {{"layout.json", "{\"outs\": 2}"}}}, "jonas");
    take_order(store, {"500124", "Q000001", 1000, {}}, "jonas");
    const auto order = find_order(store, "500123");
    REQUIRE(order);
    CHECK(order->order.number == "500123");
    CHECK(order->order.quote == "Q000001");
    CHECK(order->order.quantity == 5000);
    CHECK(order->who == "jonas");
    REQUIRE(order->order.parts.size() == 1);
    CHECK(order->order.parts[0].content == "{\"outs\": 2}");
    CHECK(order_numbers(store) == std::vector<std::string>{"500123", "500124"});
    CHECK_FALSE(find_order(store, "500125"));
    CHECK(verify(store).holds());
}

TEST_CASE("the orders under a number are those that begin with it and a stroke, in the order they were taken") {
    auto store = Store::in_memory();
    static_cast<void>(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "mara"));
    for (const auto* number : {"26/tray", "26", "260", "26/lid", "26-1/lid", "2/lid"})
        take_order(store, {number, "Q000001", 1000, {}}, "jonas");
    CHECK(order_numbers_under(store, "26") == std::vector<std::string>{"26/tray", "26/lid"});
    CHECK(order_numbers_under(store, "27").empty());
}

TEST_CASE("an order without a quote, of nothing, or under a number that is taken is refused") {
    auto store = Store::in_memory();
    static_cast<void>(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "mara"));
    take_order(store, {"500123", "Q000001", 5000, {}}, "mara");
    const auto take = [&](const OrderDraft& order) {
        return refusal_in_memory([&] { take_order(store, order, "mara"); });
    };
    CHECK(take({"500123", "Q000001", 1, {}}) == "order 500123 was taken before; give another number");
    CHECK(take({"500124", "Q000002", 1, {}}) == "there is no saved quote `Q000002`; save the quote first");
    CHECK(take({"500124", "R-1001", 1, {}}) == "there is no saved quote `R-1001`; save the quote first");
    CHECK(take({"500124", "Q000001", 0, {}}) == "order 500124 is of 0 pieces; an order is of one or more");
    CHECK(take({"", "Q000001", 1, {}}) == "an order has no number; give it the plant's own");
    CHECK(take({"500124", "Q000001", 1, {{"a", ""}, {"a", ""}}}) == "order 500124 has two parts `a`");
    CHECK(take({"500124", "Q000001", 1, {{"", ""}}}) == "order 500124 has a part without a name");
    CHECK(order_numbers(store).size() == 1);
}

TEST_CASE("where one quote of several cannot be saved, none is") {
    auto store = Store::in_memory();
    const std::vector<QuoteDraft> drafts = {quote_of("R-1001"), {"R-1002", {{"a", "1"}, {"a", "2"}}}};
    CHECK(refusal_in_memory([&] { static_cast<void>(save_quotes(store, drafts, "mara")); }) ==
          "quote of request R-1002 has two parts `a`");
    CHECK(quote_numbers(store).empty());
    CHECK(save_quotes(store, std::vector<QuoteDraft>{quote_of("R-1001")}, "mara")[0] == "Q000001");
}
