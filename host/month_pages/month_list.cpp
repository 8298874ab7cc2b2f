// All months as a table; each row links to its review.
#include "host/month_pages/documents_page.hpp"
#include "host/month_pages/month_page.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

namespace {

Html listed_month(const answers::MonthInList& item) {
    const auto& account = item.account;
    const auto sides = month::excess_sides(account);
    return html("<tr><th scope=\"row\">{}</th>{}{}{}{}{}{}{}{}{}</tr>\n",
                walk(month_address(account.month), month_words(account.month)),
                text_cell(item.is_closed ? "closed" : "open"), number_cell(kg_text(account.issued)),
                number_cell(kg_text(account.product)), number_cell(share_text(account.lost(), account.issued)),
                number_cell(share_text(account.expected(), account.issued)), number_cell(kg_text(sides.over)),
                number_cell(kg_text(sides.under)), number_cell(coins_text(account.waste_cost())),
                number_cell(coins_text(item.excess_value)));
}

}  // namespace

std::string month_list_page(const Frame& frame, const answers::MonthList& list) {
    Html rows;
    for (const auto& item : list.months) rows += listed_month(item);
    const auto head =
        head_row({"Month", "", "issued, kg", "made, kg", "lost, of issued", "expected", "beyond expected, kg",
                  "below expected, kg", "cost of waste, " + list.currency, "excess in cash, " + list.currency},
                 2);
    const Html table =
        list.months.empty()
            ? html("<p>Nothing is posted yet: a month is there with its first production document.</p>\n")
            : scrolling("Months", html("<table>{}<tbody>\n{}</tbody></table>\n", head, rows));
    return document(with_documents(frame), "Months",
                    html("<div class=\"month-title\"><h1>Months</h1></div>\n<div class=\"stack\">{}{}</div>\n",
                         panel("months", "What each month lost", Html(), table), documents_panel(frame)));
}

}  // namespace flutebook::pages
