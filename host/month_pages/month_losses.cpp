#include "host/month_pages/month_losses.hpp"

#include <algorithm>

#include "host/charts/ranked_bars.hpp"
#include "host/month/excess.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::pages {

namespace {

using answers::LossOfPart;
using month::CauseAccount;

const char* const no_cause = "(no cause)";

// A cause with its figures as they come to their totals.
struct RankedCause {
    CauseAccount account;
    std::string share, cost, value;
};

// The greatest excess first.
std::vector<RankedCause> ranked(const answers::MonthReview& review) {
    const auto& account = review.month.account;
    std::vector<Grams> masses;
    std::vector<Money> costs, values;
    for (const auto& cause : account.causes) {
        masses.push_back(cause.actual);
        costs.push_back(cause.cost);
        values.push_back(month::excess_value(account, cause, review.month.scrap));
    }
    const auto shares = shares_of_parts(masses, account.lost(), account.issued);
    const auto coins = coins_of_parts(costs, account.waste_cost());
    const auto cash = coins_of_parts(values, month::excess_value(account, review.month.scrap));
    std::vector<RankedCause> causes;
    for (std::size_t i = 0; i < account.causes.size(); ++i)
        causes.push_back({account.causes[i], shares[i], coins[i], cash[i]});
    std::stable_sort(causes.begin(), causes.end(), [](const RankedCause& left, const RankedCause& right) {
        return left.account.excess() > right.account.excess();
    });
    return causes;
}

std::vector<std::string> loss_bars(ledger::Month month, const std::vector<RankedCause>& causes) {
    std::vector<charts::RankedBar> bars;
    for (const auto& [cause, share, cost, value] : causes)
        bars.push_back({{cause.cause + ": " + kg_text(cause.actual) + " kg, expected " + kg_text(cause.expected),
                         cause_address(month, cause.cause).text()},
                        cause.actual.to_kg(),
                        cause.expected.to_kg(),
                        name_or(cause.cause, no_cause)});
    return charts::ranked_bars(bars, "loss");
}

Html loss_rows(ledger::Month month, const std::vector<RankedCause>& causes) {
    const auto bars = loss_bars(month, causes);
    Html rows;
    for (std::size_t i = 0; i < causes.size(); ++i) {
        const auto& [cause, share, cost, value] = causes[i];
        const Address down = cause_address(month, cause.cause);
        rows += html(
            "<tr><th scope=\"row\">{}</th>{}<td class=\"chart-cell\">{}</td>{}<td class=\"num quiet\">{}</td>"
            "{}{}{}</tr>\n",
            walk(down, name_or(cause.cause, no_cause)), difference_cell(cause.excess(), down), Html::rendered(bars[i]),
            number_cell(kg_text(cause.actual)), kg_text(cause.expected), number_cell(share), number_cell(cost),
            number_cell(value));
    }
    return rows;
}

Html loss_total(const answers::MonthReview& review) {
    const auto& account = review.month.account;
    return html(
        "<tr class=\"total\"><th scope=\"row\">Lost</th><td class=\"num\">{}</td><td></td><td class=\"num\">{}</td>"
        "<td class=\"num\">{}</td><td class=\"num\">{}</td><td class=\"num\">{}</td><td class=\"num\">{}</td></tr>\n",
        difference_text(account.lost() - account.expected()), kg_text(account.lost()), kg_text(account.expected()),
        share_text(account.lost(), account.issued), coins_text(account.waste_cost()),
        coins_text(month::excess_value(account, review.month.scrap)));
}

// Stands beside the cost of waste, in no total of it.
Html beside(const month::MonthAccount& account) {
    const auto row = [](const char* name, const std::string& kg, Money cost) {
        return html(
            "<tr><th scope=\"row\">{}</th><td></td><td></td><td class=\"num\">{}</td><td></td><td></td>"
            "<td class=\"num\">{}</td><td></td></tr>\n",
            name, kg, coins_text(cost));
    };
    return html(
               "<tr class=\"group\"><th scope=\"rowgroup\">Beside it</th><td></td><td></td><td></td><td></td><td></td>"
               "<td></td><td></td></tr>\n") +
           row("not explained, net of what was found", kg_text(account.unexplained()), account.unexplained_cost) +
           row("idle: centres without production or losses", "", account.idle_cost) +
           row("corrections of earlier months", "", account.corrections_cost);
}

std::string value_note(const answers::MonthReview& review) {
    const std::string currency = review.currency;
    const auto& scrap = review.month.scrap;
    const std::string what =
        "Full cost is that of the actual loss after ISO 14051. Cash is what the excess cost in "
        "paper, adhesive and energy, less ";
    const std::string price = render::number_text(scrap.per_kg, 4) + " " + currency + " a kg, what scrap brought ";
    switch (scrap.of) {
        case month::ScrapValue::Of::month:
            return what + price + "this month after its handling.";
        case month::ScrapValue::Of::twelve_months:
            return what + price + "in the last twelve months after its handling.";
        case month::ScrapValue::Of::nothing:
            break;
    }
    return what + "nothing for scrap: none was sold in the last twelve months.";
}

// The cells of a machine, and the sum of their parts.
Html part_cells(const std::vector<LossOfPart>& parts, const std::vector<Address>& down) {
    Html cells;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const bool is_empty = parts[i].actual == Grams() && parts[i].expected == Grams();
        cells += is_empty ? html("<td class=\"num quiet\">-</td>") : difference_cell(parts[i].excess(), down[i]);
    }
    return cells;
}

