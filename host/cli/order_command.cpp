// `order` and `order cost`: take a saved quote as an order, and compare what the order cost with its quote.
#include <fmt/format.h>

#include "host/cli/commands.hpp"
#include "host/month_answers/order_answer.hpp"
#include "host/month_reports/order_cost_report.hpp"
#include "host/plant/maker_text.hpp"
#include "host/render/text_report.hpp"
#include "host/services/clock_warning.hpp"
#include "host/services/orders/order.hpp"
#include "host/services/orders/set_cost.hpp"
#include "ledger/reading/entries.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* order_footer =
    R"(Fixes the layout and the allowances that the order's production is measured against. Without --as
the order gets its number from its quote and quantity: Q000001-500.

Examples:
  flutebook --plant config/demo order Q000001 500 --as 26-0417
  flutebook order Q000002 20000 --json)";

constexpr const char* order_cost_footer =
    R"(Compares the actual cost of an order with its quote, once its production is posted, and explains the
difference: another number of boxes (volume), what the converters lost (yield), what the corrugator
used (usage), and what papers cost on the days they ran (price).

Exit code: 0 done; 1 refused: no such order, or part of its production is not posted; 2 wrong usage;
3 the plant's files or a plugin cannot be used.

Examples:
  flutebook --plant config/demo order cost 26-0417
  flutebook order cost 26-0417 --json)";

struct OrderCommand {
    std::string quote;
    std::int64_t quantity = 0;
    std::string number;  // empty: made from the quote's number and the quantity
    bool is_json = false;
};

struct OrderCostCommand {
    std::string number;
    bool is_json = false;
};

std::string order_text(const orders::OrderRecord& order) {
    const std::string maker =
        order.bought_from.empty() ? order.corrugator : "sheets " + plant::bought_from(order.bought_from);
    const std::string what = order.piece.empty() ? order.style : fmt::format("{} {}", order.style, order.piece);
    const std::string whose = order.customer.empty() ? "" : " for " + order.customer;
    return fmt::format("order {} taken from quote {}: {:.0f} of {}{}, by {}\n", order.number, order.quote,
                       order.quantity, what, whose, plant::route_text(maker, order.route));
}

ExitCode take_order(const OrderCommand& asked, const RunContext& context) {
    auto store = ledger::Store::open_for_writing(context.ledger, ledger::IfMissing::refuse);
    const auto orders =
        services::take_order(store, {asked.quote, static_cast<double>(asked.quantity), asked.number, context.person()});
    const std::string head = ledger::head(store)->hash;
    std::string text;
    for (const orders::OrderRecord& order : orders) {
        context.output.acknowledge(
            fmt::format("order {} taken from quote {}; head {}", order.number, order.quote, head));
        text += order_text(order);
    }
    warn(services::clock_warnings(store));
    context.output.write(asked.is_json ? answers::order_document(orders) : text);
    return ExitCode::done;
}

// Reads the plant's files of today.
ExitCode show_order_cost(const OrderCostCommand& asked, const RunContext& context) {
    const plant::Plant plant = plant::read_plant(context.plant);
    const services::OrderOrSetCost answer = services::cost_of(plant, context.ledger, asked.number);
    if (const auto* order = std::get_if<answers::OrderCost>(&answer))
        context.output.write(asked.is_json ? answers::order_cost_document(*order)
                                           : render::to_text(month_reports::order_cost_report(plant, *order)));
    else
        context.output.write(
            asked.is_json ? answers::set_cost_document(std::get<answers::SetCost>(answer))
                          : render::to_text(month_reports::set_cost_report(plant, std::get<answers::SetCost>(answer))));
    return ExitCode::done;
}

void add_order_cost(Command& order) {
    Command& command = order.add("cost", "compare the quoted with the actual cost of an order", order_cost_footer);
    const auto asked = std::make_shared<OrderCostCommand>();
    command.argument("NUMBER", "the plant's number for the order", read_line(asked->number));
    command.refuse_words_of_parent("not for the cost of an order");
    command.json_flag(asked->is_json);
    command.run_with([asked](const RunContext& context) { return show_order_cost(*asked, context); });
}

}  // namespace

void add_order(Command& program) {
    using Presence = Command::Presence;
    Command& command = program.add("order", "take a saved quote as an order", order_footer);
    const auto asked = std::make_shared<OrderCommand>();
    command.json_flag(asked->is_json);
    command.argument("QUOTE", "the quote's number, like Q000001", read_line(asked->quote),
                     Presence::required_without_subcommand);
    command.argument("QUANTITY", "one of the quantities of the quote",
                     read_whole_number({"quantity", 1}, asked->quantity), Presence::required_without_subcommand);
    command.option("--as", "NUMBER", "the plant's number for the order", read_line(asked->number));
    command.run_with([asked](const RunContext& context) { return take_order(*asked, context); });
    add_order_cost(command);
}

}  // namespace flutebook::cli
