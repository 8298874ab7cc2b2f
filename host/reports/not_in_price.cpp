#include "host/reports/not_in_price.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::reports {

namespace {

using answers::NotInPrice;
using answers::RequestAnswer;

const std::optional<std::vector<NotInPrice>>& missing_at(const RequestAnswer::Quantity& quantity) {
    return quantity.quote ? quantity.quote->not_in_price : quantity.set->not_in_price;
}

std::string invoiced_text(const SheetContext& context, Money amount) {
    const int minor_units = context.plant.currency_minor_units;
    const Money shown = Money::rounded(amount.to_double(), minor_units).value_or(amount);
    return fmt::format("{} {} invoiced apart", render::coin_text(shown, minor_units), context.units.currency);
}

std::string printed_text(double colours) {
    return colours == 1 ? "1 colour is printed" : fmt::format("{:.0f} colours are printed", colours);
}

}  // namespace

std::string missing_text(const SheetContext& context, const NotInPrice& item) {
    std::vector<std::string> parts;
    if (item.setting) parts.push_back(fmt::format("`{}` not given", *item.setting));
    if (item.colours > 0) parts.push_back(printed_text(item.colours));
    if (item.amount) parts.push_back(invoiced_text(context, *item.amount));
    const std::string said = fmt::format("{}: {}", item.line, fmt::join(parts, "; "));
    return item.meaning.empty() ? said : fmt::format("{} ({}: {})", said, item.plugin, item.meaning);
}

std::vector<std::string> missing_texts(const SheetContext& context, const RequestAnswer& answer) {
    std::vector<std::pair<std::string, std::vector<double>>> quantities_of;
    std::size_t makeable = 0;
    for (const RequestAnswer::Quantity& quantity : answer.quantities) {
        if (!quantity.is_makeable() || !missing_at(quantity)) continue;
        ++makeable;
        for (const NotInPrice& item : *missing_at(quantity)) {
            std::string text = missing_text(context, item);
            const auto same = std::find_if(quantities_of.begin(), quantities_of.end(),
                                           [&](const auto& entry) { return entry.first == text; });
            if (same == quantities_of.end())
                quantities_of.push_back({std::move(text), {quantity.quantity()}});
            else
                same->second.push_back(quantity.quantity());
        }
    }
    std::vector<std::string> result;
    for (const auto& [text, quantities] : quantities_of)
        result.push_back(quantities.size() == makeable ? text
                                                       : fmt::format("at {}: {}", listed_quantities(quantities), text));
    return result;
}

ReportSection not_in_price_section(const std::vector<std::string>& texts) {
    ReportSection section{"Not in this price"};
    for (const std::string& text : texts) section.blocks.emplace_back(Note{text, Note::Kind::item, 1});
    return section;
}

}  // namespace flutebook::reports
