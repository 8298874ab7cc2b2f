#include "host/month_pages/month_orders.hpp"

#include "host/base/date.hpp"
#include "host/charts/waterfall.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/month_reports/order_cost_report.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::pages {

namespace {

using answers::OrderCost;
using charts::WaterfallStep;

Html listed_order(const answers::OrderInList& item) {
    const auto& order = item.order;
    const Html cost = item.is_made ? walk(order_address(order.number), "quoted against actual")
                                   : html("<span class=\"quiet\">not made yet</span>");
    return html("<tr><th scope=\"row\">{}</th>{}{}{}{}{}{}<td class=\"text\">{}</td>{}</tr>\n", order.number,
                text_cell(order.customer), text_cell(order.style), text_cell(order.board),
                number_cell(render::number_text(order.quantity, 0)),
                html("<td class=\"text\">{}</td>", walk(Address("/quotes").at(order.quote), order.quote)),
                text_cell(base::utc_day(item.when)), cost, text_cell(item.who));
}

Html order_pages(const answers::OrderList& list) {
    Html links;
    const auto to = [](std::size_t page) { return Address("/orders").with("page", std::to_string(page)); };
    if (list.page > 1) links += html("<a href=\"{}\" rel=\"prev\">newer</a>", to(list.page - 1));
    if (list.page < list.pages) links += html("<a href=\"{}\" rel=\"next\">older</a>", to(list.page + 1));
    return links.is_empty() ? Html() : html("<nav class=\"pages\" aria-label=\"Pages of orders\">{}</nav>\n", links);
}

WaterfallStep level(const char* name, Money cost, const std::string& currency, const Address& down) {
    return {name,
            coins_text(cost),
            {std::string(name) + " " + coins_text(cost) + " " + currency, down.text()},
            cost.to_double(),
            WaterfallStep::Kind::level};
}

// Between the levels as they are shown.
Money shown_difference(const answers::Stages& cost) {
    return Money::rounded(cost.paid.to_double(), 2).value_or(Money()) -
           Money::rounded(cost.quoted.to_double(), 2).value_or(Money());
}

// The four differences as they are shown come to the difference of the levels as they are shown.
std::vector<WaterfallStep> changes_of(const answers::Stages& cost, const std::string& currency,
                                      const std::vector<Address>& down) {
    const auto differences = answers::variances_of(cost);
    const std::vector<Money> parts = {differences.volume, differences.yield, differences.usage, differences.price};
    const auto texts = coins_of_parts(parts, shown_difference(cost));
    std::vector<WaterfallStep> steps;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        static constexpr const char* names[] = {"volume", "yield", "usage", "price"};
        const std::string figure = (parts[i] > Money() ? "+" : "") + texts[i];
        steps.push_back({names[i],
                         figure,
                         {std::string(names[i]) + " " + figure + " " + currency, down[i].text()},
                         parts[i].to_double(),
                         WaterfallStep::Kind::change});
    }
    return steps;
}

Html fall_of(const answers::Stages& cost, const std::string& currency, const std::string& quote,
             const std::vector<Address>& down) {
    charts::Waterfall fall{"From quoted to actual, " + currency, {}};
    fall.steps.push_back(level("quoted", cost.quoted, currency, Address("/quotes").at(quote)));
    for (auto& step : changes_of(cost, currency, down)) fall.steps.push_back(std::move(step));
    fall.steps.push_back(level("actual", cost.paid, currency, Address::here().to("account")));
    return scrolling("From quoted to actual", Html::rendered(charts::waterfall(fall))) +
           html(
               "<p class=\"note\">Volume: more or fewer made than quoted. Yield: what converters lost and took beyond "
               "the quote. Usage: the same of the corrugator. Price: papers on the days of production. The columns at "
               "both ends are cut off below.</p>\n");
}

Address order_rows(const std::vector<base::Date>& days, const std::string& order, const char* kind) {
    ledger::EntrySearch search;
    search.month = days.front().year() / days.front().month();
    search.order = order;
    if (*kind != '\0') search.kind = kind;
    return entries_address(search);
}

