#include "host/plant_pages/models_page.hpp"

#include <algorithm>

#include "host/base/place.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/plant_answers/plant_files.hpp"
#include "host/plant_pages/model_parts.hpp"
#include "host/plant_reports/model_words.hpp"

namespace flutebook::pages {

using plant_answers::Feed;
using plant_answers::ModelInUse;

namespace {

// The numbers that go one way between two models.
struct Passed {
    std::string between;
    std::vector<std::string> names;
};

void add_passed(std::vector<Passed>& all, const std::string& between, const std::string& name) {
    auto found = std::find_if(all.begin(), all.end(), [&](const Passed& item) { return item.between == between; });
    if (found == all.end()) found = all.insert(all.end(), {between, {}});
    if (std::find(found->names.begin(), found->names.end(), name) == found->names.end()) found->names.push_back(name);
}

Html passed_html(const std::vector<Passed>& all) {
    Html result;
    for (const Passed& item : all) {
        Html names;
        for (const std::string& name : item.names)
            names += (names.is_empty() ? Html() : words(", ")) + html("<code>{}</code>", name);
        const Html who = item.between.empty() ? words("plant and request") : model_link(item.between);
        result += html("<li>{}: {}</li>\n", who, names);
    }
    return result.is_empty() ? words("nobody") : html("<ul class=\"plain\">\n{}</ul>", result);
}

Html taken_html(const ModelInUse& used) {
    std::vector<Passed> all;
    for (const Feed& feed : used.feeds) add_passed(all, feed.model, feed.name);
    for (const auto& setting : used.settings)
        if (setting.replaced_by) add_passed(all, setting.replaced_by->model, setting.replaced_by->name);
    return passed_html(all);
}

Html given_html(const ModelInUse& used) {
    std::vector<Passed> all;
    for (std::size_t p = 0; p < used.takers.size(); ++p)
        for (const std::string& taker : used.takers[p]) add_passed(all, taker, used.model.provides[p].name);
    return passed_html(all);
}

Html loaded_html(const std::vector<ModelInUse>& models) {
    Html rows;
    for (const ModelInUse& used : models)
        rows += html(
            "<tr><th scope=\"row\">{}</th><td class=\"text\">{}</td><td>{}</td><td class=\"sentence\">{}</td></tr>\n",
            model_link(used.model.id), used.model.version, used.model.title, verdict_words(used));
    return html(
        "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"Loaded models\"><table><thead><tr>"
        "<th scope=\"col\">Model</th><th scope=\"col\">Version</th><th scope=\"col\">Title</th>"
        "<th scope=\"col\">Verdict</th></tr></thead><tbody>\n{}</tbody></table></div>\n",
        rows);
}

Html graph_html(const std::vector<ModelInUse>& models) {
    Html rows;
    for (const ModelInUse& used : models)
        rows += html("<tr id=\"graph-{}\"><th scope=\"row\">{}</th><td>{}</td><td>{}</td></tr>\n", used.model.id,
                     model_link(used.model.id), taken_html(used), given_html(used));
    return html(
        "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"Who feeds whom\"><table "
        "class=\"graph\"><thead>"
        "<tr><th scope=\"col\">Model</th><th scope=\"col\">Takes from</th><th scope=\"col\">Gives to</th></tr></thead>"
        "<tbody>\n{}</tbody></table></div>\n",
        rows);
}

Html preferences_html(const plant::Plant& plant) {
    Html items;
    for (const auto& preference : plant.preferences) {
        const std::string file = plant_answers::name_in_plant(plant, preference.place.file);
        items += html("<li><code>{}</code> is taken from {}: <a class=\"place\" href=\"{}\">{}:{}</a></li>\n",
                      preference.name, model_link(preference.model), plant_line_address(file, preference.place.line),
                      file, preference.place.line);
    }
    return items.is_empty() ? Html()
                            : panel("replaced", "Replaced, as the plant prefers", Html(),
                                    html("<ul class=\"plain\">\n{}</ul>\n", items));
}

Html not_loaded_html(const std::vector<std::string>& files) {
    Html items;
    for (const std::string& file : files) items += html("<li><code>{}</code></li>\n", file);
    return items.is_empty()
               ? Html()
               : panel("not-loaded", "Not loaded", Html(),
                       html("<p>plugins.yaml does not list these files:</p>\n<ul class=\"plain\">\n{}</ul>\n", items));
}

Html texts_html(const std::vector<std::string>& texts) {
    Html items;
    for (const std::string& text : texts) items += html("<li>{}</li>\n", text);
    return items.is_empty() ? Html() : html("<ul class=\"plain\">\n{}</ul>\n", items);
}

Html part(std::string_view id, std::string_view title, const Html& inside) {
    return inside.is_empty() ? Html() : panel(id, title, Html(), inside);
}

Html facts_html(const ModelInUse& used) {
    const contract::Model& model = used.model;
    const std::string file = model.file.substr(model.file.rfind('/') + 1);
    Html author;
    if (!model.author.empty()) author = html("<div><dt>Author</dt><dd>{} {}</dd></div>", model.author, model.contact);
    return html(
        "<dl class=\"facts\"><div><dt>Version</dt><dd>{}</dd></div><div><dt>Verdict</dt><dd>{}</dd></div>"
        "<div><dt>File</dt><dd>{}</dd></div><div><dt>Built with</dt><dd>{}</dd></div>{}</dl>\n"
        "<p class=\"hash quiet\">SHA-256 {}</p>\n",
        model.version, verdict_words(used), file, model.built_with, author, model.sha256);
}

Html sheds_html(const contract::Model& model) {
    std::vector<std::string> texts;
    for (const contract::Loss& loss : model.losses) texts.push_back(loss.cause + ": " + loss.title);
    return texts_html(texts);
}

}  // namespace

std::string models_page(const Frame& frame, const LoadedModels& loaded) {
    return document(frame, "Models",
                    html("<div class=\"title\"><h1>Models</h1><a class=\"end\" href=\"{}\">What the host gives to "
                         "every model</a></div>"
                         "\n<div class=\"stack\">\n{}{}{}{}</div>\n",
                         Address("/facts"),
                         panel("loaded", "Loaded, in the order of their work", Html(), loaded_html(loaded.models)),
                         panel("graph", "Who feeds whom", Html(), graph_html(loaded.models)),
                         preferences_html(loaded.plant), not_loaded_html(loaded.not_listed)));
}

std::string model_page(const Frame& frame, const ModelInUse& used) {
    const contract::Model& model = used.model;
    Html parts = part("settings", "Settings in force", settings_html(used));
    parts += part("charges", "Charges", lines_html(used));
    parts += part("provides", "Provides", provides_html(used));
    parts += part("needs", "Needs", needs_html(used));
    parts += part("sheds", "Sheds", sheds_html(model));
    parts += part("refuses", "Refuses an order where", texts_html(model.reasons));
    return document(frame, "Model " + model.id,
                    html("<p class=\"back\"><a href=\"{}\">All models</a></p>\n<header class=\"head\"><h1>{} <small "
                         "class=\"quiet\">{}</small></h1>\n{}</header>\n<div class=\"stack\">\n{}</div>\n",
                         Address("/models"), model.id, model.title, facts_html(used), parts));
}

}  // namespace flutebook::pages
