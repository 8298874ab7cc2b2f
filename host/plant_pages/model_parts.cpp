#include "host/plant_pages/model_parts.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"
#include "host/pages/place_links.hpp"
#include "host/plant_reports/model_words.hpp"

namespace flutebook::pages {

using contract::Model;
using contract::Setting;
using plant_answers::Feed;
using plant_answers::ModelInUse;
using plant_answers::SettingInForce;
using plant_answers::ValueInForce;

namespace {

Html scrolled(std::string_view name, const Html& heads, const Html& rows) {
    if (rows.is_empty()) return {};
    return html(
        "<div class=\"scroll\" role=\"group\" tabindex=\"0\" aria-label=\"{}\"><table><thead><tr>{}</tr></thead>"
        "<tbody>\n{}</tbody></table></div>\n",
        name, heads, rows);
}

Html head(std::string_view title) {
    return html("<th scope=\"col\">{}</th>", title);
}

Html unit_html(const std::string& unit) {
    return unit == "1" ? Html() : html(" <span class=\"unit\">{}</span>", unit);
}

Html feed_html(const Feed& feed, const std::string& taken_as) {
    const Html name = feed.name == taken_as ? Html() : html(" <code>{}</code>", feed.name);
    if (feed.kind == Feed::Kind::fact) return words("plant and request") + name;
    return (feed.kind == Feed::Kind::setting ? words("settings of ") : Html()) + model_link(feed.model) + name;
}

std::string value_text(const Setting& setting, double value) {
    return setting.choices.empty() ? fmt::format("{}", value + 0.0)
                                   : setting.choices.at(static_cast<std::size_t>(value));
}

Html place_html(const base::Place& place) {
    if (place.line == 0) return words("default");
    return html("<a class=\"place\" href=\"{}\">{}</a>", plant_line_address(place.file.text(), place.line),
                base::place_text(place));
}

// "for FG1, from 500 on"
std::string condition_words(const Model& model, const Setting& setting, const SettingInForce& used,
                            const ValueInForce& value) {
    std::string result = value.key;
    if (result.empty() && used.values.size() > 1 && used.values.front().key != value.key) result = "all others";
    if (value.from)
        result += fmt::format("{}from {} {}", result.empty() ? "" : ", ", *value.from + 0.0,
                              model.needs[*setting.stepped_over].name);
    return result;
}

Html no_value_html(const Setting& setting, const SettingInForce& used) {
    if (used.replaced_by) return words("taken from ") + feed_html(*used.replaced_by, setting.name);
    if (setting.varies_by == contract::VariesBy::request)
        return words(setting.is_required()
                         ? std::string("each request says it")
                         : fmt::format("a request may say it; else {}", plant_reports::default_words(setting)));
    return words("none");
}

std::string dates_words(const SettingInForce& used) {
    std::string result;
    if (used.since) result = "since " + base::to_string(*used.since);
    for (const base::Date& date : used.later)
        result += fmt::format("{}another from {}", result.empty() ? "" : ", ", base::to_string(date));
    return result;
}

Html setting_head(const Model& model, const Setting& setting, const SettingInForce& used) {
    const std::string dates = dates_words(used);
    return html(
        "<code>{}</code>{}<br><small class=\"quiet\">{}; {}{}{}</small>", setting.name, unit_html(setting.unit),
        setting.meaning, plant_reports::allowed_words(setting),
        setting.varies_by == contract::VariesBy::plant ? "" : "; " + plant_reports::varies_words(model, setting),
        dates.empty() ? "" : "; " + dates);
}

Html setting_rows(const Model& model, const Setting& setting, const SettingInForce& used) {
    const Html name = setting_head(model, setting, used);
    if (used.values.empty())
        return html("<tr id=\"setting-{}\"><th scope=\"row\">{}</th><td colspan=\"3\">{}</td></tr>\n", setting.name,
                    name, no_value_html(setting, used));
    Html rows;
    bool is_first = true;
    for (const ValueInForce& value : used.values) {
        const Html cells = html("<td>{}</td><td class=\"num\">{}</td><td class=\"text\">{}</td>",
                                condition_words(model, setting, used, value), value_text(setting, value.value),
                                place_html(value.place));
        rows += is_first ? html("<tr id=\"setting-{}\"><th scope=\"row\" rowspan=\"{}\">{}</th>{}</tr>\n", setting.name,
                                used.values.size(), name, cells)
                         : html("<tr>{}</tr>\n", cells);
        is_first = false;
    }
    return rows;
}

}  // namespace

Html model_link(const std::string& id) {
    if (id == "host") return words("the host");
    return html("<a href=\"{}\">{}</a>", Address("/models").at(id), id);
}

std::string verdict_words(const ModelInUse& used) {
    const bool is_installed = used.trust == ModelInUse::Trust::installed;
    return fmt::format("keeps every rule: tried when {}; works in {}",
                       is_installed ? "this program was built" : "it was first loaded here",
                       used.model.works_elsewhere() ? "a process of its own" : "the host's process");
}

Html needs_html(const ModelInUse& used) {
    Html rows;
    for (std::size_t n = 0; n < used.model.needs.size(); ++n) {
        const contract::Name& need = used.model.needs[n];
        rows += html("<tr><th scope=\"row\"><code>{}</code>{}</th><td>{}</td><td class=\"sentence\">{}</td></tr>\n",
                     need.name, unit_html(need.unit), feed_html(used.feeds[n], need.name), need.meaning);
    }
    return scrolled("needs", head("Number") + head("From") + head("Meaning"), rows);
}

Html provides_html(const ModelInUse& used) {
    Html rows;
    for (std::size_t p = 0; p < used.model.provides.size(); ++p) {
        const contract::Name& name = used.model.provides[p];
        Html takers;
        for (const std::string& taker : used.takers[p])
            takers += (takers.is_empty() ? Html() : words(", ")) + model_link(taker);
        rows += html("<tr><th scope=\"row\"><code>{}</code>{}</th><td>{}</td><td class=\"sentence\">{}</td></tr>\n",
                     name.name, unit_html(name.unit), takers.is_empty() ? words("nobody") : takers, name.meaning);
    }
    return scrolled("provides", head("Number") + head("To") + head("Meaning"), rows);
}

Html settings_html(const ModelInUse& used) {
    Html rows;
    for (std::size_t s = 0; s < used.model.settings.size(); ++s)
        rows += setting_rows(used.model, used.model.settings[s], used.settings[s]);
    return scrolled("settings",
                    head("Setting") + head("For") + html("<th scope=\"col\" class=\"num\">{}</th>", "Value") +
                        head("Where it stands"),
                    rows);
}

Html lines_html(const ModelInUse& used) {
    Html rows;
    for (const contract::Line& line : used.model.lines)
        rows += html(
            "<tr><th scope=\"row\"><code>{}</code></th><td>{}</td><td class=\"text\">{}</td><td class=\"text\">{}</td>"
            "<td class=\"text\">{}</td></tr>\n",
            line.name, line.title, line.rate_unit, contract::to_text(line.cost_class),
            contract::to_text(line.behaviour));
    return scrolled("charges", head("Line") + head("Title") + head("Rate") + head("Class") + head("Behaviour"), rows);
}

}  // namespace flutebook::pages