ledger::EntrySearch rows_at(ledger::Month month, const std::string& machine) {
    ledger::EntrySearch search;
    search.month = month;
    search.centre = machine;
    return search;
}

Html shift_row(const answers::MonthReview& review, const answers::LossOfMachine& machine) {
    std::vector<Address> down;
    Grams sum;
    Money value;
    for (const auto& part : machine.shifts) {
        auto search = rows_at(review.month.account.month, machine.machine);
        search.shift = part.part;
        down.push_back(entries_address(search));
        sum += part.excess();
        value += part.excess_value;
    }
    return html("<tr><th scope=\"row\">{}</th>{}{}<td class=\"num\">{}</td></tr>\n",
                walk(entries_address(rows_at(review.month.account.month, machine.machine)), machine.machine),
                part_cells(machine.shifts, down), number_cell(difference_text(sum)), coins_difference(value));
}

Html shift_totals(const answers::MonthReview& review) {
    Html cells;
    Grams whole;
    for (std::size_t i = 0; i < review.shifts.size(); ++i) {
        Grams sum;
        for (const auto& machine : review.machines) sum += machine.shifts[i].excess();
        cells += number_cell(difference_text(sum));
        whole += sum;
    }
    return html("<tr class=\"total\"><th scope=\"row\">all</th>{}{}<td></td></tr>\n", cells,
                number_cell(difference_text(whole)));
}

Html month_cells(const answers::LossOfMachine& machine, const std::vector<month::MonthAccount>& trend) {
    std::vector<Address> down;
    for (const auto& account : trend) down.push_back(entries_address(rows_at(account.month, machine.machine)));
    return part_cells(machine.months, down);
}

std::vector<std::string> order_bars(const std::vector<LossOfPart>& orders, const std::string& currency) {
    std::vector<charts::RankedBar> bars;
    for (const auto& order : orders)
        bars.push_back({{order.part + ": " + coins_difference(order.excess_value) + " " + currency,
                         order_address(order.part).text()},
                        order.excess_value.to_double(),
                        std::nullopt,
                        ""});
    return charts::ranked_bars(bars, "order");
}

}  // namespace

