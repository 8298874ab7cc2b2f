#include "host/pages/beside_panel.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <initializer_list>

#include "host/pages/field_words.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/what_if_reports/changed_numbers.hpp"

namespace flutebook::pages {

namespace {

constexpr std::size_t least_change_fields = 2;

std::vector<std::string> values_of(const FormFields& fields, std::string_view name) {
    std::vector<std::string> result;
    for (const auto& [field, value] : fields)
        if (field == name) result.push_back(value);
    return result;
}

bool has_any(const FormFields& fields, std::initializer_list<std::string_view> names) {
    return std::any_of(names.begin(), names.end(), [&](auto name) { return !field_value(fields, name).empty(); });
}

Html labelled(std::string_view text, std::string_view unit, const char* name, const std::string& value) {
    return html(
        "<label class=\"field\"><span>{} <span class=\"unit\">{}</span></span>"
        "<input name=\"{}\" value=\"{}\" autocomplete=\"off\" spellcheck=\"false\"></label>\n",
        text, unit, name, value);
}

// One more than there are, so that another can be added without scripts.
Html change_fields(const FormFields& asked) {
    std::vector<std::string> changes = values_of(asked, beside_query::with);
    changes.resize(std::max(changes.size() + 1, least_change_fields));
    Html result;
    for (std::size_t i = 0; i < changes.size(); ++i)
        result += html(
            "<input name=\"{}\" value=\"{}\" aria-label=\"Number {} and its other value\" list=\"paths\" "
            "autocomplete=\"off\" spellcheck=\"false\">\n",
            beside_query::with, changes[i], i + 1);
    return result;
}

// Changes that every plant knows; any number of its files has a path like these.
Html paths_list(const plant::Plant& plant) {
    Html options = html("<option value=\"papers.*.price=+5%\">{}</option>", "all paper 5 % dearer");
    for (const plant::Paper& paper : plant.papers)
        options += html("<option value=\"{}\"></option>", fmt::format("papers.{}.price=+5%", paper.code));
    for (const plant::Converter& machine : plant.converters)
        options += html("<option value=\"{}\"></option>", fmt::format("machines.{}.setup.minutes=+10%", machine.code));
    return html("<datalist id=\"paths\">{}</datalist>\n", options);
}

Html board_boxes(const plant::Plant& plant, const FormFields& asked) {
    std::vector<std::string> chosen;
    for (const std::string& list : values_of(asked, beside_query::boards))
        for (std::size_t at = 0; at <= list.size();) {
            const std::size_t end = std::min(list.find(',', at), list.size());
            chosen.push_back(list.substr(at, end - at));
            at = end + 1;
        }
    Html result;
    for (const plant::Board& board : plant.boards) {
        const bool is_chosen = std::find(chosen.begin(), chosen.end(), board.code) != chosen.end();
        result += html("<label><input type=\"checkbox\" name=\"{}\" value=\"{}\"{}> {}</label>\n", beside_query::boards,
                       board.code, is_chosen ? Attribute(" checked") : Attribute(), board.code);
    }
    return html("<div class=\"checks\">{}</div>\n", result);
}

Html details(const char* id, std::string_view title, bool is_open, const Html& inside) {
    return html("<details id=\"{}\"{}><summary>{}</summary>\n{}</details>\n", id,
                is_open ? Attribute(" open") : Attribute(), title, inside);
}

Html corrugator_choice(const plant::Plant& plant, const std::string& chosen) {
    Html options = html("<option value=\"\">{}</option>", "any");
    for (const plant::Corrugator& corrugator : plant.corrugators)
        options += html("<option value=\"{}\"{}>{}</option>", corrugator.code,
                        corrugator.code == chosen ? Attribute(" selected") : Attribute(), corrugator.code);
    return html("<label class=\"field\"><span>{}</span><select name=\"{}\">{}</select></label>\n",
                beside_label::corrugator, beside_query::corrugator, options);
}

Html fields_of(const FormFields& asked, std::initializer_list<std::array<const char*, 3>> fields) {
    Html result;
    for (const auto& [text, unit, name] : fields) result += labelled(text, unit, name, field_value(asked, name));
    return html("<div class=\"fields\">{}</div>\n", result);
}

Html boards_group(const plant::Plant& plant, const FormFields& asked) {
    Html inside = board_boxes(plant, asked);
    inside += html("<p class=\"small quiet\">{}</p>\n", "Or the cheapest of all boards that bears at least:");
    inside += fields_of(asked,
                        {{beside_label::ect, "kN/m", beside_query::ect}, {beside_label::bct, "kN", beside_query::bct}});
    const bool is_open = has_any(asked, {beside_query::boards, beside_query::ect, beside_query::bct});
    return details("what-if-boards", beside_label::boards, is_open, inside);
}

Html way_group(const plant::Plant& plant, const FormFields& asked) {
    Html inside = corrugator_choice(plant, field_value(asked, beside_query::corrugator));
    inside +=
        fields_of(asked, {{beside_label::roll, "mm", beside_query::roll}, {beside_label::ups, "", beside_query::ups}});
    const bool is_open = has_any(asked, {beside_query::corrugator, beside_query::roll, beside_query::ups});
    return details("what-if-way", "Made another way", is_open, inside);
}

std::string whole_quantity(double quantity) {
    return fmt::format("{:.0f}", quantity);
}

// "C1, roll 2050 mm, 2 up": as asked, be it possible or not.
std::string way_text(const FormFields& asked) {
    std::string result = field_value(asked, beside_query::corrugator);
    const auto add = [&](const std::string& text) { result += (result.empty() ? "" : ", ") + text; };
    if (const std::string roll = field_value(asked, beside_query::roll); !roll.empty()) add("roll " + roll + " mm");
    if (const std::string ups = field_value(asked, beside_query::ups); !ups.empty()) add(ups + " a sheet");
    return result;
}

Html complaint_list(const plant::Plant& plant, const std::vector<std::string>& complaints) {
    Html items;
    for (const std::string& complaint : complaints) items += html("<li>{}</li>\n", told(&plant, complaint));
    return items.is_empty() ? Html() : html("<div role=\"alert\"><ul class=\"faults\">\n{}</ul></div>\n", items);
}

// What changed may be many numbers, and whoever asked knows them.
render::Report prices_first(render::Report report) {
    report.heading.reset();
    std::stable_partition(report.sections.begin(), report.sections.end(),
                          [](const auto& section) { return section.title != what_if_reports::changed_numbers_title; });
    return report;
}

Html way_notice(const BesideWhat& what, const BesideView& beside) {
    const std::string way = way_text(beside.asked);
    if (way.empty()) return {};
    return html(
        "<p class=\"warning\">Made on {} alone, which is not saved. <a id=\"any-way\" href=\"{}\">Made the cheapest "
        "way</a></p>\n",
        way, desk_address(what.line, without_way(beside.asked)).with("quantity", whole_quantity(what.quantity)));
}

}  // namespace

Html what_if_form(const BesideWhat& what, const BesideView& beside) {
    const FormFields& asked = beside.asked;
    Html inside = html("<input type=\"hidden\" name=\"line\" value=\"{}\">", what.line);
    inside += html("<input type=\"hidden\" name=\"quantity\" value=\"{}\">\n", whole_quantity(what.quantity));
    inside += html(
        "<fieldset><legend>What if</legend><p class=\"small quiet\">{} <code>papers.*.price=+5%</code></p>\n{}"
        "</fieldset>\n",
        fmt::format("{}, by their paths:", beside_label::with), change_fields(asked));
    inside += fields_of(asked, {{beside_label::prices, "a thousand", beside_query::prices},
                                {beside_label::margins, "%", beside_query::margins}});
    inside += boards_group(what.plant, asked);
    inside += way_group(what.plant, asked);
    inside += html(
        "<div class=\"buttons\"><button>Set beside</button><button name=\"{}\" value=\"{}\">{}"
        "</button></div>\n",
        beside_query::rank, whole_quantity(what.quantity), beside_label::rank);
    return html("<form class=\"panel form\" id=\"what-if\" action=\"{}\" aria-label=\"What if\">\n{}{}</form>\n",
                Address("/quotes/new"), inside, paths_list(what.plant));
}

Html beside_part(const BesideWhat& what, const BesideView& beside) {
    if (beside.asked.empty()) return no_part("beside");
    Html inside = way_notice(what, beside) + complaint_list(what.plant, beside.complaints);
    if (beside.report) {
        const PlaceLinks places(&what.plant);
        inside += report_html(prices_first(*beside.report), "beside", &places);
    }
    const Address alone = desk_address(what.line).with("quantity", whole_quantity(what.quantity));
    return html(
        "<section class=\"stack\" id=\"beside\" aria-labelledby=\"beside-head\"><div class=\"title\">"
        "<h2 id=\"beside-head\">Beside the enquiry</h2><a class=\"end\" id=\"alone\" href=\"{}\">The enquiry alone</a>"
        "</div>\n{}</section>\n",
        alone, inside);
}

Html carried_fields(const FormFields& asked) {
    Html result;
    for (const auto& [name, value] : asked)
        if (name != beside_query::rank)
            result += html("<input type=\"hidden\" class=\"carried\" name=\"{}\" value=\"{}\">", name, value);
    return result;
}

}  // namespace flutebook::pages
