#include "host/reports/quote_list_report.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"
#include "host/base/inches.hpp"
#include "host/reports/building.hpp"

namespace flutebook::reports {

namespace {

using answers::ListedQuote;
using answers::QuoteMark;

// "400x300x250", "15 1/4x12x10".
std::string size_text(plant::Units units, const std::optional<ListedQuote::Size>& size) {
    if (!size) return "";
    const auto text = [&](double length_mm) {
        return units == plant::Units::us ? base::inches_to_sixteenths(length_mm / base::mm_of_inch)
                                         : fmt::format("{:.6g}", length_mm);
    };
    std::string result = text(size->length_mm) + "x" + text(size->width_mm);
    if (size->height_mm > 0) result += "x" + text(size->height_mm);
    return result;
}

std::string quantities_text(const std::vector<double>& quantities) {
    if (quantities.empty()) return "";
    if (quantities.size() == 1) return fmt::format("{}", quantities.front());
    return fmt::format("{}..{}", quantities.front(), quantities.back());
}

Cell price_cell(const ListedQuote& quote, const std::optional<Money>& price) {
    return price ? Cell(Amount{*price, quote.currency_minor_units}) : Cell("-");
}

std::string revision_text(const ListedQuote& quote) {
    std::string text = fmt::format("revision {} of {}", quote.revision, quote.request);
    if (quote.previous) text += fmt::format(", before it {}", *quote.previous);
    return text;
}

std::string mark_text(const QuoteMark& mark) {
    std::string text = fmt::format("{} {} by {}", mark.state, base::utc_day(mark.when), mark.who);
    if (!mark.why.empty()) text += ": " + mark.why;
    return text;
}

std::vector<Note> notes_of(const ListedQuote& quote) {
    std::vector<Note> notes;
    const auto add = [&](std::string text) { notes.push_back({std::move(text), Note::Kind::sentence, 1}); };
    if (!quote.customer.empty()) add(quote.customer);
    if (quote.revision > 1) add(revision_text(quote));
    if (quote.copied_from) add("copied from " + *quote.copied_from);
    if (!quote.marks.empty()) add(mark_text(quote.marks.back()));
    return notes;
}

// Empty where they differ: then the document tells each.
std::string currency_of_all(const answers::QuoteList& list) {
    std::string currency = list.quotes.empty() ? std::string() : list.quotes.front().currency;
    for (const ListedQuote& quote : list.quotes)
        if (quote.currency != currency) return "";
    return currency;
}

ReportTable quotes_table(plant::Units units, const answers::QuoteList& list) {
    ReportTable table{"quotes",
                      {text_column("quote"), text_column("day"), name_column("request"), text_column("style"),
                       text_column(units == plant::Units::us ? "inside, in" : "inside, mm"), name_column("board"),
                       text_column("quantities"), number_column("first"), number_column("last"), text_column("state")}};
    for (const ListedQuote& quote : list.quotes) {
        table.add({quote.number, base::utc_day(quote.when), quote.request, quote.style, size_text(units, quote.size),
                   quote.board, quantities_text(quote.quantities), price_cell(quote, quote.first_price),
                   price_cell(quote, quote.last_price), quote.state});
        table.rows.back().notes = notes_of(quote);
        table.rows.back().figure = quote.number;
    }
    return table;
}

}  // namespace

Report quote_list_report(plant::Units units, const answers::QuoteList& list) {
    Report report{"quotes", "", std::nullopt, {}};
    if (list.quotes.empty()) {
        report.sections.push_back({"", {Note{"No saved quote matches."}}});
        return report;
    }
    const std::size_t count = list.quotes.size();
    const std::string currency = currency_of_all(list);
    report.sections.push_back(
        {fmt::format("{} saved quote{}, newest first; price per thousand at the first and the last quantity{}", count,
                     count == 1 ? "" : "s", currency.empty() ? "" : ", " + currency),
         {quotes_table(units, list)}});
    if (list.has_more)
        report.sections.push_back({"",
                                   {Note{fmt::format("There are older ones: add --before {}, or a greater --limit.",
                                                     list.quotes.back().number)}}});
    return report;
}

std::optional<Report> quote_history_report(const ListedQuote& quote) {
    Facts facts;
    if (quote.revision > 1) facts.push_back({"revision", {revision_text(quote)}});
    if (quote.copied_from) facts.push_back({"copied from", {*quote.copied_from}});
    for (const QuoteMark& mark : quote.marks) facts.push_back({"marked", {mark_text(mark)}});
    if (facts.empty()) return std::nullopt;
    return Report{"quote", quote.number, std::nullopt, {{fmt::format("{} since it was saved", quote.number), {facts}}}};
}

}  // namespace flutebook::reports