Html month_losses(const answers::MonthReview& review) {
    const auto causes = ranked(review);
    if (causes.empty()) return panel("losses", "Losses", Html(), html("<p>Nothing was lost in this month.</p>\n"));
    const Html table =
        html("<table class=\"bars losses\">{}<tbody>\n{}{}{}</tbody></table>\n",
             head_row({"Cause", "excess, kg", "actual, the mark is what was expected", "actual, kg", "expected, kg",
                       "of issued", "full cost, " + review.currency, "excess in cash, " + review.currency},
                      1),
             loss_rows(review.month.account.month, causes), loss_total(review), beside(review.month.account));
    return panel("losses", "Losses, by what they were beyond the expected",
                 html("<span class=\"small quiet\">shares of the paper issued</span>"),
                 scrolling("Losses by cause", table) + html("<p class=\"note\">{}</p>\n", value_note(review)));
}

Html month_by_shift(const answers::MonthReview& review) {
    if (review.machines.empty()) return {};
    std::vector<std::string> names = {"excess, kg"};
    for (const auto& shift : review.shifts) names.push_back(name_or(shift, "no shift"));
    names.insert(names.end(), {"all", "cash, " + review.currency});
    Html rows;
    for (const auto& machine : review.machines) rows += shift_row(review, machine);
    const Html table = html("<table>{}<tbody>\n{}{}</tbody></table>\n", head_row(names, 1), rows, shift_totals(review));
    return panel("shifts", "By machine and shift", html("<span class=\"small quiet\">+ is more than expected</span>"),
                 scrolling("Excess by machine and shift", table));
}

Html month_by_month(const answers::MonthReview& review) {
    if (review.machines.empty()) return {};
    std::vector<std::string> names = {"excess, kg"};
    for (const auto& account : review.month.trend) names.push_back(answers::month_name(account.month));
    Html rows;
    for (const auto& machine : review.machines)
        rows +=
            html("<tr><th scope=\"row\">{}</th>{}</tr>\n", machine.machine, month_cells(machine, review.month.trend));
    const Html table = html("<table>{}<tbody>\n{}</tbody></table>\n", head_row(names, 1), rows);
    return panel("machines", "By machine and month", html("<span class=\"small quiet\">+ is more than expected</span>"),
                 scrolling("Excess by machine and month", table));
}

Html month_orders(const answers::MonthReview& review) {
    if (review.unranked_movements > 0)
        return panel("orders", "Orders by overspend", Html(),
                     html("<p>The month has {} movements: ranking its orders reads them all. {}</p>\n",
                          render::number_text(static_cast<double>(review.unranked_movements), 0),
                          html("<a href=\"{}\">Rank them</a>",
                               month_address(review.month.account.month).with("orders", "ranked").to("orders"))));
    if (review.orders.empty()) return {};
    const auto bars = order_bars(review.orders, review.currency);
    Html rows;
    for (std::size_t i = 0; i < review.orders.size(); ++i) {
        const auto& order = review.orders[i];
        auto search = rows_at(review.month.account.month, {});
        search.centre.reset();
        search.order = order.part;
        rows += html(
            "<tr><th scope=\"row\">{}</th><td class=\"num\">{}</td><td class=\"chart-cell\">{}</td>{}<td "
            "class=\"num\">{}</td><td class=\"num quiet\">{}</td></tr>\n",
            walk(order_address(order.part), order.part), coins_difference(order.excess_value), Html::rendered(bars[i]),
            difference_cell(order.excess(), entries_address(search)), kg_text(order.actual), kg_text(order.expected));
    }
    const Html table =
        html("<table class=\"bars ranked\">{}<tbody>\n{}</tbody></table>\n",
             head_row({"Order", "excess in cash, " + review.currency, "", "excess, kg", "lost, kg", "expected, kg"}, 1),
             rows);
    return panel("orders", "Orders by overspend",
                 html("<span class=\"small quiet\">what their excess cost in this month; the order has its whole "
                      "cost</span>"),
                 scrolling("Orders by overspend", table) +
                     html("<p class=\"note\">Weighed causes, such as roll-ends, are recorded by machine and shift, not "
                          "by order: actual and expected leave them out.</p>\n"));
}

}  // namespace flutebook::pages
