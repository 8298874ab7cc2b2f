// Handlers of the plant's models, files and styles, and of the guides.

#include "host/base/errors.hpp"
#include "host/pages/report_page.hpp"
#include "host/plant_answers/guides.hpp"
#include "host/plant_answers/model_in_use.hpp"
#include "host/plant_answers/plant_files.hpp"
#include "host/plant_answers/plugin_json.hpp"
#include "host/plant_answers/style_json.hpp"
#include "host/plant_pages/guide_page.hpp"
#include "host/plant_pages/models_page.hpp"
#include "host/plant_pages/plant_files_page.hpp"
#include "host/plant_pages/styles_page.hpp"
#include "host/plant_reports/describe_report.hpp"
#include "host/services/plugins/files_not_listed.hpp"
#include "host/services/plugins/model_trust.hpp"
#include "host/services/styles/check_styles.hpp"
#include "host/services/styles/show_style.hpp"
#include "host/web/handlers.hpp"
#include "host/web/plant_watch.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

plant_answers::ModelInUse model_in_use(const Call& call, std::size_t model) {
    const engine::Engine& engine = call.desk.workplace.engine;
    plant_answers::ModelInUse used =
        plant_answers::model_in_use(call.plant(), engine.graph(), engine.settings(), model, Call::today());
    used.trust = services::trust_of(used.model);
    return used;
}

services::StyleQuestion style_question(const Call& call) {
    services::StyleQuestion question;
    question.code = call.parts.front();
    QueryValues values(call.target.query);
    values.expect("inside", cli::read_inside_size(question.inside_mm));
    values.expect("board", cli::read_line(question.board));
    for (const auto& [name, value] : call.target.query.all())
        if (const std::string prefix = pages::measure_prefix; name.rfind(prefix, 0) == 0 && !value.empty())
            values.take(name.c_str(), [&, &name = name](const std::string& text) {
                return cli::read_measure(question.measures)(name.substr(prefix.size()) + "=" + text);
            });
    values.throw_if_any_is_wrong();
    return question;
}

std::optional<plant_answers::ShownStyle> shown_style(const Call& call) {
    const bool is_asked = call.target.query.has("inside") || call.target.query.has("board");
    if (is_asked) return services::show_style(call.plant(), style_question(call));
    return services::show_style_at_usual_size(call.plant(), call.parts.front());
}

std::string chosen_code(const plant_answers::StyleListAnswer& list, const std::string& asked) {
    for (const plant_answers::ListedStyle& style : list.styles)
        if (style.code == asked) return asked;
    return list.styles.empty() ? "" : list.styles.front().code;
}

}  // namespace

// The document of `plugin list --json`; with `graph`, that of `plugin graph --json`.
Outcome list_models(const Call& call) {
    const engine::Graph& graph = call.desk.workplace.engine.graph();
    if (call.wants_json() && call.target.query.has("graph"))
        return json(plant_answers::plugin_graph_document(call.plant(), graph));
    const std::vector<std::string> not_listed = services::files_not_listed(call.plant());
    if (call.wants_json()) return json(plant_answers::plugin_list_document(graph, not_listed));
    pages::LoadedModels loaded{call.plant(), {}, not_listed};
    for (std::size_t m = 0; m < graph.models.size(); ++m) loaded.models.push_back(model_in_use(call, m));
    return page(pages::models_page(call.frame(pages::Place::models), loaded));
}

Outcome show_model(const Call& call) {
    const auto found = contract::find_model(call.desk.workplace.engine.graph().models, call.parts.front());
    if (!found) return refused(call, 404, {"model: no model has this name; look at the list of models"});
    const plant_answers::ModelInUse used = model_in_use(call, *found);
    if (call.wants_json()) return json(plant_answers::model_in_use_document(used));
    return page(pages::model_page(call.frame(pages::Place::models), used));
}

Outcome list_facts(const Call& call) {
    if (call.wants_json()) return json(plant_answers::facts_document());
    return page(
        pages::report_page(call.frame(pages::Place::models), "What the host gives", {plant_reports::facts_report()}));
}

Outcome list_plant_files(const Call& call) {
    const plant::Plant& plant = call.plant();
    pages::OpenedFiles opened{plant, plant_answers::plant_files(plant),
                              plant_answers::warnings_in_plant(plant, call.desk.workplace.warnings)};
    const auto changes = call.desk.watch.changes();
    for (plant_answers::PlantFile& file : opened.files)
        if (const auto change = changes.find(file.name); change != changes.end()) file.changed = change->second;
    if (call.wants_json()) return json(plant_answers::plant_files_document(opened.files, opened.warnings));
    return page(pages::plant_files_page(call.frame(pages::Place::plant), opened));
}

Outcome show_plant_file(const Call& call) {
    auto file = plant_answers::plant_file(call.plant(), call.parts.front());
    if (!file) return refused(call, 404, {"file: the plant has no file of this name; look at the list of its files"});
    const auto changes = call.desk.watch.changes();
    if (const auto change = changes.find(file->name); change != changes.end()) file->changed = change->second;
    if (call.wants_json()) return json(plant_answers::plant_file_document(*file));
    return page(pages::plant_file_page(call.frame(pages::Place::plant), *file));
}

Outcome list_styles(const Call& call) {
    const std::string& wanted = call.target.query.at("for");
    pages::FoundStyles found{call.plant(), wanted, services::found_styles(call.plant(), wanted), "", std::nullopt};
    if (call.wants_json()) return json(plant_answers::style_list_document(found.list));
    found.chosen = chosen_code(found.list, call.target.query.at("style"));
    if (!found.chosen.empty()) found.picture = services::show_style_at_usual_size(call.plant(), found.chosen);
    pages::Frame frame = call.frame(pages::Place::styles);
    frame.scripts = {"search.js"};
    return page(pages::styles_page(frame, found));
}

// The document of `style show --json`; with `check`, that of `style check --json`. What is wrong with a size is told
// beside the form that asks for it.
Outcome show_style(const Call& call) {
    const box_styles::Style* style = call.plant().find_style(call.parts.front());
    if (style == nullptr)
        return refused(call, 404, {"style: no style has this code; look for it in the list of styles"});
    const auto check = [&] { return services::check_styles(call.plant(), {style->code}); };
    if (call.wants_json() && call.target.query.has("check")) return json(plant_answers::style_check_document(check()));
    pages::StylePage shown{call.plant(), *style, call.target.query.all(), std::nullopt, {}, std::nullopt};
    try {
        shown.shown = shown_style(call);
    } catch (const InputError& error) {
        if (call.wants_json()) throw;
        shown.complaints = error.lines();
    }
    if (call.wants_json() && !shown.shown)
        return refused(call, 422, {"style: cannot be drawn at a usual size: give inside and board"});
    if (call.wants_json()) return json(plant_answers::style_document(*shown.shown));
    if (!style->is_outline) shown.check = check();
    return page(pages::style_page(call.frame(pages::Place::styles), shown));
}

Outcome list_guides(const Call& call) {
    if (call.wants_json()) return json(plant_answers::guide_list_document());
    return page(pages::guide_list_page(call.frame(pages::Place::guide), plant_answers::guides()));
}

Outcome show_guide(const Call& call) {
    const plant_answers::Guide* guide = plant_answers::find_guide(call.parts.front());
    if (guide == nullptr) return refused(call, 404, {"guide: no guide has this name; look at the list of guides"});
    if (call.wants_json()) return json(plant_answers::guide_document(*guide));
    return page(pages::guide_page(call.frame(pages::Place::guide), *guide));
}

}  // namespace flutebook::web
