#include "host/month_pages/month_trend.hpp"

#include "host/charts/lines.hpp"
#include "host/month/excess.hpp"
#include "host/month/placed_loss.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::pages {

namespace {

using answers::MonthReview;
using answers::MonthsTogether;
using month::MonthAccount;

std::string causes_words(const MonthAccount& account, bool (*is_meant)(Grams)) {
    std::size_t count = 0;
    std::string only;
    for (const auto& cause : account.causes)
        if (is_meant(cause.excess())) {
            ++count;
            only = cause.cause;
        }
    return count == 1 ? only : std::to_string(count) + " causes";
}

bool is_over(Grams excess) {
    return excess > Grams();
}
bool is_under(Grams excess) {
    return excess < Grams();
}

Html beyond_sentence(const MonthReview& review) {
    const auto& account = review.month.account;
    const auto sides = month::excess_sides(account);
    if (sides.over == Grams()) return html(" Nothing was lost beyond the expected.");
    Html result =
        html(" <b>{}</b> were lost beyond the expected in {}, worth <b>{} {}</b> in cash", mass_words(sides.over),
             causes_words(account, is_over), coins_text(review.beyond_value), review.currency);
    if (sides.under > Grams())
        result += html("; {} less than expected in {}", mass_words(sides.under), causes_words(account, is_under));
    return result + html(".");
}

Html counts_sentence(const MonthReview& review) {
    const auto& account = review.month.account;
    const auto sides = month::unexplained_sides(account);
    Html result;
    if (sides.over > Grams()) result += html(" <b>{}</b> are not explained.", mass_words(sides.over));
    if (sides.under > Grams()) result += html(" Counts found <b>{}</b> more than was booked.", mass_words(sides.under));
    if (result.is_empty()) result = html(" Books and counts agree.");
    return result;
}

Html figure(const char* name, const Address& down, const std::string& value, const std::vector<std::string>& below) {
    Html lines;
    for (const std::string& line : below)
        if (!line.empty()) lines += html("<small>{}</small>", line);
    return html("<div><dt>{}</dt><dd><a href=\"{}\">{}</a>{}</dd></div>\n", name, down, value, lines);
}

// "September 47.48 t", and of the year ago.
template <typename Text>
std::vector<std::string> with_others(const MonthReview& review, std::vector<std::string> lines, Text text) {
    if (review.before) lines.push_back(month_words(review.before->month) + " " + text(*review.before));
    if (review.year_ago) lines.push_back(month_words(review.year_ago->month) + " " + text(*review.year_ago));
    return lines;
}

std::string unexplained_words(const MonthAccount& account) {
    const auto sides = month::unexplained_sides(account);
    std::string words;
    if (sides.over > Grams()) words = mass_words(sides.over) + " missing";
    if (sides.under > Grams()) words += (words.empty() ? "" : ", ") + mass_words(sides.under) + " found";
    return words.empty() ? "nothing" : words;
}

std::string rate_words(const std::optional<double>& rate) {
    return rate ? render::percent_text(*rate, 1) : "-";
}

// Of a tonne of paper issued.
std::string cost_a_tonne(const MonthAccount& account, const std::string& currency) {
    if (account.issued <= Grams()) return "-";
    const double tonnes = account.issued.to_kg() / 1000;
    return render::number_text(account.waste_cost().to_double() / tonnes, 2) + " " + currency + "/t issued";
}

ledger::EntrySearch rows_of_kind(const MonthReview& review, const char* kind) {
    ledger::EntrySearch search;
    search.month = review.month.account.month;
    search.kind = kind;
    return search;
}

std::string target_words(const MonthReview& review) {
    return review.target ? "target " + render::percent_text(*review.target, 2) : std::string();
}

Html loss_figures(const MonthReview& review) {
    const auto& account = review.month.account;
    const Address here = Address::here();
    return figure("Lost", here.to("losses"), tonnes_text(account.lost()),
                  with_others(review,
                              {share_text(account.lost(), account.issued) + " of issued",
                               "expected " + share_text(account.expected(), account.issued), target_words(review)},
                              [](const MonthAccount& other) { return share_text(other.lost(), other.issued); })) +
           figure("Not explained", here.to("tables"), unexplained_words(account),
                  with_others(review,
                              {"net " + share_text(account.unexplained(), account.issued) + " of issued",
                               "allowed " + render::percent_text(review.month.tolerance, 2) + " either way"},
                              unexplained_words));
}

std::string months_words(const MonthsTogether& months) {
    return month_words(months.first) + " to " + month_words(months.last);
}

Html year_row(const MonthReview& review, const MonthsTogether& months) {
    const Html target = review.target ? number_cell(render::percent_text(*review.target, 2)) : Html();
    return html(
        "<tr><th scope=\"row\">{} <small class=\"quiet\">{} months posted</small></th>{}{}{}{}{}{}{}{}{}{}</tr>\n",
        months_words(months), months.months, number_cell(kg_text(months.issued)),
        number_cell(share_text(months.lost, months.issued)), number_cell(share_text(months.expected, months.issued)),
        target, number_cell(kg_text(months.excess.over)), number_cell(kg_text(months.excess.under)),
        number_cell(kg_text(months.unexplained.over)), number_cell(kg_text(months.unexplained.under)),
        number_cell(coins_text(months.waste_cost)), number_cell(coins_text(months.excess_value)));
}

std::optional<double> percent(Grams part, Grams whole) {
    const auto share = month::share_of(part, whole);
    return share ? std::optional(*share * 100) : std::nullopt;
}

charts::LinesPoint point_of(const MonthAccount& account) {
    charts::LinesPoint point;
    point.label = month_words(account.month).substr(0, 3);
    point.mark = {month_words(account.month) + ": lost " + share_text(account.lost(), account.issued) + ", expected " +
                      share_text(account.expected(), account.issued) + " of " + tonnes_text(account.issued) + " issued",
                  month_address(account.month).text()};
    point.actual = percent(account.lost(), account.issued);
    point.expected = percent(account.expected(), account.issued);
    point.quantity = account.issued.to_kg();
    return point;
}

}  // namespace

