// Every share names its base in its column: the issued paper of the month, unless it says otherwise.
#include "host/reports/month_report.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"

#include <fmt/format.h>

#include "host/answers/month_answer.hpp"
#include "host/base/date.hpp"
#include "host/month/costs.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::reports {

namespace {

using answers::MonthAnswer;

const char* const issued_base = "of issued paper";
const char* const opening_stock_row = "stock of machines and floor, opening";
const char* const closing_stock_row = "stock of machines and floor, closing";

Cell rate(const std::optional<double>& value, const std::string& base) {
    return value ? Cell(Percentage{*value, 2, base}) : Cell("-");
}

std::string tolerance_text(const MonthAnswer& answer) {
    const auto allowed = render::percent_text(answer.tolerance, 2);
    return answer.balances() ? "within the " + allowed + " allowed" : "more than the " + allowed + " allowed";
}

ReportSection balance_section(const MonthAnswer& answer) {
    const auto& account = answer.account;
    ReportTable table{"balance",
                      {name_column(), number_column("", "kg"), number_column("", issued_base), name_column()}};
    const auto add = [&](RowKind kind, const char* title, Grams mass, const std::string& remark = "") {
        table.add(kind, {title, kg(mass), share(mass, account.issued), remark});
    };
    const auto lost_of_product = month::share_of(account.lost(), account.product);
    add(RowKind::item, paper_issued_label, account.issued);
    add(RowKind::item, "adhesive", account.adhesive);
    add(RowKind::item, opening_stock_row, account.opening_stock());
    add(RowKind::total, "total to account for", account.issued + account.adhesive + account.opening_stock());
    add(RowKind::item, "product", account.product);
    add(RowKind::item, "losses", account.lost(),
        "of product: " + (lost_of_product ? render::percent_text(*lost_of_product, 2) : "-"));
    add(RowKind::item, "unexplained", account.unexplained(), tolerance_text(answer));
    add(RowKind::item, closing_stock_row, account.closing_stock());
    add(RowKind::total, "total accounted for",
        account.product + account.lost() + account.unexplained() + account.closing_stock());
    return {"Mass balance", {table}};
}

ReportSection centres_section(const MonthAnswer& answer) {
    const auto& floor = answer.account.floor;
    ReportTable table{"centres",
                      {name_column("centre"), number_column("opening", "kg"), number_column("in", "kg"),
                       number_column("passed on", "kg"), number_column("lost", "kg"),
                       number_column("unexplained", "kg"), number_column("closing", "kg")}};
    for (const auto& item : answer.account.centres)
        table.add({item.centre, kg(item.open), kg(item.in), kg(item.passed), kg(item.lost), kg(item.unexplained()),
                   kg(item.close)});
    table.add({"floor", kg(floor.open), kg(floor.made + floor.returned), kg(floor.fed), kg(floor.lost),
               kg(-floor.counted), kg(floor.close)});
    return {"Quantity centres", {table}};
}

// A column of the export that does not fit on the page.
TableColumn file_column(const std::string& title) {
    TableColumn result = number_column(title, "kg");
    result.shown = TableColumn::Shown::files;
    return result;
}

// The loss above the expected one, valued at the cost of good product.
std::vector<render::Block> excess_notes(const month::MonthAccount& account, const std::string& currency) {
    const auto cost = month::process_cost(account, month::scrap_price(account));
    if (!cost) return {};
    return {Note{fmt::format("Excess loss, including unexplained: {} kg. At {} {} for a kg of product that bears the "
                             "expected loss alone, it is worth {} {}.",
                             render::whole_text(kg(cost->abnormal)), render::number_text(cost->cost_per_kg, 4),
                             currency, render::number_text(cost->abnormal_value, 2), currency),
                 Note::Kind::sentence, 1}};
}

ReportSection losses_section(const MonthAnswer& answer, const std::string& currency) {
    const auto& account = answer.account;
    ReportTable table{"losses",
                      {name_column("cause"), number_column("actual", "kg"), number_column("", "of issued"),
                       number_column("expected", "kg"), number_column("excess", "kg"),
                       number_column("excess", "of issued"), number_column("cost", currency)}};
    for (const auto& cause : account.causes)
        table.add({cause.cause.empty() ? "(no cause)" : cause.cause, kg(cause.actual),
                   share(cause.actual, account.issued), kg(cause.expected), kg(cause.excess()),
                   share(cause.excess(), account.issued), Amount{cause.cost}});
    table.add({"unexplained", {}, {}, {}, {}, {}, Amount{account.unexplained_cost}});
    table.add({"idle", {}, {}, {}, {}, {}, Amount{account.idle_cost}});
    const Grams excess = account.lost() - account.expected();
    table.add(RowKind::total,
              {"total", kg(account.lost()), share(account.lost(), account.issued), kg(account.expected()), kg(excess),
               share(excess, account.issued), Amount{account.waste_cost()}});
    ReportSection section{"Losses by cause; shares of issued paper, cost after ISO 14051", {table}};
    for (auto& note : excess_notes(account, currency)) section.blocks.push_back(std::move(note));
    return section;
}

ReportSection cost_section(const MonthAnswer& answer, const std::string& currency) {
    const auto& account = answer.account;
    ReportTable table{"cost", {name_column(), number_column("", currency)}};
    table.add({"paper, adhesive and the centres' cost", Amount{account.money_in}});
    table.add({opening_stock_row, Amount{account.opening_cost}});
    table.add(RowKind::total, {"total cost", Amount{account.money_in + account.opening_cost}});
    table.add({"product", Amount{account.product_cost}});
    table.add({"waste", Amount{account.waste_cost()}});
    table.add({closing_stock_row, Amount{account.closing_cost}});
    table.add(RowKind::total,
              {"total cost assigned", Amount{account.product_cost + account.waste_cost() + account.closing_cost}});
    return {"Cost", {table}};
}

ReportSection scrap_section(const MonthAnswer& answer, const std::string& currency) {
    const auto& account = answer.account;
    ReportTable stocks{
        "scrap",
        {name_column("stock"), number_column("opening", "kg"), number_column("in", "kg"), number_column("out", "kg"),
         number_column("counts found", "kg"), number_column("closing", "kg")}};
    const auto add = [&](const char* name, const month::ScrapAccount& stock) {
        stocks.add({name, kg(stock.open), kg(stock.in), kg(stock.out), kg(stock.counted), kg(stock.close)});
    };
    add("loose: made, baled", account.loose_scrap);
    add("bale yard: baled, sent", account.bale_yard);
    const auto weight = [](Grams mass) { return Number{mass.to_kg(), 3, Number::Form::fixed, "kg"}; };
    ReportTable sale{"scrap sale", {name_column(), number_column(""), name_column()}};
    sale.add({"sent to mills", weight(account.sent), "our weight"});
    sale.add({"paid for", weight(account.paid), "the mills' weight after moisture"});
    sale.add({"revenue", Amount{account.revenue, 4, currency}});
    sale.add({"recycling rate of the month", rate(account.recycling_rate(), ""), "sent of made"});
    sale.add({"recycling rate of twelve months", rate(answer.recycling_rate_of_year(), ""), "sent of made"});
    return {"Scrap, from the machine to the mill", {stocks, sale}};
}

ReportSection trend_section(const MonthAnswer& answer, const std::string& currency) {
    ReportTable table{"twelve months",
                      {text_column("month"), number_column("issued", "kg"), number_column("lost", ""),
                       number_column("expected", ""), number_column("unexplained", ""),
                       number_column("waste", currency), number_column("revenue", currency), file_column("product"),
                       file_column("lost"), file_column("expected"), file_column("unexplained"), file_column("sent")}};
    for (const auto& item : answer.trend)
        table.add({answers::month_name(item.month), kg(item.issued), share(item.lost(), item.issued),
                   share(item.expected(), item.issued), share(item.unexplained(), item.issued),
                   Amount{item.waste_cost()}, Amount{item.revenue}, kg(item.product), kg(item.lost()),
                   kg(item.expected()), kg(item.unexplained()), kg(item.sent)});
    return {"Twelve months; shares of each month's issued paper", {table}};
}

ReportSection parts_section(const MonthAnswer& answer) {
    const std::string axis = answers::axis_name(*answer.by);
    const Grams issued = answer.account.issued;
    ReportTable table{"by " + axis,
                      {name_column(axis), number_column("sheets", "kg"), number_column("fed", "kg"),
                       number_column("product", "kg"), number_column("lost", "kg"), number_column("", "of issued"),
                       number_column("excess", "kg"), file_column("issued"), file_column("expected")}};
    for (const auto& part : answer.parts) {
        table.add({part.of.empty() ? "(none named)" : part.of, kg(part.sheets), kg(part.fed), kg(part.product),
                   kg(part.lost()), share(part.lost(), issued), kg(part.lost() - part.expected()), kg(part.issued),
                   kg(part.expected())});
        for (const auto& cause : part.causes)
            table.add({cause.cause,
                       {},
                       {},
                       {},
                       kg(cause.actual),
                       share(cause.actual, issued),
                       kg(cause.excess()),
                       {},
                       kg(cause.expected)},
                      1);
    }
    return {fmt::format("By {}; shares of the month's issued paper", axis), {table}};
}

ReportHeading heading(const plant::Plant& plant, const MonthAnswer& answer) {
    ReportHeading result{
        plant.name, answers::month_name(answer.account.month) + (answer.seal ? ", closed" : ", open"), {}};
    if (!answer.seal) return result;
    result.facts = {{"closed by",
                     {fmt::format("{} on {} UTC, entry {}", answer.seal->who, base::utc_day(answer.seal->when),
                                  answer.seal->entry)}}};
    if (!answer.seal->note.empty()) result.facts.push_back({"because", {answer.seal->note}});
    result.facts.push_back({"head", {answer.seal->head}});
    return result;
}

ReportSection closing_section(const MonthAnswer& answer) {
    ReportSection section{"Before it can be closed", {}};
    for (const auto& line : answer.close_waits_for) section.blocks.emplace_back(Note{line, Note::Kind::item});
    return section;
}

}  // namespace

Number kg(Grams mass) {
    return {mass.to_kg(), 3};
}

Cell share(Grams part, Grams whole) {
    const auto value = month::share_of(part, whole);
    return value ? Cell(Percentage{*value}) : Cell("-");
}

Report month_report(const plant::Plant& plant, const MonthAnswer& answer) {
    const auto& currency = plant.currency;
    Report report{"month", answers::month_name(answer.account.month), heading(plant, answer), {}};
    if (!answer.close_waits_for.empty()) report.sections.push_back(closing_section(answer));
    for (const auto& section : {balance_section(answer), centres_section(answer), losses_section(answer, currency),
                                cost_section(answer, currency), scrap_section(answer, currency)})
        report.sections.push_back(section);
    if (answer.by) report.sections.push_back(parts_section(answer));
    report.sections.push_back(trend_section(answer, currency));
    return report;
}

}  // namespace flutebook::reports
