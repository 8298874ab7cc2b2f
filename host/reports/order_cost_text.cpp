#include "host/reports/order_cost_text.hpp"

#include <fmt/format.h>

#include "host/answers/changed_plugin.hpp"
#include "host/base/date.hpp"
#include "host/render/number_text.hpp"
#include "host/render/text.hpp"
#include "host/reports/order_cost_sections.hpp"

namespace flutebook::reports {

namespace {

std::string heading(const plant::Plant& plant, const services::OrderCost& answer) {
    const auto& order = answer.order;
    const auto whose = order.customer.empty() ? order.number : order.number + "  " + order.customer;
    const auto first = base::to_string(answer.days.front());
    const auto last = base::to_string(answer.days.back());
    return render::rule('=') + render::edges(render::cleaned(whose), render::cleaned(plant.name)) +
           render::hanging("", render::cleaned(fmt::format(
                                   "order of quote {}, request {}: {} of {}, board {}", order.quote, answer.request,
                                   render::number_text(order.quantity, 0), order.style, order.board))) +
           render::hanging("", fmt::format("made {}, money in {}",
                                           first == last ? "on " + first : first + " to " + last, answer.currency)) +
           render::rule('=');
}

// What a reader must know before believing a figure.
std::string warnings(const services::OrderCost& answer) {
    std::string result;
    for (const auto& plugin : answer.plugins)
        result += render::hanging("! ", render::cleaned("plugin " + answers::changed_plugin_text(plugin)));
    if (answer.cost.quoted != answer.saved_cost)
        result += render::hanging(
            "! ", fmt::format("the quote comes to {} today: it was saved at {}; the figures below start from "
                              "today's",
                              render::money_text(answer.cost.quoted), render::money_text(answer.saved_cost)));
    for (const auto& step : answer.steps)
        if (step.ran.machines.size() > 1)
            result += render::hanging(
                "! ", render::cleaned(fmt::format("{} machines ran for {}: all is costed at the rates of {}, which "
                                                  "ran the most",
                                                  step.ran.machines.size(), step.ran.quoted, step.ran.costed)));
        else if (step.ran.costed != step.ran.quoted)
            result += render::hanging(
                "! ", render::cleaned(fmt::format("{} was quoted, {} ran", step.ran.quoted, step.ran.costed)));
    return result.empty() ? result : result + "\n";
}

}  // namespace

std::string order_cost_text(const plant::Plant& plant, const services::OrderCost& answer) {
    const ShownUnits units(plant);
    return heading(plant, answer) + "\n" + warnings(answer) + difference_section(answer) + "\n" +
           line_variance_section(answer) + "\n" + input_section(units, answer) + "\n" +
           production_section(units, answer) + "\n" + order_mass_section(units, answer);
}

}  // namespace flutebook::reports
