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
    std::string made;
    for (const std::string& own : complaints) made += render::hanging("  ", render::cleaned(own));
    return made;
}

std::string verdict(const Recheck& checked) {
    std::string made = cause_text(checked.cause) + "\n" + reproduction_text(checked) + "\n" +
                       complaints_text(checked.reproduction.complaints);
    if (checked.today.ends != TodaysAnswer::Ends::answered)
        made += "Today nothing can be answered:\n" + complaints_text(checked.today.complaints);
    return made;
}

// Of the old price.
std::string share_by(Money was, Money now) {
    const double base = was.to_double();
    return base > 0 ? signed_text(render::percent_text((now - was).to_double() / base, 2)) : "";
}

std::string ladder(const Recheck& checked) {
    if (checked.today.ends != TodaysAnswer::Ends::answered) return "";
    const int coin = checked.plant.currency_minor_units;
    const auto price = [&](const std::optional<services::Total>& own) {
        return own ? render::coin_text(own->price_per_thousand, coin) : std::string("-");
    };
    render::Table table({render::Align::right, render::Align::decimal, render::Align::decimal, render::Align::decimal,
                         render::Align::right},
                        2);
    table.add({"quantity", "was", "now", "by", ""});
    for (const services::ChangedQuantity& own : checked.today.quantities) {
        std::vector<std::string> cells = {render::number_text(own.quantity, 0), price(own.was), price(own.now)};
        if (own.was && own.now) {
            const Money by = own.now->price_per_thousand - own.was->price_per_thousand;
            cells.push_back(by == Money() ? "0" : signed_text(render::coin_text(by, coin)));
            cells.push_back(by == Money() ? "" : share_by(own.was->price_per_thousand, own.now->price_per_thousand));
        }
        table.add(std::move(cells));
    }
    return fmt::format("\nPrice per thousand, {}\n", checked.plant.currency) + table.text();
}

}  // namespace

std::string recheck_text(const Recheck& checked) {
    std::string made = heading(checked) + "\n" + verdict(checked) + ladder(checked) + changed_keys_section(checked) +
                       changed_plugins_section(checked) + changed_heading_section(checked);
    for (std::size_t i = 0; i < checked.today.quantities.size(); ++i) made += changed_quantity_section(checked, i);
    return made + "\n";
}

}  // namespace flutebook::reports
