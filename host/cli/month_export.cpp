#include "host/cli/month_export.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "host/catalogue/shown.hpp"
#include "host/cli/month_json.hpp"
#include "host/cli/workbook.hpp"

namespace flutebook::cli {

namespace {

namespace fs = std::filesystem;
using review::share_of;

Cell kg(Grams mass) {
    return mass.to_kg();
}
Cell share(Grams part, Grams whole) {
    const auto own = share_of(part, whole);
    return own ? Cell(*own) : Cell();
}
Cell money(Money amount) {
    return amount.to_double();
}

ExportedTable balance_table(const review::MonthAccount& own, const std::string& currency) {
    ExportedTable table{"balance", {"what", "kg", "share of issued paper", currency}, {}};
    const auto add = [&](const char* what, Grams mass, const Cell& amount) {
        table.rows.push_back({std::string(what), kg(mass), share(mass, own.issued), amount});
    };
    add("paper issued", own.issued, {});
    add("adhesive", own.adhesive, {});
    table.rows.push_back({std::string("money in"), {}, {}, money(own.money_in)});
    add("opening stock of machines and floor", own.opening_stock(), money(own.opening_cost));
    add("product", own.product, money(own.product_cost));
    add("losses, unexplained and idle cost among their cost", own.lost(), money(own.waste_cost()));
    add("unexplained", own.unexplained(), money(own.unexplained_cost));
    add("closing stock of machines and floor", own.closing_stock(), money(own.closing_cost));
    return table;
}

ExportedTable centres_table(const review::MonthAccount& own) {
    ExportedTable table{
        "centres", {"centre", "opening kg", "in kg", "passed on kg", "lost kg", "unexplained kg", "closing kg"}, {}};
    for (const auto& centre : own.centres)
        table.rows.push_back({centre.centre, kg(centre.open), kg(centre.in), kg(centre.passed), kg(centre.lost),
                              kg(centre.unexplained()), kg(centre.close)});
    const auto& floor = own.floor;
    table.rows.push_back({std::string("floor"), kg(floor.open), kg(floor.made + floor.returned), kg(floor.fed),
                          kg(floor.lost), kg(-floor.counted), kg(floor.close)});
    return table;
}

ExportedTable losses_table(const review::MonthAccount& own, const std::string& currency) {
    ExportedTable table{
        "losses", {"cause", "actual kg", "share of issued paper", "expected kg", "excess kg", "cost " + currency}, {}};
    for (const auto& cause : own.causes)
        table.rows.push_back({cause.cause, kg(cause.actual), share(cause.actual, own.issued), kg(cause.expected),
                              kg(cause.excess()), money(cause.cost)});
    table.rows.push_back({std::string("unexplained"), {}, {}, {}, {}, money(own.unexplained_cost)});
    table.rows.push_back({std::string("idle"), {}, {}, {}, {}, money(own.idle_cost)});
    return table;
}

ExportedTable scrap_table(const review::MonthAccount& own, const std::string& currency) {
    ExportedTable table{
        "scrap", {"stock", "opening kg", "in kg", "out kg", "counts found kg", "closing kg", currency}, {}};
    const auto add = [&](const char* name, const review::ScrapAccount& stock) {
        table.rows.push_back(
            {std::string(name), kg(stock.open), kg(stock.in), kg(stock.out), kg(stock.counted), kg(stock.close)});
    };
    add("loose scrap", own.loose_scrap);
    add("bale yard", own.bale_yard);
    table.rows.push_back({std::string("sent"), {}, {}, kg(own.sent)});
    table.rows.push_back({std::string("paid"), {}, {}, kg(own.paid), {}, {}, money(own.revenue)});
    return table;
}

ExportedTable trend_table(const desk::MonthAnswer& answer, const std::string& currency) {
    ExportedTable table{"twelve months",
                        {"month", "issued kg", "product kg", "lost kg", "expected kg", "unexplained kg",
                         "waste " + currency, "sent kg", "revenue " + currency},
                        {}};
    for (const auto& own : answer.trend)
        table.rows.push_back({month_name(own.month), kg(own.issued), kg(own.product), kg(own.lost()),
                              kg(own.expected()), kg(own.unexplained()), money(own.waste_cost()), kg(own.sent),
                              money(own.revenue)});
    return table;
}

ExportedTable parts_table(const desk::MonthAnswer& answer) {
    ExportedTable table{
        std::string("by ") + axis_name(*answer.by),
        {axis_name(*answer.by), "issued kg", "sheets kg", "fed kg", "product kg", "lost kg", "expected kg"},
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

std::vector<ExportedTable> month_export(const desk::MonthAnswer& answer, const std::string& currency) {
    const auto& own = answer.account;
    std::vector<ExportedTable> tables = {balance_table(own, currency), centres_table(own), losses_table(own, currency),
                                         scrap_table(own, currency), trend_table(answer, currency)};
    if (answer.by) tables.push_back(parts_table(answer));
    return tables;
}

bool can_export_to(const std::string& file) {
    return ends_in(file, ".xlsx") || ends_in(file, ".csv");
}

std::string write_export(const std::string& file, const desk::MonthAnswer& answer, const std::string& currency) {
    const auto tables = month_export(answer, currency);
    const auto& month = answer.account.month;
    // Under another name until it is whole.
    const std::string unfinished = file + ".part";
    auto failure = ends_in(file, ".csv") ? write_text(unfinished, csv_text(month_name(month), tables))
                                         : write_workbook(unfinished, tables, static_cast<int>(month.year()));
    std::error_code error;
    if (failure.empty()) {
        fs::rename(unfinished, file, error);
        if (error) failure = error.message();
    }
    if (failure.empty()) return "";
    fs::remove(unfinished, error);
    return catalogue::shown(file) + ": cannot be written: " + failure + "; name another file";
}

}  // namespace flutebook::cli
