#include "host/cli/order_cost_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/order_cost_json.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/order_cost_report.hpp"
#include "host/services/orders/order_cost.hpp"

namespace flutebook::cli {

ExitCode run_order_cost(const plant::Plant& plant, const std::string& ledger, const OrderCostCommand& asked,
                        Output& output) {
    const auto answer = services::order_cost(plant, ledger, asked.order);
    output.write(asked.form == OutputFormat::json
                     ? answers::document_text("order-cost", answers::order_cost_json(answer))
                     : render::to_text(reports::order_cost_report(plant, answer)));
    return ExitCode::done;
}

}  // namespace flutebook::cli
