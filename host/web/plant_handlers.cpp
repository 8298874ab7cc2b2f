// What the plant has: its models.
#include "host/pages/report_page.hpp"
#include "host/plant_answers/plugin_json.hpp"
#include "host/plant_reports/describe_report.hpp"
#include "host/services/plugins/files_not_listed.hpp"
#include "host/web/handlers.hpp"

namespace flutebook::web {

Outcome list_models(const Call& call) {
    const engine::Graph& graph = call.desk.workplace.engine.graph();
    const std::vector<std::string> not_listed = services::files_not_listed(call.plant());
    if (call.wants_json()) return json(plant_answers::plugin_list_document(graph, not_listed));
    return page(pages::report_page(call.frame(pages::Place::models), "Models",
                                   {plant_reports::plugin_list_report(graph, not_listed)}));
}

}  // namespace flutebook::web