// Each month in which it ran.
Html rows_links(const std::vector<base::Date>& days, const std::string& order) {
    Html links;
    ledger::Month last{};
    for (const auto& day : days) {
        const ledger::Month month = day.year() / day.month();
        if (month == last) continue;
        last = month;
        links += html("<a href=\"{}\">rows of {}</a>", order_rows({day}, order, ""), month_words(month));
    }
    return html("<nav class=\"pages\" aria-label=\"Rows of the order\">{}</nav>\n", links);
}

Html cost_lead(const answers::Stages& cost, const std::string& currency) {
    const Money difference = shown_difference(cost);
    const char* words = difference > Money() ? "more" : "less";
    if (difference == Money()) return html("<p class=\"lead\">It cost what was quoted.</p>\n");
    return html("<p class=\"lead\">It cost <b>{} {}</b>, <b>{} {}</b> {} than the {} {} of the quote.</p>\n",
                coins_text(cost.paid), currency, coins_text(difference > Money() ? difference : -difference), currency,
                words, coins_text(cost.quoted), currency);
}

// The report's heading, its cost in a sentence and the waterfall stand before its sections.
std::string cost_page(const Frame& frame, const std::string& number, render::Report report, const Html& lead,
                      const Html& fall) {
    Html head = html("<h1>Order {}</h1>\n", report.heading->title);
    render::HtmlBlocks facts("order-");
    facts.write_heading_facts(report.heading->facts);
    head += Html::rendered(facts.taken());
    report.heading.reset();
    const PlaceLinks places(frame.open_plant);
    return document(frame, "Order " + number,
                    head + lead +
                        html("<div class=\"stack\">{}<div id=\"account\">{}</div></div>\n", fall,
                             report_html(report, "cost", &places)));
}

}  // namespace

std::string order_list_page(const Frame& frame, const answers::OrderList& list) {
    Html rows;
    for (const auto& item : list.orders) rows += listed_order(item);
    const auto head =
        head_row({"Order", "customer", "style", "board", "quantity", "quote", "taken", "cost", "by"}, 4, 4);
    const Html table = list.orders.empty()
                           ? html("<p>No order was taken yet: a saved quote is taken as an order on its page.</p>\n")
                           : scrolling("Orders", html("<table>{}<tbody>\n{}</tbody></table>\n", head, rows));
    return document(frame, "Orders",
                    html("<h1>Orders</h1>\n{}", panel("orders", "Taken, the newest first",
                                                      html("<span class=\"small quiet\">{} in all</span>", list.all),
                                                      table + order_pages(list))));
}

std::string order_cost_page(const Frame& frame, const plant::Plant& plant, const OrderCost& order) {
    const std::string& number = order.order.number;
    const std::vector<Address> down = {
        Address("/quotes").at(order.order.quote), order_rows(order.days, number, "converter-run"),
        order_rows(order.days, number, "corrugator-run"), order_rows(order.days, number, "corrugator-run")};
    const Html fall =
        panel("fall", "Quoted against actual, " + order.currency, Html(),
              fall_of(order.cost, order.currency, order.order.quote, down) + rows_links(order.days, number));
    return cost_page(frame, number, month_reports::order_cost_report(plant, order),
                     cost_lead(order.cost, order.currency), fall);
}

std::string order_cost_page(const Frame& frame, const plant::Plant& plant, const answers::SetCost& set) {
    const std::vector<Address> down(4, Address::here().to("account"));
    Html rows;
    for (const auto& piece : set.pieces)
        rows += html("<a href=\"{}\">{}</a>", order_address(piece.order.number), piece.order.number);
    const Html fall = panel("fall", "Quoted against actual, " + set.currency, Html(),
                            fall_of(set.cost, set.currency, set.quote, down) +
                                html("<nav class=\"pages\" aria-label=\"Pieces\">{}</nav>\n", rows));
    return cost_page(frame, set.number, month_reports::set_cost_report(plant, set), cost_lead(set.cost, set.currency),
                     fall);
}

}  // namespace flutebook::pages
