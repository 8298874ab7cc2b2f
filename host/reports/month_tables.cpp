// The sections below the account itself: scrap, the months before, and the month divided.
#include <fmt/format.h>

#include "host/answers/month_json.hpp"
#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/reports/month_sections.hpp"

namespace flutebook::reports {

namespace {

std::string rate_text(const std::optional<double>& rate) {
    return rate ? render::percent_text(*rate, 2) : "-";
}

void add_stock(render::Table& table, const char* name, const month::ScrapAccount& scrap_account) {
    table.add({name, kg_text(scrap_account.open), kg_text(scrap_account.in), kg_text(scrap_account.out),
               kg_text(scrap_account.counted), kg_text(scrap_account.close)});
}

Grams net_loss(const month::PartFlows& part) {
    return part.lost() - part.expected();
}

}  // namespace

std::string scrap_section(const services::MonthAnswer& answer, const std::string& currency) {
    const auto& item = answer.account;
    render::Table stocks({render::Align::left, render::Align::right, render::Align::right, render::Align::right,
                          render::Align::right, render::Align::right},
                         2);
    stocks.add({"kg", "opening", "in", "out", "counts found", "closing"});
    add_stock(stocks, "loose: made, baled", item.loose_scrap);
    add_stock(stocks, "bale yard: baled, sent", item.bale_yard);
    render::Table sale({render::Align::left, render::Align::right, render::Align::left}, 2);
    sale.add({"sent to mills", kg_text(item.sent), "kg, our weight"});
    sale.add({"paid for", kg_text(item.paid), "kg, the mills' weight after moisture"});
    sale.add({"revenue", render::money_text(item.revenue), currency});
    sale.add({"recycling rate: sent of made", rate_text(item.recycling_rate()),
              "twelve months: " + rate_text(answer.recycling_rate_of_year())});
    return "Scrap, from the machine to the mill\n" + stocks.text() + "\n" + sale.text();
}

std::string trend_section(const services::MonthAnswer& answer, const std::string& currency) {
    render::Table table({render::Align::left, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::right, render::Align::right},
                        2);
    table.add({"month", "issued kg", "lost", "expected", "unexplained", "waste " + currency, "revenue " + currency});
    for (const auto& item : answer.trend)
        table.add({answers::month_name(item.month), kg_text(item.issued), share_text(item.lost(), item.issued),
                   share_text(item.expected(), item.issued), share_text(item.unexplained(), item.issued),
                   render::money_text(item.waste_cost()), render::money_text(item.revenue)});
    return "Twelve months; shares of each month's issued paper\n" + table.text();
}

std::string parts_section(const services::MonthAnswer& answer) {
    if (!answer.by) return "";
    const Grams issued = answer.account.issued;
    render::Table table({render::Align::flexible, render::Align::right, render::Align::right, render::Align::right,
                         render::Align::right, render::Align::right, render::Align::right},
                        2);
    table.add(
        {answers::axis_name(*answer.by), "sheets kg", "fed kg", "product kg", "lost kg", "of issued", "excess kg"});
    for (const auto& part : answer.parts) {
        table.add({part.of.empty() ? "(none named)" : part.of, kg_text(part.sheets), kg_text(part.fed),
                   kg_text(part.product), kg_text(part.lost()), share_text(part.lost(), issued),
                   kg_text(net_loss(part))});
        for (const auto& cause : part.causes)
            table.add({"  " + cause.cause, "", "", "", kg_text(cause.actual), share_text(cause.actual, issued),
                       kg_text(cause.excess())});
    }
    return fmt::format("By {}; shares of the month's issued paper\n", answers::axis_name(*answer.by)) + table.text();
}

}  // namespace flutebook::reports
