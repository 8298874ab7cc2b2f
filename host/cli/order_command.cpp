#include "host/cli/order_command.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/cli/person.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_report.hpp"
#include "host/services/orders/order.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::cli {

namespace {

answers::Json order_json(const orders::OrderRecord& order) {
    return {{"order", order.number},      {"quote", order.quote}, {"quantity", order.quantity},
            {"customer", order.customer}, {"board", order.board}, {"corrugator", order.corrugator},
            {"route", order.route}};
}

std::string order_text(const orders::OrderRecord& order) {
    std::string way = order.corrugator;
    for (const std::string& converter : order.route) way += " > " + converter;
    return fmt::format("order {} taken from quote {}: {:.0f} of {} for {}, by {}\n", order.number, order.quote,
                       order.quantity, order.style, order.customer, way);
}

}  // namespace

ExitCode run_quote_show(const std::string& ledger, const QuoteShowCommand& asked, Output& output) {
    const auto store = ledger::Store::open_for_reading(ledger);
    const ledger::SavedQuote quote = services::saved_quote(store, asked.quote);
    const answers::QuoteDocument document = services::saved_document(quote);
    if (asked.form == OutputFormat::json)
        output.write(services::part_of(quote, "answer.json"));
    else if (document.version == 0)
        output.write(services::part_of(quote, "answer.txt"));
    else
        output.write(render::to_text(reports::quote_report(document.plant, document.answer, document.asked)) + "\n");
    return ExitCode::done;
}

ExitCode run_order(const std::string& ledger, const OrderCommand& asked, Output& output) {
    auto store = ledger::Store::open_for_writing(ledger, ledger::IfMissing::refuse);
    const auto order = services::take_order(store, {asked.quote, asked.quantity, asked.number, person_at_work()});
    output.write(asked.form == OutputFormat::json ? answers::document_text("order", order_json(order))
                                                  : order_text(order));
    return ExitCode::done;
}

}  // namespace flutebook::cli
