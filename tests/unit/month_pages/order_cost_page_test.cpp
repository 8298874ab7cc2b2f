// What an order cost beside its quote, as a page: the picture says what the answer says.
#include <catch2/catch.hpp>

#include "host/month_pages/month_orders.hpp"
#include "tests/support/small_plant.hpp"

using namespace flutebook;

namespace {

Money money(double amount) {
    return Money::of(amount, 1).value();
}

bool holds_text(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// 1000.004 quoted; volume -10.001, yield +20.002, usage 0, price +30.003.
answers::OrderCost made_order() {
    answers::OrderCost order{};
    order.order.number = "4711";
    order.order.customer = "<b>Mill & Sons";
    order.order.quote = "Q000001";
    order.order.quantity = 100;
    order.boxes_made = 99;
    order.currency = "EUR";
    order.days = {std::chrono::year(2026) / 9 / 30, std::chrono::year(2026) / 10 / 1};
    order.cost.quoted = money(1000.004);
    order.cost.standard = money(990.003);
    order.cost.converted = money(1010.005);
    order.cost.used = money(1010.005);
    order.cost.paid = money(1040.008);
    order.saved_cost = order.cost.quoted;
    return order;
}

std::string cost_page_of(const answers::OrderCost& order) {
    pages::Frame frame;
    frame.role = pages::Role::reader;
    return pages::order_cost_page(frame, fixture::small_plant(), order);
}

}  // namespace

TEST_CASE("The steps of the waterfall add up to the difference of its levels as they are shown") {
    const std::string page = cost_page_of(made_order());
    CHECK(holds_text(page, "<title>quoted 1 000.00 EUR</title>"));
    CHECK(holds_text(page, "<title>volume -10.00 EUR</title>"));
    CHECK(holds_text(page, "<title>yield +20.00 EUR</title>"));
    CHECK(holds_text(page, "<title>usage 0.00 EUR</title>"));
    CHECK(holds_text(page, "<title>price +30.01 EUR</title>"));
    CHECK(holds_text(page, "<title>actual 1 040.01 EUR</title>"));
    CHECK(holds_text(page, "<b>40.01 EUR</b> more than"));
}

TEST_CASE("The rows of each month in which an order ran are one step away") {
    const std::string page = cost_page_of(made_order());
    CHECK(holds_text(page, "/entries?month=2026-09&amp;order=4711\">rows of September 2026"));
    CHECK(holds_text(page, "/entries?month=2026-10&amp;order=4711\">rows of October 2026"));
}

TEST_CASE("A customer's name is text on the page of an order's cost") {
    const std::string page = cost_page_of(made_order());
    CHECK_FALSE(holds_text(page, "<b>Mill"));
    CHECK(holds_text(page, "&lt;b&gt;Mill &amp; Sons"));
}

TEST_CASE("An order that cost what was quoted says so") {
    answers::OrderCost order = made_order();
    order.cost.standard = order.cost.converted = order.cost.used = order.cost.paid = order.cost.quoted;
    CHECK(holds_text(cost_page_of(order), "It cost what was quoted"));
}
