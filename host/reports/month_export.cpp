#include "host/reports/month_export.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "host/answers/month_json.hpp"
#include "host/base/quoted_text.hpp"
#include "host/render/workbook.hpp"

namespace flutebook::reports {

namespace {

namespace fs = std::filesystem;
using month::share_of;

render::Cell kg(Grams mass) {
    return mass.to_kg();
}
render::Cell share(Grams part, Grams whole) {
    const auto own = share_of(part, whole);
    return own ? render::Cell(*own) : render::Cell();
}
render::Cell money_cell(Money amount) {
    return amount.to_double();
}

render::ExportedTable balance_table(const month::MonthAccount& own, const std::string& currency) {
    render::ExportedTable table{"balance", {"what", "kg", "share of issued paper", currency}, {}};
    const auto add = [&](const char* what, Grams mass, const render::Cell& amount) {
        table.rows.push_back({std::string(what), kg(mass), share(mass, own.issued), amount});
    };
    add("paper issued", own.issued, {});
    add("adhesive", own.adhesive, {});
    table.rows.push_back({std::string("money in"), {}, {}, money_cell(own.money_in)});
    add("opening stock of machines and floor", own.opening_stock(), money_cell(own.opening_cost));
    add("product", own.product, money_cell(own.product_cost));
    add("losses, unexplained and idle cost among their cost", own.lost(), money_cell(own.waste_cost()));
    add("unexplained", own.unexplained(), money_cell(own.unexplained_cost));
    add("closing stock of machines and floor", own.closing_stock(), money_cell(own.closing_cost));
    return table;
}

render::ExportedTable centres_table(const month::MonthAccount& own) {
    render::ExportedTable table{
        "centres", {"centre", "opening kg", "in kg", "passed on kg", "lost kg", "unexplained kg", "closing kg"}, {}};
    for (const auto& centre : own.centres)
        table.rows.push_back({centre.centre, kg(centre.open), kg(centre.in), kg(centre.passed), kg(centre.lost),
                              kg(centre.unexplained()), kg(centre.close)});
    const auto& floor = own.floor;
    table.rows.push_back({std::string("floor"), kg(floor.open), kg(floor.made + floor.returned), kg(floor.fed),
                          kg(floor.lost), kg(-floor.counted), kg(floor.close)});
    return table;
}

render::ExportedTable losses_table(const month::MonthAccount& own, const std::string& currency) {
    render::ExportedTable table{
        "losses", {"cause", "actual kg", "share of issued paper", "expected kg", "excess kg", "cost " + currency}, {}};
    for (const auto& cause : own.causes)
        table.rows.push_back({cause.cause, kg(cause.actual), share(cause.actual, own.issued), kg(cause.expected),
                              kg(cause.excess()), money_cell(cause.cost)});
    table.rows.push_back({std::string("unexplained"), {}, {}, {}, {}, money_cell(own.unexplained_cost)});
    table.rows.push_back({std::string("idle"), {}, {}, {}, {}, money_cell(own.idle_cost)});
    return table;
}

render::ExportedTable scrap_table(const month::MonthAccount& own, const std::string& currency) {
    render::ExportedTable table{
        "scrap", {"stock", "opening kg", "in kg", "out kg", "counts found kg", "closing kg", currency}, {}};
    const auto add = [&](const char* name, const month::ScrapAccount& stock) {
        table.rows.push_back(
            {std::string(name), kg(stock.open), kg(stock.in), kg(stock.out), kg(stock.counted), kg(stock.close)});
    };
    add("loose scrap", own.loose_scrap);
    add("bale yard", own.bale_yard);
    table.rows.push_back({std::string("sent"), {}, {}, kg(own.sent)});
    table.rows.push_back({std::string("paid"), {}, {}, kg(own.paid), {}, {}, money_cell(own.revenue)});
    return table;
}

render::ExportedTable trend_table(const services::MonthAnswer& answer, const std::string& currency) {
    render::ExportedTable table{"twelve months",
                                {"month", "issued kg", "product kg", "lost kg", "expected kg", "unexplained kg",
                                 "waste " + currency, "sent kg", "revenue " + currency},
                                {}};
    for (const auto& own : answer.trend)
        table.rows.push_back({answers::month_name(own.month), kg(own.issued), kg(own.product), kg(own.lost()),
                              kg(own.expected()), kg(own.unexplained()), money_cell(own.waste_cost()), kg(own.sent),
                              money_cell(own.revenue)});
    return table;
}

render::ExportedTable parts_table(const services::MonthAnswer& answer) {
    render::ExportedTable table{
        std::string("by ") + answers::axis_name(*answer.by),
        {answers::axis_name(*answer.by), "issued kg", "sheets kg", "fed kg", "product kg", "lost kg", "expected kg"},
        {}};
    for (const auto& part : answer.parts) {
        table.rows.push_back({part.of, kg(part.issued), kg(part.made), kg(part.fed), kg(part.product), kg(part.lost()),
                              kg(part.expected())});
        for (const auto& cause : part.causes)
            table.rows.push_back({part.of + ": " + cause.cause, {}, {}, {}, {}, kg(cause.actual), kg(cause.expected)});
    }
    return table;
}

std::string write_text(const std::string& file, const std::string& text) {
    std::ofstream out(file, std::ios::binary | std::ios::trunc);
    out << text;
    out.close();
    return out ? "" : std::strerror(errno);
}

bool ends_in(const std::string& file, const std::string& ending) {
    return file.size() > ending.size() && file.compare(file.size() - ending.size(), ending.size(), ending) == 0;
}

}  // namespace

std::vector<render::ExportedTable> month_export(const services::MonthAnswer& answer, const std::string& currency) {
    const auto& own = answer.account;
    std::vector<render::ExportedTable> tables = {balance_table(own, currency), centres_table(own),
                                                 losses_table(own, currency), scrap_table(own, currency),
                                                 trend_table(answer, currency)};
    if (answer.by) tables.push_back(parts_table(answer));
    return tables;
}

bool can_export_to(const std::string& file) {
    return ends_in(file, ".xlsx") || ends_in(file, ".csv");
}

std::string write_export(const std::string& file, const services::MonthAnswer& answer, const std::string& currency) {
    const auto tables = month_export(answer, currency);
    const auto& month = answer.account.month;
    // Under another name until it is whole.
    const std::string unfinished = file + ".part";
    auto failure = ends_in(file, ".csv") ? write_text(unfinished, render::csv_text(answers::month_name(month), tables))
                                         : render::write_workbook(unfinished, tables, static_cast<int>(month.year()));
    std::error_code error;
    if (failure.empty()) {
        fs::rename(unfinished, file, error);
        if (error) failure = error.message();
    }
    if (failure.empty()) return "";
    fs::remove(unfinished, error);
    return base::shown(file) + ": cannot be written: " + failure + "; name another file";
}

}  // namespace flutebook::reports
