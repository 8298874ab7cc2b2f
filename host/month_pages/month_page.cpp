#include "host/month_pages/month_page.hpp"

#include "host/base/date.hpp"
#include "host/month_pages/documents_page.hpp"
#include "host/month_pages/month_closing.hpp"
#include "host/month_pages/month_flow.hpp"
#include "host/month_pages/month_losses.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/month_pages/month_trend.hpp"
#include "host/month_reports/month_report.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::pages {

namespace {

using answers::MonthReview;

Html state(const MonthReview& review) {
    if (!review.month.seal) return html("<span class=\"state\">open</span>");
    return html("<a class=\"state\" href=\"{}\">closed by {} on {} UTC</a>", entry_address(review.month.seal->entry),
                review.month.seal->who, base::utc_day(review.month.seal->when));
}

Html buttons(const Frame& frame, const MonthReview& review) {
    ledger::EntrySearch all;
    all.month = review.month.account.month;
    Html items = html("<a class=\"button\" href=\"{}\">All rows</a>", entries_address(all));
    const std::string name = answers::month_name(all.month);
    const Address folder("/months");
    items += html(
        "<a class=\"button\" href=\"{}\">Sheet</a><a class=\"button\" href=\"{}\">Workbook</a>"
        "<a class=\"button\" href=\"{}\">CSV</a>",
        folder.at(name + ".html"), folder.at(name + ".xlsx"), folder.at(name + ".csv"));
    if (frame.may(Role::controller)) {
        items += html("<a class=\"button\" href=\"{}\">Post documents</a>", Address::here().to("documents"));
        if (!review.month.seal)
            items += html("<a class=\"button main\" href=\"{}\">Close {}</a>", Address::here().to("closing"),
                          month_words(all.month));
    }
    return html("<div class=\"buttons\">{}</div>", items);
}

Html title(const Frame& frame, const MonthReview& review) {
    const auto month = review.month.account.month;
    Html result;
    if (review.before)
        result += html("<a href=\"{}\" rel=\"prev\">{}</a>", month_address(review.before->month),
                       month_words(review.before->month));
    result += html("<h1>{}</h1>", month_words(month));
    if (review.next)
        result += html("<a href=\"{}\" rel=\"next\">{}</a>", month_address(*review.next), month_words(*review.next));
    result += state(review) + buttons(frame, review);
    return html("<div class=\"month-title\">{}</div>\n", result);
}

Html warnings(const MonthReview& review) {
    Html result;
    for (const auto& model : review.month.losses_quoted_by)
        result += html(
            "<p class=\"warning\">Losses are expected by the formulas of the run, but orders of this month were quoted "
            "by {}: the difference between the two is part of excess.</p>\n",
            model);
    if (review.month.is_worked_out_again)
        result += html(
            "<p class=\"warning\">This month was closed before accounts were kept: it is worked out again by today's "
            "rules.</p>\n");
    return result;
}

Html mills(const MonthReview& review) {
    ledger::EntrySearch tickets;
    tickets.month = review.month.account.month;
    tickets.kind = "ticket";
    const Address down = entries_address(tickets);
    if (review.mills.empty()) return panel("mills", "Mills and tickets", Html(), html("<p>Nothing was sent.</p>\n"));
    std::vector<Money> revenues;
    answers::SaleToMill sum;
    for (const auto& sale : review.mills) {
        sum.tickets += sale.tickets;
        sum.sent += sale.sent;
        sum.paid += sale.paid;
        sum.revenue += sale.revenue;
        revenues.push_back(sale.revenue);
    }
    const auto coins = coins_of_parts(revenues, sum.revenue);
    Html rows;
    for (std::size_t i = 0; i < review.mills.size(); ++i) {
        const auto& sale = review.mills[i];
        rows += html("<tr><th scope=\"row\">{}</th>{}{}{}{}{}{}</tr>\n", walk(down, sale.mill), text_cell(sale.grade),
                     number_cell(std::to_string(sale.tickets)), number_cell(kg_text(sale.sent)),
                     number_cell(kg_text(sale.paid)), number_cell(difference_text(sale.paid - sale.sent)),
                     number_cell(coins[i]));
    }
    rows +=
        html("<tr class=\"total\"><th scope=\"row\">all</th><td></td>{}{}{}{}{}</tr>\n",
             number_cell(std::to_string(sum.tickets)), number_cell(kg_text(sum.sent)), number_cell(kg_text(sum.paid)),
             number_cell(difference_text(sum.paid - sum.sent)), number_cell(coins_text(sum.revenue)));
    const auto head =
        head_row({"Mill", "grade", "tickets", "sent, kg", "paid for, kg", "difference, kg", review.currency}, 2);
    return panel("mills", "Mills and tickets", html("<a class=\"end\" href=\"{}\">the tickets</a>", down),
                 scrolling("Mills", html("<table>{}<tbody>\n{}</tbody></table>\n", head, rows)));
}

Html corrections(const MonthReview& review) {
    if (review.month.corrected_rows.empty()) return {};
    Html rows;
    for (const auto& row : review.month.corrected_rows)
        rows += html("<tr><th scope=\"row\">{}</th>{}{}<td>{}</td></tr>\n",
                     walk(entry_address(row.entry), row.kind + " " + row.ref), text_cell(base::to_string(row.date)),
                     text_cell(row.is_reversal ? "reverses a row of " + base::to_string(row.undone_on) : "a note"),
                     row.note);
    return panel("corrections", "Corrections",
                 html("<span class=\"small quiet\">reversals, and rows with a note</span>"),
                 scrolling("Corrections", html("<table>{}<tbody>\n{}</tbody></table>\n",
                                               head_row({"Row", "date", "what", "reason"}, 4), rows)));
}

// The account itself, as the command line prints it.
Html tables(const plant::Plant& plant, const MonthReview& review) {
    render::Report report = month_reports::month_report(plant, review.month);
    report.heading.reset();
    const PlaceLinks places(&plant);
    return html("<details class=\"panel\" id=\"tables\"><summary>The whole account as tables</summary>{}</details>\n",
                report_html(report, "account", &places));
}

}  // namespace

std::string month_page(const Frame& frame, const plant::Plant& plant, const MonthReview& review) {
    const Html middle = html("<div class=\"pair\">{}{}</div>\n", month_twelve(review), month_by_shift(review));
    const Html ending =
        html("<div class=\"pair\">{}{}</div>\n", documents_panel(frame), month_conditions(frame, review));
    const Html parts = month_figures(review) + month_flow(review) + month_losses(review) + middle +
                       month_by_month(review) + month_year(review) + month_orders(review) + mills(review) +
                       corrections(review) + ending + tables(plant, review);
    return document(with_documents(frame), month_words(review.month.account.month),
                    title(frame, review) + warnings(review) + month_sentence(review) +
                        html("<div class=\"stack\">\n{}</div>\n", parts));
}

std::string month_closing_page(const Frame& frame, const MonthReview& review) {
    const auto month = review.month.account.month;
    const Html head = html("<div class=\"month-title\"><h1>{}</h1>{}</div>\n",
                           walk(month_address(month), month_words(month)), state(review));
    return document(frame, "Closing " + month_words(month), head + month_conditions(frame, review));
}

}  // namespace flutebook::pages
