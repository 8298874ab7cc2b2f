#include "host/reports/month_sections.hpp"

#include <fmt/format.h>

#include "host/month/process_cost.hpp"
#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

std::string tolerance_text(const services::MonthAnswer& answer) {
    const auto allowed = render::percent_text(answer.tolerance, 2);
    return answer.balances() ? "within the " + allowed + " allowed" : "more than the " + allowed + " allowed";
}

// What was lost beyond the expected, at what good product cost.
std::string excess_text(const month::MonthAccount& account, const std::string& currency) {
    const auto cost = month::process_cost(account, month::scrap_price(account));
    if (!cost) return "";
    return render::hanging(
        "  ", fmt::format("Lost beyond the expected, unexplained among it: {} kg. At {} {} for a kg of product "
                          "that bears the expected loss alone, that is worth {} {}.",
                          kg_text(cost->abnormal), render::number_text(cost->cost_per_kg, 4), currency,
                          render::number_text(cost->abnormal_value, 2), currency));
}

}  // namespace

std::string kg_text(Grams mass) {
    return render::number_text(mass.to_kg(), 3);
}

std::string share_text(Grams part, Grams whole) {
    const auto share = month::share_of(part, whole);
    return share ? render::percent_text(*share, 2) : "-";
}

std::string balance_section(const services::MonthAnswer& answer) {
    const auto& item = answer.account;
    render::Table table({render::Align::left, render::Align::right, render::Align::right, render::Align::flexible}, 2);
    const auto add = [&](const std::string& what, Grams mass, const std::string& remark = "") {
        table.add({what, kg_text(mass), share_text(mass, item.issued), remark});
    };
    table.add({"", "kg", "of issued paper"});
    add("paper issued", item.issued);
    add("adhesive", item.adhesive);
    add("stock of machines and floor, opening", item.opening_stock());
    table.stroke({1});
    add("all that was there", item.issued + item.adhesive + item.opening_stock());
    table.add({""});
    add("product", item.product);
    add("losses", item.lost(), "of product: " + share_text(item.lost(), item.product));
    add("unexplained", item.unexplained(), tolerance_text(answer));
    add("stock of machines and floor, closing", item.closing_stock());
    table.stroke({1});
    add("all that it became", item.product + item.lost() + item.unexplained() + item.closing_stock());
    return "Mass balance\n" + table.text();
}

std::string centres_section(const services::MonthAnswer& answer) {
    const auto& floor = answer.account.floor;
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::right, render::Align::right},
                        2);
    table.add({"kg", "opening", "in", "passed on", "lost", "unexplained", "closing"});
    for (const auto& item : answer.account.centres)
        table.add({item.centre, kg_text(item.open), kg_text(item.in), kg_text(item.passed), kg_text(item.lost),
                   kg_text(item.unexplained()), kg_text(item.close)});
    table.add({"floor", kg_text(floor.open), kg_text(floor.made + floor.returned), kg_text(floor.fed),
               kg_text(floor.lost), kg_text(-floor.counted), kg_text(floor.close)});
    return "Quantity centres\n" + table.text();
}

std::string losses_section(const services::MonthAnswer& answer, const std::string& currency) {
    const auto& item = answer.account;
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::right, render::Align::right},
                        2);
    table.add({"", "actual kg", "of issued", "expected kg", "excess kg", "of issued", "cost " + currency});
    for (const auto& cause : item.causes)
        table.add({cause.cause.empty() ? "(no cause)" : cause.cause, kg_text(cause.actual),
                   share_text(cause.actual, item.issued), kg_text(cause.expected), kg_text(cause.excess()),
                   share_text(cause.excess(), item.issued), render::money_text(cause.cost)});
    table.add({"unexplained", "", "", "", "", "", render::money_text(item.unexplained_cost)});
    table.add({"idle", "", "", "", "", "", render::money_text(item.idle_cost)});
    table.stroke({1, 3, 4, 6});
    const Grams excess = item.lost() - item.expected();
    table.add({"all", kg_text(item.lost()), share_text(item.lost(), item.issued), kg_text(item.expected()),
               kg_text(excess), share_text(excess, item.issued), render::money_text(item.waste_cost())});
    return "Losses by cause; shares of issued paper, cost after ISO 14051\n" + table.text() +
           excess_text(item, currency);
}

std::string month_cost_section(const services::MonthAnswer& answer, const std::string& currency) {
    const auto& item = answer.account;
    render::Table table({render::Align::left, render::Align::right}, 2);
    table.add({"", currency});
    table.add({"paper, adhesive and the centres' cost", render::money_text(item.money_in)});
    table.add({"stock of machines and floor, opening", render::money_text(item.opening_cost)});
    table.stroke({1});
    table.add({"all that was spent", render::money_text(item.money_in + item.opening_cost)});
    table.add({""});
    table.add({"product", render::money_text(item.product_cost)});
    table.add({"waste", render::money_text(item.waste_cost())});
    table.add({"stock of machines and floor, closing", render::money_text(item.closing_cost)});
    table.stroke({1});
    table.add({"all that it is in", render::money_text(item.product_cost + item.waste_cost() + item.closing_cost)});
    return "Cost\n" + table.text();
}

}  // namespace flutebook::reports
