#include "host/reports/recheck_text.hpp"

#include <fmt/format.h>

#include "host/answers/place_text.hpp"
#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/render/text.hpp"
#include "host/reports/recheck_sections.hpp"

namespace flutebook::reports {

namespace {

using services::Cause;
using services::Recheck;
using services::Reproduction;
using services::TodaysAnswer;

std::string heading(const Recheck& checked) {
    const std::string prices =
        checked.date ? fmt::format("papers at their prices of {}, ", base::to_string(*checked.date)) : "";
    return render::rule('=') +
           render::edges(render::cleaned(fmt::format("{} rechecked: {}", checked.quote, checked.request)),
                         render::cleaned(checked.plant.name)) +
           render::hanging("", render::cleaned(fmt::format("saved {} by {}; {}money in {}", base::utc_day(checked.when),
                                                           checked.who, prices, checked.plant.currency))) +
           render::rule('=');
}

std::string cause_text(Cause cause) {
    switch (cause) {
        case Cause::nothing_differs:
            return "Nothing differs: today every figure comes out as it was answered.";
        case Cause::plant_files:
            return "Different today, by the plant's files.";
        case Cause::plugins:
            return "Different today, by the plugins or the program.";
        case Cause::both:
            return "Different today, by the plant's files and by the plugins or the program.";
        case Cause::unknown:
            break;
    }
    return "Different today.";
}

std::string reproduction_text(const Recheck& checked) {
    switch (checked.reproduction.ends) {
        case Reproduction::Ends::to_the_byte:
            return "The saved files still give the saved answer, byte for byte.";
        case Reproduction::Ends::otherwise:
            return checked.cause == Cause::nothing_differs || checked.cause == Cause::plant_files
                       ? "The saved files still give every saved figure, but the page reads otherwise."
                       : "The saved files no longer give the saved answer: the plugins or the program are others.";
        case Reproduction::Ends::unfit:
            break;
    }
    return "The saved files no longer fit today's plugins:";
}

std::string complaints_text(const std::vector<std::string>& complaints) {
    std::string result;
    for (const std::string& complaint : complaints) result += render::hanging("  ", render::cleaned(complaint));
    return result;
}

std::string verdict(const Recheck& checked) {
    std::string result = cause_text(checked.cause) + "\n" + reproduction_text(checked) + "\n" +
                         complaints_text(checked.reproduction.complaints);
    if (checked.today.ends != TodaysAnswer::Ends::answered)
        result += "Today nothing can be answered:\n" + complaints_text(checked.today.complaints);
    return result;
}

// Of the old price.
std::string share_by(Money was, Money now) {
    const double base = was.to_double();
    return base > 0 ? signed_text(render::percent_text((now - was).to_double() / base, 2)) : "";
}

std::string ladder(const Recheck& checked) {
    if (checked.today.ends != TodaysAnswer::Ends::answered) return "";
    const int coin = checked.plant.currency_minor_units;
    const auto price = [&](const std::optional<services::Total>& item) {
        return item ? render::coin_text(item->price_per_thousand, coin) : std::string("-");
    };
    render::Table table({render::Align::right, render::Align::decimal, render::Align::decimal, render::Align::decimal,
                         render::Align::right},
                        2);
    table.add({"quantity", "was", "now", "by", ""});
    for (const services::ChangedQuantity& item : checked.today.quantities) {
        std::vector<std::string> cells = {render::number_text(item.quantity, 0), price(item.was), price(item.now)};
        if (item.was && item.now) {
            const Money by = item.now->price_per_thousand - item.was->price_per_thousand;
            cells.push_back(by == Money() ? "0" : signed_text(render::coin_text(by, coin)));
            cells.push_back(by == Money() ? "" : share_by(item.was->price_per_thousand, item.now->price_per_thousand));
        }
        table.add(std::move(cells));
    }
    return fmt::format("\nPrice per thousand, {}\n", checked.plant.currency) + table.text();
}

}  // namespace

std::string recheck_text(const Recheck& checked) {
    std::string result = heading(checked) + "\n" + verdict(checked) + ladder(checked) + changed_keys_section(checked) +
                         changed_plugins_section(checked) + changed_heading_section(checked);
    for (std::size_t i = 0; i < checked.today.quantities.size(); ++i) result += changed_quantity_section(checked, i);
    return result + "\n";
}

}  // namespace flutebook::reports
