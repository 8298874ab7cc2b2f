#include "host/cli/order_cost_text.hpp"

#include <fmt/format.h>

#include "host/catalogue/date.hpp"
#include "host/cli/changed_plugin.hpp"
#include "host/cli/number_text.hpp"
#include "host/cli/order_cost_sections.hpp"
#include "host/cli/text.hpp"

namespace flutebook::cli {

namespace {

std::string heading(const catalogue::Plant& plant, const desk::OrderCost& answer) {
    const auto& order = answer.order;
    const auto whose = order.customer.empty() ? order.number : order.number + "  " + order.customer;
    const auto first = catalogue::to_string(answer.days.front());
    const auto last = catalogue::to_string(answer.days.back());
    return rule('=') + edges(cleaned(whose), cleaned(plant.name)) +
           hanging("", cleaned(fmt::format("order of quote {}, request {}: {} of {}, board {}", order.quote,
                                           answer.request, number_text(order.quantity, 0), order.style, order.board))) +
           hanging("", fmt::format("made {}, money in {}", first == last ? "on " + first : first + " to " + last,
                                   answer.currency)) +
           rule('=');
}

// What a reader must know before believing a figure.
std::string warnings(const desk::OrderCost& answer) {
    std::string made;
    for (const auto& own : answer.plugins) made += hanging("! ", cleaned("plugin " + changed_plugin_text(own)));
    if (answer.cost.quoted != answer.saved_cost)
        made +=
            hanging("! ", fmt::format("the quote comes to {} today: it was saved at {}; the figures below start from "
                                      "today's",
                                      money_text(answer.cost.quoted), money_text(answer.saved_cost)));
    for (const auto& step : answer.steps)
        if (step.ran.machines.size() > 1)
            made += hanging("! ", cleaned(fmt::format("{} machines ran for {}: all is costed at the rates of {}, which "
                                                      "ran the most",
                                                      step.ran.machines.size(), step.ran.quoted, step.ran.costed)));
        else if (step.ran.costed != step.ran.quoted)
            made += hanging("! ", cleaned(fmt::format("{} was quoted, {} ran", step.ran.quoted, step.ran.costed)));
    return made.empty() ? made : made + "\n";
}

}  // namespace

std::string order_cost_text(const catalogue::Plant& plant, const desk::OrderCost& answer) {
    const ShownUnits units(plant);
    return heading(plant, answer) + "\n" + warnings(answer) + difference_section(answer) + "\n" +
           line_variance_section(answer) + "\n" + input_section(units, answer) + "\n" +
           production_section(units, answer) + "\n" + order_mass_section(units, answer);
}

}  // namespace flutebook::cli
