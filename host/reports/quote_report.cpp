// The heading, and what cannot be made; the ladder stands in quote_ladder, the sections of each sheet in
// quote_sections.
#include "host/reports/quote_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/date.hpp"
#include "host/drawings/blank_drawings.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/not_in_price.hpp"
#include "host/reports/price_rules.hpp"
#include "host/reports/quote_ladder.hpp"
#include "host/reports/quote_sections.hpp"
#include "host/reports/shared_trim.hpp"
#include "host/reports/sheet_context.hpp"
#include "host/reports/strength_report.hpp"

namespace flutebook::reports {

namespace {

using answers::Quote;
using geometry::Refused;
using orders::Request;

constexpr std::size_t most_named = 12;

Facts asked_for(const SheetContext& context) {
    const Request& request = context.request;
    Facts facts = {{"style", {request.style}}};
    if (request.inside) {
        const auto& inside = *request.inside;
        std::vector<double> lengths = {inside.length_mm, inside.width_mm};
        if (inside.height_mm > 0) lengths.push_back(inside.height_mm);
        facts.push_back({"inside", {context.units.lengths(lengths)}});
    }
    if (request.outline)
        facts.push_back({"outside", {context.units.lengths({request.outline->length_mm, request.outline->width_mm})}});
    facts.push_back({"board", {context.plant.boards[request.board].code}});
    if (request.colours > 0) facts.push_back({"colours", {fmt::format("{}", request.colours)}});
    facts.push_back({"margin",
                     {request.margin ? render::brief_number(*request.margin * 100, 4) + " % of the price"
                                     : std::string("by the plant's rules")}});
    const bool is_bought = context.plant.boards[request.board].is_bought();
    facts.push_back({is_bought ? prices_of_bought_label : prices_of_label, {base::to_string(request.date)}});
    facts.push_back({money_in_label, {context.units.currency}});
    return facts;
}

// "C2, roll 1650 mm, 2 up".
std::string asked_way_text(const SheetContext& context, const answers::ForcedWay& way) {
    std::vector<std::string> parts;
    if (way.corrugator) parts.push_back(*way.corrugator);
    if (way.roll_width_mm) parts.push_back("roll " + context.units.length(*way.roll_width_mm));
    if (way.ups) parts.push_back(fmt::format("{} up", *way.ups));
    return fmt::format("{}", fmt::join(parts, ", "));
}

// The sheet of one quote, as a part of the report: `name` stands before its quantity.
void add_sheet(Report& report, const SheetContext& context, const Quote& quote, const std::string& name,
               const std::string& id) {
    const std::string ways =
        quote.candidates == 1
            ? "the only way to make it"
            : fmt::format("the cheapest of {} ways", render::number_text(static_cast<double>(quote.candidates), 0));
    report.sections.push_back({fmt::format("{}{}, {}", name, context.order_text(quote.quantity), ways),
                               {},
                               ReportSection::Kind::part,
                               context.request.number,
                               id});
    for (ReportSection& section : sheet_sections(context, quote)) report.sections.push_back(std::move(section));
}

// What stands behind a line at one quantity; a sheet above it may not be shown.
ReportSection explained(const SheetContext& context, const std::string& figure, const Quote& quote,
                        const std::string& piece) {
    ReportSection section = explain_section(context.units, figure, quote);
    section.title += fmt::format(", {}{}", context.order_text(quote.quantity), piece.empty() ? "" : " of the " + piece);
    return section;
}

// The set's line, which is the sum of its pieces.
ReportSection set_part(const SheetContext& context, const answers::RequestAnswer& answer, std::size_t index) {
    const answers::SetQuote& set = *answer.quantities[index].set;
    ReportTable table{
        "set",
        {name_column("piece"), number_column("to a set"), number_column("pieces"),
         number_column("cost", context.units.currency), number_column("cost of waste"), number_column("recovery")}};
    for (const auto& piece : answer.pieces) {
        const Quote& quote = *piece.quantities[index].quote;
        table.add({piece.name, Number{piece.count, 0},
                   Cell(Number{quote.quantity, 0}, sheet_id(set.quantity, piece.name)), Amount{quote.cost},
                   Amount{quote.waste_cost}, Amount{quote.recovery}});
    }
    table.add(
        RowKind::total,
        {context.order_text(set.quantity), {}, {}, Amount{set.cost}, Amount{set.waste_cost}, Amount{set.recovery}});
    return {context.order_text(set.quantity),
            {table},
            ReportSection::Kind::part,
            context.request.number,
            sheet_id(set.quantity)};
}

void add_set(Report& report, const SheetContext& context, const answers::RequestAnswer& answer,
             const answers::QuoteOptions& asked, const ShownSheets& sheets) {
    const SheetContext of_piece(context.plant, context.request, SheetContext::Counted::pieces);
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        if (!answer.quantities[i].set) continue;
        const bool is_shown = sheets.shows(answer.quantities[i].quantity());
        if (is_shown) report.sections.push_back(set_part(context, answer, i));
        for (const auto& piece : answer.pieces) {
            const Quote& quote = *piece.quantities[i].quote;
            if (is_shown)
                add_sheet(report, of_piece, quote, piece.name + ": ",
                          sheet_id(answer.quantities[i].set->quantity, piece.name));
            if (answers::explains_at(asked, answer.quantities[i].set->quantity))
                report.sections.push_back(explained(of_piece, *asked.explain, quote, piece.name));
        }
    }
}

// Quantities with one list of limits.
struct StoppedQuantities {
    std::vector<double> quantities;
    const std::vector<Refused>* ways;
};

bool are_same(const std::vector<Refused>& left, const std::vector<Refused>& right) {
    return std::equal(left.begin(), left.end(), right.begin(), right.end(), [](const Refused& a, const Refused& b) {
        return a.candidate == b.candidate && a.limit == b.limit;
    });
}

std::vector<StoppedQuantities> stopped(const answers::RequestAnswer& answer) {
    std::vector<StoppedQuantities> result;
    for (const auto& item : answer.quantities) {
        if (!item.unmakeable) continue;
        const auto same = std::find_if(result.begin(), result.end(), [&](const StoppedQuantities& before) {
            return are_same(*before.ways, item.unmakeable->refused);
        });
        if (same == result.end())
            result.push_back({{item.unmakeable->quantity}, &item.unmakeable->refused});
        else
            same->quantities.push_back(item.unmakeable->quantity);
    }
    return result;
}

struct Limit {
    std::string text;
    std::vector<std::string> ways;
};

std::vector<Limit> by_limit(const std::vector<Refused>& ways) {
    std::vector<Limit> result;
    for (const Refused& refused : ways) {
        auto item =
            std::find_if(result.begin(), result.end(), [&](const Limit& limit) { return limit.text == refused.limit; });
        if (item == result.end()) item = result.insert(item, {refused.limit, {}});
        item->ways.push_back(refused.candidate);
    }
    return result;
}

std::string stopped_ways(const Limit& limit) {
    const std::size_t named = std::min(limit.ways.size(), most_named);
    std::string ways = "stops ";
    for (std::size_t i = 0; i < named; ++i) ways += (i == 0 ? "" : "; ") + limit.ways[i];
    if (named < limit.ways.size())
        ways += fmt::format("; and {} more", render::number_text(static_cast<double>(limit.ways.size() - named), 0));
    return ways;
}

ReportSection refused_part(const SheetContext& context, const StoppedQuantities& stopped_quantities) {
    const auto& quantities = stopped_quantities.quantities;
    const std::string title = quantities.size() == 1 ? context.order_text(quantities[0])
                                                     : listed_quantities(quantities) + " " + context.pieces();
    ReportSection part{title + ": no corrugator, roll and route can make this order; limits:"};
    for (const Limit& limit : by_limit(*stopped_quantities.ways)) {
        part.blocks.emplace_back(Note{limit.text, Note::Kind::sentence, 1});
        part.blocks.emplace_back(Note{stopped_ways(limit), Note::Kind::sentence, 3});
    }
    return part;
}

void add_short_answer(Report& report, const SheetContext& context, const answers::RequestAnswer& answer) {
    report.sections.push_back(ladder_section(context, answer));
    if (!answer.drawn.empty())
        report.sections.back().blocks.emplace_back(drawings::blank_drawings(context.units, answer.drawn));
    if (!answer.not_drawn.empty()) report.sections.back().blocks.emplace_back(Note{answer.not_drawn});
    if (const auto rules = price_rule_lines(context, answer); !rules.empty())
        report.sections.push_back(price_rules_section(rules));
    if (ReportSection second = second_currency_section(context, answer); !second.title.empty())
        report.sections.push_back(std::move(second));
    ReportSection measure = measure_section(context, answer);
    if (!measure.title.empty()) report.sections.push_back(std::move(measure));
    if (answer.strength) report.sections.push_back(strength_section(context, *answer.strength));
    if (answer.trim) report.sections.push_back(shared_trim_section(context, answer));
    for (ReportSection& limits : limit_sections(context, answer)) report.sections.push_back(std::move(limits));
    if (const auto missing = missing_texts(context, answer); !missing.empty())
        report.sections.push_back(not_in_price_section(missing));
    if (!answer.warnings.empty()) report.sections.push_back(warnings_section(answer.warnings));
}

}  // namespace

