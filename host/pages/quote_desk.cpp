#include "host/pages/quote_desk.hpp"

#include <fmt/format.h>

#include "host/orders/enquiry_fields.hpp"
#include "host/pages/answer_parts.hpp"
#include "host/pages/ladder.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/reports/quote_report.hpp"

namespace flutebook::pages {

namespace {

constexpr std::size_t least_plies_of_a_box = 3;  // fewer do not fold

// Three lines that this plant understands: of its own boards, in the unit that its people say.
std::vector<std::string> examples(const plant::Plant& plant) {
    const bool is_metric = plant.units == plant::Units::metric;
    const plant::Board* first = nullptr;
    const plant::Board* last = nullptr;
    for (const plant::Board& board : plant.boards) {
        if (board.plies.size() < least_plies_of_a_box) continue;
        if (first == nullptr) first = &board;
        last = &board;
    }
    if (first == nullptr) return {};
    return {fmt::format("0201 {} {} 500 1000 5000 18%", is_metric ? "400x300x250" : "16x12x10", last->code),
            fmt::format("0427 {} {} 2000 20%", is_metric ? "250x180x60" : "10x7x2", first->code),
            fmt::format("0200 {} {} 800 15% customer=\"Ashlar Tiles\"", is_metric ? "600x400x400" : "24x16x16",
                        last->code)};
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

bool has_price(const QuoteDesk& desk) {
    return desk.answer != nullptr && !desk.answer->model_fault;
}

double quantity_shown(const QuoteDesk& desk) {
    const auto shown = shown_quantity(*desk.answer, desk.view);
    return shown ? desk.answer->quantities[*shown].quantity() : desk.answer->request.quantities.front();
}

BesideWhat beside_what(const QuoteDesk& desk) {
    return {desk.plant, desk.enquiry.line, quantity_shown(desk)};
}

// Another way is the same enquiry, made on that way alone; by the machines that it takes where they are others.
class WaysWalk : public render::FigureWalk {
public:
    explicit WaysWalk(const QuoteDesk& desk) : desk_(desk) {
        if (const auto shown = shown_quantity(*desk.answer, desk.view))
            if (const auto& quote = desk.answer->quantities[*shown].quote) quote_ = &*quote;
    }

    [[nodiscard]] std::string address(const std::string& figure) const override {
        for (std::size_t i = 0; quote_ != nullptr && i < quote_->runners_up.size(); ++i)
            if (figure == way_figure(i)) return address_of(quote_->runners_up[i]).text();
        return Address::here().text();
    }

    [[nodiscard]] std::string opened(const std::string& /*figure*/) const override { return ""; }

private:
    [[nodiscard]] Address address_of(const answers::RunnerUp& next) const {
        orders::EnquiryFields fields = orders::enquiry_fields(desk_.plant, desk_.enquiry.line);
        if (next.route != quote_->route) fields.route = fmt::format("{}", fmt::join(next.route, " "));
        const std::string line = next.route == quote_->route ? desk_.enquiry.line : orders::enquiry_line(fields);
        return desk_address(line, without_way(desk_.beside.asked))
            .with(beside_query::corrugator, *next.way.corrugator)
            .with(beside_query::roll, fmt::format("{}", *next.way.roll_width_mm))
            .with(beside_query::ups, fmt::format("{}", *next.way.ups))
            .with("quantity", fmt::format("{:.0f}", quote_->quantity));
    }

    const QuoteDesk& desk_;
    const answers::Quote* quote_ = nullptr;
};

bool is_way_asked(const QuoteDesk& desk) {
    return without_way(desk.beside.asked).size() != desk.beside.asked.size();
}

Html approver_field(const QuoteDesk& desk) {
    if (!desk.needs_approval) return {};
    return html(
        "<label class=\"field\"><span>Approved by <span class=\"unit\">the profit is below the plant's limit</span>"
        "</span><input name=\"approver\" id=\"approver\" autocomplete=\"off\"></label>");
}

// Stands with the price that it saves.
Html save_form(const Frame& frame, const QuoteDesk& desk) {
    if (is_way_asked(desk) || !frame.may(Role::accountant)) return {};
    return html(
        "<form class=\"save end\" id=\"save\" method=\"post\" action=\"{}\" aria-label=\"Save\">{}"
        "<input type=\"hidden\" name=\"line\" value=\"{}\">{}"
        "<button class=\"main\">Save quote <kbd>Ctrl S</kbd></button></form>\n",
        Address("/quotes"), token_field(frame), desk.enquiry.line, approver_field(desk));
}

Html model_fault(const plant::Plant& plant, const std::string& fault) {
    return panel("fault", "A model is at fault", Html(),
                 html("<p class=\"worse\">{}</p>\n<p>The quote has no price. Other models and quotes go on; "
                      "<a href=\"{}\">what is loaded</a> stands with the models.</p>\n",
                      told(&plant, fault), Address("/models")));
}

Html priced_parts(const Frame& frame, const QuoteDesk& desk) {
    const WaysWalk ways(desk);
    return answer_parts(desk.plant, *desk.answer, desk.view,
                        {html("not saved; money in {}", desk.plant.currency),
                         beside_part(beside_what(desk), desk.beside), &ways, save_form(frame, desk)});
}

Html answer(const Frame& frame, const QuoteDesk& desk) {
    const bool has_fault = desk.answer != nullptr && desk.answer->model_fault;
    Html result = desk.answer == nullptr ? no_quote_yet(desk.plant) : no_part("start");
    result += has_fault ? model_fault(desk.plant, *desk.answer->model_fault) : no_part("fault");
    return result + (has_price(desk) ? priced_parts(frame, desk) : empty_answer_parts());
}

Html what_if(const QuoteDesk& desk) {
    return has_price(desk) ? what_if_form(beside_what(desk), desk.beside) : html("<div id=\"what-if\" hidden></div>\n");
}

Html keys() {
    struct Key {
        const char *key, *does;
    };
    static constexpr Key all[] = {{"Esc", "enquiry line"},    {"Alt 1-9", "quantity"}, {"Ctrl S", "save"},
                                  {"Ctrl O", "saved quotes"}, {"Ctrl P", "print"},     {"?", "all keys"}};
    Html items;
    for (const Key& key : all) items += html("<span><kbd>{}</kbd> {}</span>\n", key.key, key.does);
    return html("<p class=\"keys\" id=\"keys\" tabindex=\"-1\">{}</p>\n", items);
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
    const Html said = has_price(desk) ? words(price_text(desk.plant, *desk.answer, desk.view)) : Html();
    const Html carried = carried_fields(desk.beside.asked);
    const Html left = html("<div class=\"stack side\">{}{}</div>\n",
                           fields_form(desk.plant, desk.models, desk.enquiry.line, carried), what_if(desk));
    return document(
        with_script, title(desk),
        html("<h1 class=\"unseen\">Quote desk</h1>\n{}<p class=\"unseen\" id=\"said\" role=\"status\">{}</p>\n"
             "<div class=\"desk\">{}<div class=\"stack\" id=\"answer\">\n{}</div></div>\n{}",
             line_form(desk.plant, desk.enquiry, carried), said, left, answer(frame, desk), keys()));
}

}  // namespace flutebook::pages
