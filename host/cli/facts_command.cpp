#include "host/cli/facts_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/plugin_json.hpp"
#include "host/engine/facts.hpp"
#include "host/render/markdown_report.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/plugin_reports.hpp"

namespace flutebook::cli {

namespace {

using engine::Fact;

answers::Json json() {
    answers::Json result = {{"facts", answers::Json::array()}};
    for (const Fact& fact : engine::facts()) {
        result["facts"].push_back(answers::name_json(fact.name));
        result["facts"].back()["low"] = fact.name.range.low;
        result["facts"].back()["high"] = fact.name.range.high;
        result["facts"].back()["replaceable"] = fact.is_replaceable;
    }
    return result;
}

}  // namespace

ExitCode run_plugin_facts(const PluginFactsCommand& asked, Output& output) {
    switch (asked.as) {
        case PluginFactsCommand::As::json:
            output.write(answers::document_text("facts", json()));
            break;
        case PluginFactsCommand::As::markdown:
            output.write(render::to_markdown(reports::facts_report()));
            break;
        case PluginFactsCommand::As::text:
            output.write(render::to_text(reports::facts_report()));
            break;
    }
    return ExitCode::done;
}

}  // namespace flutebook::cli