std::vector<ReportSection> limit_sections(const SheetContext& context, const answers::RequestAnswer& answer) {
    std::vector<ReportSection> result;
    for (const StoppedQuantities& item : stopped(answer)) result.push_back(refused_part(context, item));
    return result;
}

ReportHeading request_heading(const plant::Plant& plant, const Request& request) {
    const std::string title = request.customer.empty() ? request.number : request.number + "  " + request.customer;
    return {title, plant.name, asked_for(SheetContext(plant, request))};
}

Report printed_quote_report(const answers::RequestAnswer& answer, const std::string& text) {
    Report report{"quote", answer.request.number, std::nullopt, {{}}};
    if (!answer.not_drawn.empty()) report.sections.back().blocks.emplace_back(Note{answer.not_drawn});
    report.sections.back().blocks.emplace_back(Note{text, Note::Kind::code});
    return report;
}

Report quote_report(const plant::Plant& plant, const answers::RequestAnswer& answer, const answers::QuoteOptions& asked,
                    const ShownSheets& sheets) {
    const bool is_set = !answer.pieces.empty();
    using Counted = SheetContext::Counted;
    const SheetContext context(plant, answer.request, is_set ? Counted::sets : Counted::boxes);
    Report report{"quote", answer.request.number, request_heading(plant, answer.request), {}};
    if (asked.way.is_any()) report.heading->facts.push_back({"way asked for", {asked_way_text(context, asked.way)}});
    if (answer.trim) report.heading->facts.push_back({"trim", {"shared, " + shared_trim_text(answer.trim->policy)}});
    for (auto& fact : offer_facts(answer)) report.heading->facts.push_back(std::move(fact));
    if (answer.model_fault) return report;
    add_short_answer(report, context, answer);
    if (is_set) add_set(report, context, answer, asked, sheets);
    for (const auto& quantity : answer.quantities) {
        if (!quantity.quote) continue;
        if (sheets.shows(quantity.quantity()))
            add_sheet(report, context, *quantity.quote, "", sheet_id(quantity.quote->quantity));
        if (answers::explains_at(asked, quantity.quote->quantity))
            report.sections.push_back(explained(context, *asked.explain, *quantity.quote, ""));
    }
    return report;
}

}  // namespace flutebook::reports
