#include "host/cli/month_sections.hpp"

#include <fmt/format.h>

#include "host/cli/number_text.hpp"
#include "host/cli/table.hpp"
#include "host/cli/text.hpp"
#include "host/review/month/process_cost.hpp"

namespace flutebook::cli {

namespace {

std::string tolerance_text(const desk::MonthAnswer& answer) {
    const auto allowed = percent_text(answer.tolerance, 2);
    return answer.balances() ? "within the " + allowed + " allowed" : "more than the " + allowed + " allowed";
}

// What was lost beyond the expected, at what good product cost.
std::string excess_text(const review::MonthAccount& account, const std::string& currency) {
    const auto cost = review::process_cost(account, review::scrap_price(account));
    if (!cost) return "";
    return hanging("  ",
                   fmt::format("Lost beyond the expected, unexplained among it: {} kg. At {} {} for a kg of product "
                               "that bears the expected loss alone, that is worth {} {}.",
                               kg_text(cost->abnormal), number_text(cost->cost_per_kg, 4), currency,
                               number_text(cost->abnormal_value, 2), currency));
}

}  // namespace

std::string kg_text(Grams mass) {
    return number_text(mass.to_kg(), 3);
}

std::string share_text(Grams part, Grams whole) {
    const auto share = review::share_of(part, whole);
    return share ? percent_text(*share, 2) : "-";
}

std::string balance_section(const desk::MonthAnswer& answer) {
    const auto& own = answer.account;
    Table table({Align::left, Align::right, Align::right, Align::flexible}, 2);
    const auto add = [&](const std::string& what, Grams mass, const std::string& remark = "") {
        table.add({what, kg_text(mass), share_text(mass, own.issued), remark});
    };
    table.add({"", "kg", "of issued paper"});
    add("paper issued", own.issued);
    add("adhesive", own.adhesive);
    add("stock of machines and floor, opening", own.opening_stock());
    table.stroke({1});
    add("all that was there", own.issued + own.adhesive + own.opening_stock());
    table.add({""});
    add("product", own.product);
    add("losses", own.lost(), "of product: " + share_text(own.lost(), own.product));
    add("unexplained", own.unexplained(), tolerance_text(answer));
    add("stock of machines and floor, closing", own.closing_stock());
    table.stroke({1});
    add("all that it became", own.product + own.lost() + own.unexplained() + own.closing_stock());
    return "Mass balance\n" + table.text();
}

std::string centres_section(const desk::MonthAnswer& answer) {
    const auto& floor = answer.account.floor;
    Table table({Align::flexible, Align::right, Align::right, Align::right, Align::right, Align::right, Align::right},
                2);
    table.add({"kg", "opening", "in", "passed on", "lost", "unexplained", "closing"});
    for (const auto& own : answer.account.centres)
        table.add({own.centre, kg_text(own.open), kg_text(own.in), kg_text(own.passed), kg_text(own.lost),
                   kg_text(own.unexplained()), kg_text(own.close)});
    table.add({"floor", kg_text(floor.open), kg_text(floor.made + floor.returned), kg_text(floor.fed),
               kg_text(floor.lost), kg_text(-floor.counted), kg_text(floor.close)});
    return "Quantity centres\n" + table.text();
}

std::string losses_section(const desk::MonthAnswer& answer, const std::string& currency) {
    const auto& own = answer.account;
    Table table({Align::flexible, Align::right, Align::right, Align::right, Align::right, Align::right, Align::right},
                2);
    table.add({"", "actual kg", "of issued", "expected kg", "excess kg", "of issued", "cost " + currency});
    for (const auto& cause : own.causes)
        table.add({cause.cause.empty() ? "(no cause)" : cause.cause, kg_text(cause.actual),
                   share_text(cause.actual, own.issued), kg_text(cause.expected), kg_text(cause.excess()),
                   share_text(cause.excess(), own.issued), money_text(cause.cost)});
    table.add({"unexplained", "", "", "", "", "", money_text(own.unexplained_cost)});
    table.add({"idle", "", "", "", "", "", money_text(own.idle_cost)});
    table.stroke({1, 3, 4, 6});
    const Grams excess = own.lost() - own.expected();
    table.add({"all", kg_text(own.lost()), share_text(own.lost(), own.issued), kg_text(own.expected()), kg_text(excess),
               share_text(excess, own.issued), money_text(own.waste_cost())});
    return "Losses by cause; shares of issued paper, cost after ISO 14051\n" + table.text() +
           excess_text(own, currency);
}

std::string month_cost_section(const desk::MonthAnswer& answer, const std::string& currency) {
    const auto& own = answer.account;
    Table table({Align::left, Align::right}, 2);
    table.add({"", currency});
    table.add({"paper, adhesive and the centres' cost", money_text(own.money_in)});
    table.add({"stock of machines and floor, opening", money_text(own.opening_cost)});
    table.stroke({1});
    table.add({"all that was spent", money_text(own.money_in + own.opening_cost)});
    table.add({""});
    table.add({"product", money_text(own.product_cost)});
    table.add({"waste", money_text(own.waste_cost())});
    table.add({"stock of machines and floor, closing", money_text(own.closing_cost)});
    table.stroke({1});
    table.add({"all that it is in", money_text(own.product_cost + own.waste_cost() + own.closing_cost)});
    return "Cost\n" + table.text();
}

}  // namespace flutebook::cli
