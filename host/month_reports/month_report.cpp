// Every share names its base in its column or title: the paper issued in the month, in a balance its own total.
#include "host/month_reports/month_report.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"
#include "host/base/parts.hpp"
#include "host/month/excess.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::month_reports {

using namespace reports;

namespace {

using answers::MonthAnswer;

const char* const opening_stock_row = "stock of machines and floor, opening";
const char* const closing_stock_row = "stock of machines and floor, closing";

Cell rate(const std::optional<double>& value, const std::string& base) {
    return value ? Cell(Percentage{*value, 2, base}) : Cell("-");
}

Note tolerance_note(const MonthAnswer& answer) {
    const auto part = month::share_of(answer.account.unexplained(), answer.account.issued);
    const auto tolerance = render::percent_text(answer.tolerance, 2);
    auto text = part ? fmt::format("Unexplained is {} of paper issued, {} the tolerance of {}.",
                                   render::percent_text(*part, 2), answer.balances() ? "within" : "above", tolerance)
                     : "No paper was issued, so that no mass may stay unexplained.";
    if (!answer.balances() && !answer.seal) text += " The close asks for the reason (--why).";
    return {text, Note::Kind::sentence, 1};
}

// One side of a balance: its items, and their total. The shares are of that total and add up to 100 %.
struct BalanceItem {
    const char* title;
    Grams mass;
};

void add_side(ReportTable& table, const char* total_title, const std::vector<BalanceItem>& items) {
    Grams total;
    for (const auto& item : items) total += item.mass;
    std::vector<double> percents;
    for (const auto& item : items) percents.push_back(month::share_of(item.mass, total).value_or(0) * 100);
    const auto parts = base::parts_of(base::in_units(100, 2), percents, 2);
    const auto cell = [&](double percent) { return total > Grams() ? Cell(Percentage{percent / 100}) : Cell("-"); };
    for (std::size_t i = 0; i < items.size(); ++i)
        table.add({items[i].title, kg(items[i].mass), cell(base::from_units(parts[i], 2))});
    table.add(RowKind::total, {total_title, kg(total), cell(100)});
}

ReportSection balance_section(const MonthAnswer& answer) {
    const auto& account = answer.account;
    ReportTable table{"balance", {name_column(), number_column("", "kg"), number_column("", of_total_label)}};
    add_side(table, "total to account for",
             {{paper_issued_label, account.issued},
              {"adhesive", account.adhesive},
              {opening_stock_row, account.opening_stock()}});
    add_side(table, "total accounted for",
             {{"product", account.product},
              {"losses", account.lost()},
              {"unexplained", account.unexplained()},
              {closing_stock_row, account.closing_stock()}});
    return {"Mass balance; shares of the total, which is the same on both sides", {table, tolerance_note(answer)}};
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

std::string scrap_value_text(const month::ScrapValue& scrap, const std::string& currency) {
    const auto price = render::number_text(scrap.per_kg, 4) + " " + currency + "/kg, ";
    switch (scrap.of) {
        case month::ScrapValue::Of::month:
            return price + "this month's revenue from scrap after its handling";
        case month::ScrapValue::Of::twelve_months:
            return price + "the last twelve months' revenue from scrap after its handling";
        case month::ScrapValue::Of::nothing:
            break;
    }
    return "nothing for scrap: none was sold in the last twelve months";
}

// Of the paper issued, so that as they are shown they come to the share of all losses.
std::vector<Cell> loss_shares(const month::MonthAccount& account) {
    std::vector<double> percents;
    for (const auto& cause : account.causes)
        percents.push_back(month::share_of(cause.actual, account.issued).value_or(0) * 100);
    const auto whole = base::in_units(month::share_of(account.lost(), account.issued).value_or(0) * 100, 2);
    std::vector<Cell> cells;
    for (const auto part : base::parts_of(whole, percents, 2))
        cells.push_back(account.issued > Grams() ? Cell(Percentage{base::from_units(part, 2) / 100}) : Cell("-"));
    return cells;
}

ReportSection losses_section(const MonthAnswer& answer, const std::string& currency) {
    const auto& account = answer.account;
    ReportTable table{"losses",
                      {name_column("cause"), number_column("actual", "kg"), number_column("", "of issued"),
                       number_column("expected", "kg"), number_column("full cost", currency),
                       number_column("excess", "kg"), number_column("cash", currency)}};
    const auto shares = loss_shares(account);
    for (std::size_t i = 0; i < account.causes.size(); ++i) {
        const auto& cause = account.causes[i];
        table.add({cause.cause.empty() ? "(no cause)" : cause.cause, kg(cause.actual), shares[i], kg(cause.expected),
                   Amount{cause.cost}, kg(cause.excess()), Amount{month::excess_value(account, cause, answer.scrap)}});
    }
    table.add(RowKind::total,
              {"total", kg(account.lost()), share(account.lost(), account.issued), kg(account.expected()),
               Amount{account.waste_cost()}, kg(account.lost() - account.expected()),
               Amount{month::excess_value(account, answer.scrap)}});
    const Note note{fmt::format("Full cost is the cost of the actual loss after ISO 14051. Cash is what the excess "
                                "cost in paper, adhesive and energy, less {}.",
                                scrap_value_text(answer.scrap, currency)),
                    Note::Kind::sentence, 1};
    return {"Losses by cause; shares of the paper issued", {table, note}};
}

ReportSection cost_section(const MonthAnswer& answer, const std::string& currency) {
    const auto& account = answer.account;
    ReportTable table{"cost", {name_column(), number_column("", currency)}};
    table.add({"paper, adhesive and cost of the centres", Amount{account.money_in}});
    table.add({opening_stock_row, Amount{account.opening_cost}});
    table.add(RowKind::total, {"total cost", Amount{account.money_in + account.opening_cost}});
    table.add({"product", Amount{account.product_cost}});
    table.add({"losses of all causes", Amount{account.waste_cost()}});
    table.add({"unexplained", Amount{account.unexplained_cost}});
    table.add({"idle: cost of centres without production or losses", Amount{account.idle_cost}});
    table.add({"corrections: rows of earlier months reversed", Amount{account.corrections_cost}});
    table.add({closing_stock_row, Amount{account.closing_cost}});
    table.add(RowKind::total, {"total cost assigned", Amount{account.product_cost + account.waste_cost() +
                                                             account.cost_beside() + account.closing_cost}});
    return {"Cost", {table}};
}

ReportSection scrap_section(const MonthAnswer& answer, const std::string& currency) {
    const auto& account = answer.account;
    ReportTable stocks{
        "scrap",
        {name_column("stock"), number_column("opening", "kg"), number_column("in", "kg"), number_column("out", "kg"),
         number_column("count - book", "kg"), number_column("closing", "kg")}};
    const auto add = [&](const char* name, const month::ScrapAccount& stock) {
        stocks.add({name, kg(stock.open), kg(stock.in), kg(stock.out), kg(stock.counted), kg(stock.close)});
    };
    add("loose scrap: in made, out baled", account.loose_scrap);
    add("bale yard: in baled, out sent", account.bale_yard);
    const auto weight = [](Grams mass) { return Number{mass.to_kg(), 3, Number::Form::fixed, "kg"}; };
    ReportTable sale{"scrap sale", {name_column(), number_column(""), name_column()}};
    sale.add({"sent to mills", weight(account.sent), "our weight"});
    sale.add({"paid for", weight(account.paid), "the mills' weight after moisture"});
    sale.add({"revenue", Amount{account.revenue, 4, currency}});
    sale.add({"recycling rate of the month", rate(account.recycling_rate(), ""), "scrap sent, of scrap made"});
    sale.add(
        {"recycling rate of twelve months", rate(answer.recycling_rate_of_year(), ""), "scrap sent, of scrap made"});
    return {"Scrap, from the machine to the mill", {stocks, sale}};
}

// What a quote with `trim: share` is made of.
ReportSection trim_section(const trim_answers::TrimMonths& trim) {
    ReportTable table{"side trim",
                      {unrepeated(name_column("board")), text_column("months"), number_column("runs"),
                       number_column("orders"), number_column("side trim", "kg"), number_column("board", "kg"),
                       number_column("trim", "of board"), number_column("order changes", "an order")}};
    const auto add = [&](const std::string& board, const std::string& months, const plant::TrimRecord& record) {
        table.add({board, months, Number{static_cast<double>(record.runs), 0},
                   Number{static_cast<double>(record.orders), 0}, kg(record.side_trim), kg(record.board),
                   share(record.side_trim, record.board), Number{record.changes_per_order(), 2}});
    };
    const std::string month = plant::month_text(trim.last);
    const std::string year = plant::month_text(trim.first) + " to " + month;
    add("all boards", month, trim.month);
    add("all boards", year, trim.year);
    for (const auto& board : trim.boards) {
        add(board.board, month, board.month);
        add(board.board, year, board.year);
    }
    return {fmt::format("Trim of the webs; a board by itself from {} runs in twelve months", plant::enough_runs),
            {table}};
}

ReportSection trend_section(const MonthAnswer& answer, const std::string& currency) {
    ReportTable table{
        "twelve months",
        {text_column("month"), number_column("issued", "kg"), number_column("lost", ""), number_column("expected", ""),
         number_column("unexplained", ""), number_column("cost of waste", currency),
         number_column("scrap revenue", currency), file_column("product"), file_column("lost"), file_column("expected"),
         file_column("unexplained"), file_column("sent")}};
    for (const auto& item : answer.trend)
        table.add({answers::month_name(item.month), kg(item.issued), share(item.lost(), item.issued),
                   share(item.expected(), item.issued), share(item.unexplained(), item.issued),
                   Amount{item.waste_cost()}, Amount{item.revenue}, kg(item.product), kg(item.lost()),
                   kg(item.expected()), kg(item.unexplained()), kg(item.sent)});
    return {"Twelve months; shares of the paper issued in each month", {table}};
}

ReportSection parts_section(const MonthAnswer& answer) {
    const std::string axis = answers::axis_name(*answer.by);
    const Grams issued = answer.account.issued;
    ReportTable table{"by " + axis,
                      {name_column(axis), number_column("sheets made", "kg"), number_column("fed", "kg"),
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
    ReportSection section{fmt::format("By {}; shares of the paper issued in the month", axis), {table}};
    if (month::weighed_causes(*answer.by) == month::WeighedCauses::left_out)
        section.blocks.emplace_back(Note{
            fmt::format("Weighed causes, such as roll-ends, are recorded by machine and shift, not by {}: the losses "
                        "here, actual and expected, leave them out.",
                        axis),
            Note::Kind::sentence, 1});
    return section;
}

// The month's rate of waste, by the base that plants compare.
std::string waste_text(const month::MonthAccount& account) {
    const auto part = [&](Grams whole) {
        const auto value = month::share_of(account.lost(), whole);
        return value ? render::percent_text(*value, 2) : std::string("-");
    };
    if (account.issued == Grams()) return "no paper was issued";
    return fmt::format("{} of paper issued, {} of product", part(account.issued), part(account.product));
}

ReportHeading heading(const plant::Plant& plant, const MonthAnswer& answer) {
    ReportHeading result{plant.name,
                         answers::month_name(answer.account.month) + (answer.seal ? ", closed" : ", open"),
                         {{"waste", {waste_text(answer.account)}}}};
    if (!answer.seal) return result;
    result.facts.push_back({"closed by",
                            {fmt::format("{} on {} UTC, entry {}", answer.seal->who, base::utc_day(answer.seal->when),
                                         answer.seal->entry)}});
    if (!answer.seal->note.empty()) result.facts.push_back({"reason", {answer.seal->note}});
    result.facts.push_back({"head", {answer.seal->head}});
    if (answer.is_worked_out_again)
        result.facts.push_back(
            {"account", {"worked out again by today's rules, since the month was closed before accounts were kept"}});
    return result;
}

// What was undone, and rows that say why they are late or odd.
ReportSection corrections_section(const MonthAnswer& answer) {
    ReportTable table{
        "corrections",
        {text_column("date"), text_column("document"), text_column("reverses a row of"), sentence_column("reason")}};
    for (const auto& row : answer.corrected_rows)
        table.add({row.date, row.kind + " " + row.ref, row.is_reversal ? Cell(row.undone_on) : Cell(), row.note});
    return {"Corrections: reversals, and rows with a note", {table}};
}

ReportSection quoted_otherwise_section(const MonthAnswer& answer) {
    const std::string models = fmt::format("{}", fmt::join(answer.losses_quoted_by, " and "));
    return {{}, {Note{quoted_otherwise_text(models), Note::Kind::warning}}};
}

ReportSection closing_section(const MonthAnswer& answer) {
    ReportSection section{"What the close of this month waits for", {}};
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
    if (!answer.losses_quoted_by.empty()) report.sections.push_back(quoted_otherwise_section(answer));
    if (!answer.close_waits_for.empty()) report.sections.push_back(closing_section(answer));
    for (const auto& section : {balance_section(answer), centres_section(answer), losses_section(answer, currency),
                                cost_section(answer, currency), scrap_section(answer, currency)})
        report.sections.push_back(section);
    if (answer.by) report.sections.push_back(parts_section(answer));
    if (!answer.corrected_rows.empty()) report.sections.push_back(corrections_section(answer));
    if (answer.trim.year.runs > 0) report.sections.push_back(trim_section(answer.trim));
    report.sections.push_back(trend_section(answer, currency));
    return report;
}

}  // namespace flutebook::month_reports
