#include "host/pages/quote_desk.hpp"

#include <fmt/format.h>

#include "host/pages/answer_parts.hpp"
#include "host/pages/report_parts.hpp"
#include "host/reports/quote_report.hpp"

namespace flutebook::pages {

namespace {

// Three lines that this plant understands: of its own boards, in the unit that its people say.
std::vector<std::string> examples(const plant::Plant& plant) {
    const bool is_metric = plant.units == plant::Units::metric;
    std::vector<std::string> result;
    if (plant.boards.empty()) return result;
    const std::string& first = plant.boards.front().code;
    const std::string& last = plant.boards.back().code;
    result.push_back(fmt::format("0201 {} {} 500 1000 5000 2c 18%", is_metric ? "400x300x250" : "16x12x10", first));
    result.push_back(fmt::format("0427 {} {} 2000 20%", is_metric ? "250x180x60" : "10x7x2", first));
    result.push_back(
        fmt::format("0201 {} {} 800 15% customer=\"Ashlar Tiles\"", is_metric ? "600x400x400" : "24x16x16", last));
    return result;
}

Html no_quote_yet(const plant::Plant& plant) {
    Html items;
    for (const std::string& line : examples(plant))
        items += html("<li><a href=\"{}\"><code>{}</code></a></li>\n", desk_address(line), line);
    return html(
        "<section class=\"panel\" id=\"start\"><h2>No quote yet</h2>\n<p>Type the enquiry as you hear it, in any "
        "order: "
        "style, inside size, board, quantities, colours, margin. Or fill in the form. For example:</p>\n"
        "<ul class=\"examples\">{}</ul>\n</section>\n",
        items);
}

Html save_form(const Frame& frame, const QuoteDesk& desk) {
    const bool can_save = desk.answer != nullptr && !desk.answer->model_fault && frame.may(Role::accountant);
    if (!can_save) return html("<div id=\"save\" hidden></div>\n");
    return html(
        "<form class=\"panel save\" id=\"save\" method=\"post\" action=\"{}\" aria-label=\"Save\">{}"
        "<input type=\"hidden\" name=\"line\" value=\"{}\">"
        "<label class=\"field\"><span>Approved by <span class=\"unit\">where the profit is below the plant's "
        "limit</span>"
        "</span><input name=\"approve\" autocomplete=\"off\"></label>"
        "<div class=\"buttons\"><button class=\"main\">Save quote <kbd>Ctrl S</kbd></button></div></form>\n",
        Address("/quotes"), token_field(frame), desk.enquiry.line);
}

Html model_fault(const std::string& fault) {
    return panel("fault", "A model is at fault", Html(),
                 html("<p class=\"worse\">{}</p>\n<p>The quote has no price. Other models and quotes go on; "
                      "<a href=\"{}\">what is loaded</a> stands with the models.</p>\n",
                      fault, Address("/models")));
}

Html answer(const QuoteDesk& desk) {
    const bool has_fault = desk.answer != nullptr && desk.answer->model_fault;
    const bool has_answer = desk.answer != nullptr && !has_fault;
    Html result = desk.enquiry.line.empty() ? no_quote_yet(desk.plant) : no_part("start");
    result += has_fault ? model_fault(*desk.answer->model_fault) : no_part("fault");
    result += has_answer ? answer_parts(desk.plant, *desk.answer, desk.view, words("not saved")) : empty_answer_parts();
    return result;
}

Html keys() {
    struct Key {
        const char *key, *does;
    };
    static constexpr Key all[] = {{"Esc", "enquiry line"},    {"Alt 1-9", "quantity"}, {"Ctrl S", "save"},
                                  {"Ctrl O", "saved quotes"}, {"Ctrl P", "print"},     {"?", "all keys"}};
    Html items;
    for (const Key& key : all) items += html("<span><kbd>{}</kbd> {}</span>\n", key.key, key.does);
    return html("<p class=\"keys\" id=\"keys\">{}</p>\n", items);
}

std::string title(const QuoteDesk& desk) {
    if (desk.answer == nullptr) return "Quote desk";
    return reports::request_heading(desk.plant, desk.answer->request).title;
}

}  // namespace

std::string quote_desk_page(const Frame& frame, const QuoteDesk& desk) {
    Frame with_script = frame;
    with_script.place = Place::quotes;
    with_script.scripts.emplace_back("desk.js");
    const bool has_price = desk.answer != nullptr && !desk.answer->model_fault;
    const Html said = has_price ? words(price_text(desk.plant, *desk.answer, desk.view)) : Html();
    const Html left = html("<div class=\"stack side\">{}{}</div>\n",
                           fields_form(desk.plant, desk.models, desk.enquiry.line), save_form(frame, desk));
    return document(
        with_script, title(desk),
        html("<h1 class=\"unseen\">Quote desk</h1>\n{}<p class=\"unseen\" id=\"said\" role=\"status\">{}</p>\n"
             "<div class=\"desk\">{}<div class=\"stack\" id=\"answer\">\n{}</div></div>\n{}",
             line_form(desk.enquiry), said, left, answer(desk), keys()));
}

}  // namespace flutebook::pages
