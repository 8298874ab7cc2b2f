#include "host/cli/order_cost_command.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/order_cost_json.hpp"
#include "host/cli/order_cost_text.hpp"
#include "host/desk/order_cost.hpp"

namespace flutebook::cli {

ExitCode run_order_cost(const catalogue::Plant& plant, const std::string& ledger, const OrderCostCommand& asked,
                        Output& output) {
    const auto answer = desk::order_cost(plant, ledger, asked.order);
    output.write(asked.form == Form::json ? json_text(order_cost_json(answer)) : order_cost_text(plant, answer));
    return ExitCode::done;
}

}  // namespace flutebook::cli
