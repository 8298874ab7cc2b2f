#include "tests/unit/pages/demo_desk.hpp"

#include "host/base/errors.hpp"
#include "host/orders/enquiry.hpp"
#include "host/orders/request_text.hpp"
#include "host/quoting/quote.hpp"

namespace flutebook::fixture {

const plant::Plant& demo_plant() {
    static const plant::Plant plant = plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo");
    return plant;
}

const engine::Engine& demo_engine() {
    static const engine::Engine engine = engine::Engine::start(demo_plant(), FLUTEBOOK_PLUGIN_DIR);
    return engine;
}

AnsweredLine answered(const std::string& line, const answers::QuoteOptions& asked) {
    AnsweredLine result{{line, "", {}}, std::nullopt};
    if (line.empty()) return result;
    try {
        const base::Node tree = orders::read_enquiry(demo_plant(), line, *base::parse_date("2026-10-15"));
        result.enquiry.understood = orders::enquiry_in_words(tree);
        const orders::Request request =
            orders::read_request(demo_plant(), tree, orders::enquiry_name, orders::request_text(tree), std::nullopt,
                                 demo_engine().extras_check(demo_plant()));
        answers::QuoteOptions options = asked;
        options.has_drawings = true;
        result.answer = quoting::quote(demo_plant(), demo_engine(), request, options);
    } catch (const InputError& error) {
        result.enquiry.complaints = error.lines();
    }
    return result;
}

pages::Frame accountant() {
    pages::Frame frame;
    frame.plant = demo_plant().name;
    frame.person = "M. Example";
    frame.role = pages::Role::accountant;
    frame.token = "token-of-the-session";
    frame.assets = pages::Address("assets");
    return frame;
}

answers::ListedQuote listed(const answers::RequestAnswer& answer) {
    answers::ListedQuote quote{};
    quote.number = "Q000007";
    quote.request = answer.request.number;
    quote.who = "M. Example";
    quote.when = std::chrono::sys_days(answer.request.date);
    quote.revision = 2;
    quote.previous = "Q000003";
    quote.customer = "Ashlar Tiles";
    quote.style = answer.request.style;
    quote.board = demo_plant().boards[answer.request.board].code;
    quote.size = answers::ListedQuote::Size{400, 300, 250};
    quote.quantities = answer.request.quantities;
    quote.first_price = answer.quantities.front().quote->price_per_thousand;
    quote.last_price = answer.quantities.back().quote->price_per_thousand;
    quote.currency = demo_plant().currency;
    quote.currency_minor_units = demo_plant().currency_minor_units;
    quote.state = "lost";
    quote.marks = {{"lost", "8 % above the price of their last lot", "M. Example", quote.when}};
    return quote;
}

std::string desk_page(const pages::FormFields& query) {
    const std::string line = pages::asked_line(query);
    pages::BesideView beside;
    beside.asked = pages::beside_fields(query);
    const pages::AnswerView view = pages::answer_view(pages::desk_address(line, beside.asked), query);
    answers::QuoteOptions asked;
    AnsweredLine result = answered(line);
    if (result.answer && !view.figure.empty()) {
        asked.explain = pages::asked_figure(view, view.quantity.value_or(result.answer->request.quantities.front()));
        result = answered(line, asked);
    }
    return pages::quote_desk_page(accountant(), {demo_plant(), demo_engine().graph().models, result.enquiry, view,
                                                 result.answer ? &*result.answer : nullptr, beside});
}

}  // namespace flutebook::fixture