Html month_sentence(const MonthReview& review) {
    const auto& account = review.month.account;
    if (account.issued == Grams() && account.lost() == Grams())
        return html("<p class=\"lead\">Nothing was issued and nothing was lost in {}.</p>\n",
                    month_words(account.month));
    const Html first = html(
        "Of <b>{}</b> of paper issued, <b>{}</b> became scrap: <b>{}</b>, where the orders made <b>{}</b> unavoidable.",
        tonnes_text(account.issued), tonnes_text(account.lost()), share_text(account.lost(), account.issued),
        share_text(account.expected(), account.issued));
    return html("<p class=\"lead\">{}{}{}</p>\n", first, beyond_sentence(review), counts_sentence(review));
}

Html month_figures(const MonthReview& review) {
    const auto& account = review.month.account;
    const auto issued = [](const MonthAccount& other) { return tonnes_text(other.issued); };
    const auto made = [](const MonthAccount& other) { return tonnes_text(other.product); };
    const auto sent = [](const MonthAccount& other) { return tonnes_text(other.sent); };
    const auto cost = [&](const MonthAccount& other) { return cost_a_tonne(other, review.currency); };
    Html figures =
        figure("Paper issued", entries_address(rows_of_kind(review, "paper")), tonnes_text(account.issued),
               with_others(review, {}, issued)) +
        figure("Boxes and sheets made", Address::here().to("flow"), tonnes_text(account.product),
               with_others(review, {share_text(account.product, account.issued) + " of issued"}, made)) +
        loss_figures(review) +
        figure("Sent to mills", entries_address(rows_of_kind(review, "ticket")), tonnes_text(account.sent),
               with_others(review,
                           {"paid for " + tonnes_text(account.paid) + ": " + coins_text(account.revenue) + " " +
                                review.currency,
                            rate_words(account.recycling_rate()) + " of made; twelve months " +
                                rate_words(review.month.recycling_rate_of_year())},
                           sent)) +
        figure("Cost of waste", Address::here().to("losses"), coins_text(account.waste_cost()) + " " + review.currency,
               with_others(review, {cost_a_tonne(account, review.currency)}, cost));
    return html(
        "<section class=\"panel\" id=\"figures\" aria-label=\"The month in six figures\"><dl "
        "class=\"figures\">\n{}</dl></section>\n",
        figures);
}

Html month_twelve(const MonthReview& review) {
    const auto& account = review.month.account;
    charts::LinesChart chart{"Lost against expected over twelve months, % of issued paper",
                             "% of issued paper",
                             "lost " + share_text(account.lost(), account.issued),
                             "expected " + share_text(account.expected(), account.issued),
                             "issued " + tonnes_text(account.issued),
                             {}};
    for (const auto& item : review.month.trend) chart.points.push_back(point_of(item));
    return panel("trend", "Twelve months", html("<span class=\"small quiet\">lost against expected</span>"),
                 scrolling("Twelve months", Html::rendered(charts::lines_chart(chart))));
}

Html month_year(const MonthReview& review) {
    std::vector<std::string> names = {"", "issued, kg", "lost, of issued", "expected"};
    if (review.target) names.emplace_back("target");
    names.insert(names.end(), {"beyond expected, kg", "below expected, kg", "missing, kg", "found, kg",
                               "cost of waste, " + review.currency, "excess in cash, " + review.currency});
    Html rows = year_row(review, review.to_date);
    if (review.last_year) rows += year_row(review, *review.last_year);
    return panel(
        "year", "The year to date, beside last year",
        html("<span class=\"small quiet\">sums of the months' own figures: nothing is netted between "
             "months</span>"),
        scrolling("The year to date", html("<table>{}<tbody>\n{}</tbody></table>\n", head_row(names, 1), rows)));
}

}  // namespace flutebook::pages
