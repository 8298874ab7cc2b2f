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
    const auto item = share_of(part, whole);
    return item ? render::Cell(*item) : render::Cell();
}
render::Cell money_cell(Money amount) {
    return amount.to_double();
}

render::ExportedTable balance_table(const month::MonthAccount& month_account, const std::string& currency) {
    render::ExportedTable table{"balance", {"what", "kg", "share of issued paper", currency}, {}};
    const auto add = [&](const char* what, Grams mass, const render::Cell& amount) {
        table.rows.push_back({std::string(what), kg(mass), share(mass, month_account.issued), amount});
    };
    add("paper issued", month_account.issued, {});
    add("adhesive", month_account.adhesive, {});
    table.rows.push_back({std::string("money in"), {}, {}, money_cell(month_account.money_in)});
    add("opening stock of machines and floor", month_account.opening_stock(), money_cell(month_account.opening_cost));
    add("product", month_account.product, money_cell(month_account.product_cost));
    add("losses, unexplained and idle cost among their cost", month_account.lost(),
        money_cell(month_account.waste_cost()));
    add("unexplained", month_account.unexplained(), money_cell(month_account.unexplained_cost));
    add("closing stock of machines and floor", month_account.closing_stock(), money_cell(month_account.closing_cost));
    return table;
}

render::ExportedTable centres_table(const month::MonthAccount& month_account) {
    render::ExportedTable table{
        "centres", {"centre", "opening kg", "in kg", "passed on kg", "lost kg", "unexplained kg", "closing kg"}, {}};
    for (const auto& centre : month_account.centres)
        table.rows.push_back({centre.centre, kg(centre.open), kg(centre.in), kg(centre.passed), kg(centre.lost),
                              kg(centre.unexplained()), kg(centre.close)});
    const auto& floor = month_account.floor;
    table.rows.push_back({std::string("floor"), kg(floor.open), kg(floor.made + floor.returned), kg(floor.fed),
                          kg(floor.lost), kg(-floor.counted), kg(floor.close)});
    return table;
}

render::ExportedTable losses_table(const month::MonthAccount& month_account, const std::string& currency) {
    render::ExportedTable table{
        "losses", {"cause", "actual kg", "share of issued paper", "expected kg", "excess kg", "cost " + currency}, {}};
    for (const auto& cause : month_account.causes)
        table.rows.push_back({cause.cause, kg(cause.actual), share(cause.actual, month_account.issued),
                              kg(cause.expected), kg(cause.excess()), money_cell(cause.cost)});
    table.rows.push_back({std::string("unexplained"), {}, {}, {}, {}, money_cell(month_account.unexplained_cost)});
    table.rows.push_back({std::string("idle"), {}, {}, {}, {}, money_cell(month_account.idle_cost)});
    return table;
}

render::ExportedTable scrap_table(const month::MonthAccount& month_account, const std::string& currency) {
    render::ExportedTable table{
        "scrap", {"stock", "opening kg", "in kg", "out kg", "counts found kg", "closing kg", currency}, {}};
    const auto add = [&](const char* name, const month::ScrapAccount& stock) {
        table.rows.push_back(
            {std::string(name), kg(stock.open), kg(stock.in), kg(stock.out), kg(stock.counted), kg(stock.close)});
    };
    add("loose scrap", month_account.loose_scrap);
    add("bale yard", month_account.bale_yard);
    table.rows.push_back({std::string("sent"), {}, {}, kg(month_account.sent)});
    table.rows.push_back(
        {std::string("paid"), {}, {}, kg(month_account.paid), {}, {}, money_cell(month_account.revenue)});
    return table;
}

render::ExportedTable trend_table(const services::MonthAnswer& answer, const std::string& currency) {
    render::ExportedTable table{"twelve months",
                                {"month", "issued kg", "product kg", "lost kg", "expected kg", "unexplained kg",
                                 "waste " + currency, "sent kg", "revenue " + currency},
                                {}};
    for (const auto& item : answer.trend)
        table.rows.push_back({answers::month_name(item.month), kg(item.issued), kg(item.product), kg(item.lost()),
                              kg(item.expected()), kg(item.unexplained()), money_cell(item.waste_cost()), kg(item.sent),
                              money_cell(item.revenue)});
    return table;
}

render::ExportedTable parts_table(const services::MonthAnswer& answer) {
    render::ExportedTable table{
        std::string("by ") + answers::axis_name(*answer.by),
        {answers::axis_name(*answer.by), "issued kg", "sheets kg", "fed kg", "product kg", "lost kg", "expected kg"},
        {}};
    for (const auto& part : answer.parts) {
        table.rows.push_back({part.of, kg(part.issued), kg(part.sheets), kg(part.fed), kg(part.product),
                              kg(part.lost()), kg(part.expected())});
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
    const auto& item = answer.account;
    std::vector<render::ExportedTable> tables = {balance_table(item, currency), centres_table(item),
                                                 losses_table(item, currency), scrap_table(item, currency),
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
