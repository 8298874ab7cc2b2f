#include "host/cli/facts_command.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/plugin_json.hpp"
#include "host/engine/facts.hpp"
#include "host/render/text.hpp"
#include "host/reports/describe_words.hpp"

namespace flutebook::cli {

namespace {

using contract::Axis;
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

std::string text() {
    std::string result;
    for (const Axis axis : {Axis::order, Axis::ply, Axis::step}) {
        result += fmt::format("{}{}\n", result.empty() ? "" : "\n", reports::axis_words(axis));
        for (const Fact& fact : engine::facts())
            if (fact.name.axis == axis)
                result += render::hanging(fmt::format("  {:<20} {:<9} ", fact.name.name, fact.name.unit),
                                          fact.name.meaning + (fact.is_replaceable ? " (replaceable)" : ""));
    }
    return result;
}

std::string markdown() {
    std::string result =
        "# What the host gives\n\n"
        "Any model may need these. Where `prefer` in plugins.yaml says so, a model may give a replaceable one in the "
        "host's place.\n\n"
        "| name | unit | how many | range | replaceable | meaning |\n|---|---|---|---|---|---|\n";
    for (const Fact& fact : engine::facts())
        result += fmt::format("| `{}` | `{}` | {} | {} | {} | {} |\n", fact.name.name, fact.name.unit,
                              reports::axis_words(fact.name.axis), reports::range_words(fact.name.range),
                              fact.is_replaceable ? "yes" : "", fact.name.meaning);
    return result;
}

}  // namespace

ExitCode run_plugin_facts(const PluginFactsCommand& asked, Output& output) {
    switch (asked.as) {
        case PluginFactsCommand::As::json:
            output.write(answers::json_text(json()));
            break;
        case PluginFactsCommand::As::markdown:
            output.write(markdown());
            break;
        case PluginFactsCommand::As::text:
            output.write(text());
            break;
    }
    return ExitCode::done;
}

}  // namespace flutebook::cli
