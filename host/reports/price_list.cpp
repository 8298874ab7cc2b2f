#include "host/reports/price_list.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/not_in_price.hpp"
#include "host/reports/price_rules.hpp"
#include "host/reports/quote_ladder.hpp"

namespace flutebook::reports {

namespace {

constexpr std::size_t most_limits = 3;  // of one quantity
constexpr std::size_t most_named_requests = 12;

ReportTable empty_list() {
    ReportTable table{"prices", {unrepeated(name_column("request")), number_column("quantity")}};
    for (TableColumn& column : ladder_columns()) table.columns.push_back(std::move(column));
    table.columns.pop_back();  // each line stays one line
    return table;
}

// The first few by name.
std::string listed_requests(const std::vector<std::string>& requests) {
    const std::size_t named = std::min(requests.size(), most_named_requests);
    std::string result;
    for (std::size_t i = 0; i < named; ++i) result += (i == 0 ? "" : ", ") + requests[i];
    if (named < requests.size()) result += fmt::format(" and {} more", requests.size() - named);
    return result;
}

}  // namespace

PriceList::PriceList(const plant::Plant& plant) : plant_(plant), table_(empty_list()) {}

void PriceList::add(const answers::RequestAnswer& answer) {
    using Counted = SheetContext::Counted;
    const SheetContext context(plant_, answer.request, answer.pieces.empty() ? Counted::boxes : Counted::sets);
    has_choices_ = has_choices_ || answer.quantities.size() > 1;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        const auto row = ladder_row(context, answer, i);
        if (!row) {
            table_.add(RowKind::group,
                       {fmt::format("{}, {}: {}", answer.request.number,
                                    context.order_text(answer.quantities[i].quantity()), cannot_be_made_label)});
            add_limits(answer, *answer.quantities[i].unmakeable);
            continue;
        }
        std::vector<Cell> cells = {answer.request.number, Number{row->quantity, 0}};
        for (Cell& cell : ladder_cells(*row, plant_.currency_minor_units)) cells.push_back(std::move(cell));
        cells.pop_back();
        table_.add(std::move(cells));
        ++lines_;
        order_value_ += row->order_value;
        cost_ += row->cost;
        loss_kg_ += row->loss_kg;
        issued_kg_ += row->issued_kg;
    }
    for (const std::string& line : price_rule_lines(context, answer))
        rules_.push_back(fmt::format("{} at {}", answer.request.number, line));
    add_missing(context, answer);
    warnings_.insert(warnings_.end(), answer.warnings.begin(), answer.warnings.end());
}

// A limit that stops several ways is told once.
void PriceList::add_limits(const answers::RequestAnswer& answer, const answers::Unmakeable& unmakeable) {
    std::vector<std::string> texts;
    for (const geometry::Refused& way : unmakeable.refused)
        if (std::find(texts.begin(), texts.end(), way.limit) == texts.end()) texts.push_back(way.limit);
    const std::size_t named = std::min(texts.size(), most_limits);
    std::string more;
    if (named < texts.size()) more = fmt::format("; and {} more", texts.size() - named);
    texts.resize(named);
    limits_.push_back(fmt::format("{} at {}: {}{}", answer.request.number, render::number_text(unmakeable.quantity, 0),
                                  fmt::join(texts, "; "), more));
}

// What several requests lack is told once, with their numbers.
void PriceList::add_missing(const SheetContext& context, const answers::RequestAnswer& answer) {
    for (std::string& text : missing_texts(context, answer)) {
        const auto same =
            std::find_if(missing_.begin(), missing_.end(), [&](const auto& entry) { return entry.first == text; });
        if (same == missing_.end())
            missing_.push_back({std::move(text), {answer.request.number}});
        else
            same->second.push_back(answer.request.number);
    }
}

// Quantities of one request are choices, whose sum is no order's.
void PriceList::add_total(ReportTable& table) const {
    if (has_choices_ || lines_ < 2) return;
    const int minor_units = plant_.currency_minor_units;
    const Money profit = order_value_ - cost_;
    const double share = order_value_ == Money() ? 0 : profit.to_double() / order_value_.to_double();
    table.add(RowKind::total, {lines_ == table.rows.size() ? "all" : "all that can be made",
                               {},
                               {},
                               Amount{order_value_, minor_units},
                               Amount{cost_, minor_units},
                               Amount{profit, minor_units},
                               Percentage{share, 1},
                               Percentage{issued_kg_ > 0 ? loss_kg_ / issued_kg_ : 0, 1}});
}

Report PriceList::report() const {
    ReportTable table = table_;
    add_total(table);
    Report result{"quote", "prices", std::nullopt, {{fmt::format("Prices, {}", plant_.currency), {table}}}};
    if (!limits_.empty()) {
        ReportSection section{"No corrugator, roll and route can make these; limits:"};
        for (const std::string& text : limits_) section.blocks.emplace_back(Note{text, Note::Kind::sentence, 1});
        result.sections.push_back(std::move(section));
    }
    if (!rules_.empty()) result.sections.push_back(price_rules_section(rules_));
    std::vector<std::string> missing;
    for (const auto& [text, requests] : missing_)
        missing.push_back(fmt::format("{}: {}", listed_requests(requests), text));
    if (!missing.empty()) {
        result.sections.push_back(not_in_price_section(missing));
        result.sections.back().title = "Not in these prices";
    }
    if (!warnings_.empty()) result.sections.push_back(warnings_section(warnings_));
    return result;
}

}  // namespace flutebook::reports
