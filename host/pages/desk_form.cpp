// Fields stand in the order in which a caller says things: style, sizes, board, quantities.
#include "host/pages/desk_form.hpp"

#include <algorithm>

#include "host/orders/enquiry_fields.hpp"
#include "host/pages/place_links.hpp"
#include "host/plant/maker_text.hpp"

namespace flutebook::pages {

namespace {

using orders::EnquiryFields;

Html label(std::string_view text, const Html& control) {
    return html("<label class=\"field\"><span>{}</span>{}</label>\n", text, control);
}

Html unit(std::string_view text) {
    return text.empty() ? Html() : html(" <span class=\"unit\">{}</span>", text);
}

Html input(std::string_view name, const std::string& value) {
    return html("<input name=\"{}\" value=\"{}\" autocomplete=\"off\">", name, value);
}

Html listed_input(std::string_view name, const std::string& value, std::string_view list) {
    return html("<input name=\"{}\" value=\"{}\" list=\"{}\" autocomplete=\"off\">", name, value, list);
}

Html field(std::string_view text, std::string_view name, const std::string& value, std::string_view of_unit = {}) {
    return html("<label class=\"field\"><span>{}{}</span>{}</label>\n", text, unit(of_unit), input(name, value));
}

Html style_list(const plant::Plant& plant) {
    Html options;
    for (const box_styles::Style& style : plant.styles)
        if (!style.is_outline) options += html("<option value=\"{}\">{}</option>", style.code, style.title);
    return html("<datalist id=\"styles\">{}</datalist>\n", options);
}

Html machine_list(const plant::Plant& plant) {
    Html options;
    for (const plant::Converter& machine : plant.converters)
        options += html("<option value=\"{}\"></option>", machine.code);
    return html("<datalist id=\"machines\">{}</datalist>\n", options);
}

// "KL135 / B SC127 / TL125": its papers, outside first, each medium behind its flute.
std::string papers_of(const plant::Plant& plant, const plant::Board& board) {
    if (const plant::Corrugator* supplier = plant.supplier_of(board)) return plant::maker_text(*supplier);
    std::string result;
    for (const plant::Board::Ply& ply : board.plies) {
        if (!result.empty()) result += " / ";
        if (ply.flute) result += plant.flutes[*ply.flute].code + " ";
        result += plant.papers[ply.paper].code;
    }
    return result;
}

Html board_choice(const plant::Plant& plant, const std::string& chosen) {
    Html options = html("<option value=\"\"></option>");
    for (const plant::Board& board : plant.boards)
        options +=
            html("<option value=\"{}\"{}>{}, {}</option>", board.code,
                 board.code == chosen ? Attribute(" selected") : Attribute(), board.code, papers_of(plant, board));
    return html("<select name=\"board\">{}</select>", options);
}

// Takes a field of this name out of those that were said.
std::string take(EnquiryFields& fields, const std::string& name) {
    const auto found =
        std::find_if(fields.named.begin(), fields.named.end(), [&](const auto& field) { return field.first == name; });
    if (found == fields.named.end()) return "";
    std::string value = found->second;
    fields.named.erase(found);
    return value;
}

std::string sentence_case(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

Html measure_fields(const plant::Plant& plant, EnquiryFields& fields) {
    const box_styles::Style* style = plant.find_style(fields.style);
    if (style == nullptr) return {};
    Html result;
    for (const box_styles::AskedMeasure& measure : style->asks)
        result += field(sentence_case(measure.says), measure.name, take(fields, measure.name), "mm");
    if (style->may_turn) result += field("Flutes", "flutes", take(fields, "flutes"), "along L or B");
    return result;
}

Html model_fields(const std::vector<contract::Model>& models, EnquiryFields& fields) {
    Html result;
    for (const contract::Model& model : models)
        for (const contract::Setting& setting : model.settings) {
            if (setting.varies_by != contract::VariesBy::request) continue;
            const std::string name = model.id + "." + setting.name;
            result += field(sentence_case(setting.meaning), name, take(fields, name),
                            setting.unit == "1" ? "" : setting.unit);
        }
    return result;
}

// What was said and has no field of its own.
Html other_fields(const EnquiryFields& fields) {
    Html result;
    for (const auto& [name, value] : fields.named) result += field(name, name, value);
    return result;
}

Html group(std::string_view title, const Html& inside) {
    return html("<fieldset><legend>{}</legend>{}</fieldset>\n", title, inside);
}

Html box_group(const plant::Plant& plant, EnquiryFields& fields) {
    const bool is_metric = plant.units == plant::Units::metric;
    const char* length_unit = is_metric ? "mm" : "in";
    Html sizes = field("Length", "l", fields.length, length_unit);
    sizes += field("Width", "w", fields.width, length_unit);
    sizes += field("Height", "h", fields.height, length_unit);
    Html inside = label("Style", listed_input("style", fields.style, "styles"));
    inside += html("<div class=\"fields sizes\">{}</div><p class=\"small quiet\">inside, open side up</p>", sizes);
    inside += measure_fields(plant, fields);
    inside += label("Board", board_choice(plant, fields.board));
    return group("Box", inside);
}

Html price_group(EnquiryFields& fields) {
    Html inside = field("Quantities", "quantities", fields.quantities);
    Html pair = field("Margin", "margin", fields.margin, "% of the price");
    pair += field("Colours", "colours", fields.colours);
    inside += html("<div class=\"fields\">{}</div>", pair);
    inside += html(
        "<label class=\"field\"><span>Machines after the corrugator <span class=\"unit\">none: the cheapest way"
        "</span></span>{}</label>",
        listed_input("route", fields.route, "machines"));
    return group("Quantities and price", inside);
}

Html whose_group(EnquiryFields& fields) {
    Html pair = field("Request", "request", fields.request);
    pair += field("Prices of", "date", fields.date, "YYYY-MM-DD");
    return group("For",
                 label("Customer", input("customer", fields.customer)) + html("<div class=\"fields\">{}</div>", pair));
}

}  // namespace

Html line_form(const plant::Plant& plant, const DeskEnquiry& enquiry, const Html& carried) {
    Html complaints;
    for (const std::string& complaint : enquiry.complaints) complaints += html("<p>{}</p>\n", told(&plant, complaint));
    return html(
        "<form class=\"enquiry\" id=\"line-form\" action=\"{}\"><label for=\"line\">Enquiry</label>"
        "<input id=\"line\" name=\"line\" value=\"{}\" spellcheck=\"false\" autocomplete=\"off\" "
        "autocapitalize=\"off\" "
        "aria-describedby=\"understood\"><button>Quote</button>{}</form>\n"
        "<p class=\"understood\" id=\"understood\">{}</p>\n<div class=\"complaints\" id=\"complaints\" "
        "role=\"alert\">{}</div>\n",
        Address("/quotes/new"), enquiry.line, carried,
        enquiry.understood.empty() ? words("") : html("<b>Understood:</b> {}", enquiry.understood), complaints);
}

Html fields_form(const plant::Plant& plant, const std::vector<contract::Model>& models, const std::string& line,
                 const Html& carried) {
    EnquiryFields fields = orders::enquiry_fields(plant, line);
    Html inside = box_group(plant, fields);
    inside += price_group(fields);
    inside += whose_group(fields);
    Html further = model_fields(models, fields);
    further += other_fields(fields);
    if (!further.is_empty())
        inside +=
            html("<details class=\"more\" id=\"more\"><summary>What else the price may need</summary>{}</details>\n",
                 further);
    inside += html("<div class=\"buttons\"><button>Quote</button></div>\n");
    return html("<form class=\"panel form\" id=\"fields\" action=\"{}\" aria-label=\"The enquiry\">\n{}{}{}{}</form>\n",
                Address("/quotes/new"), inside, carried, style_list(plant), machine_list(plant));
}

}  // namespace flutebook::pages
