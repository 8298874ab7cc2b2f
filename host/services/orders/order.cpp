#include "host/services/orders/order.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "host/orders/order_record_json.hpp"
#include "host/production/document_format.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "ledger/reading/entry_search.hpp"
#include "ledger/reading/quotes.hpp"

namespace flutebook::services {

namespace {

// The terms of a quantity: one, or of a set one for each piece.
std::vector<orders::OrderRecord> terms_in(const ledger::Store& store, const ledger::SavedQuote& quote,
                                          double quantity) {
    std::vector<orders::OrderRecord> result;
    std::vector<std::string> held;
    for (const ledger::QuotePart& part : quote.parts)
        if (auto terms = part.name.rfind("terms/", 0) == 0 ? orders::order_record_of(part.content) : std::nullopt) {
            const double of = terms->piece.empty() ? terms->quantity : terms->sets;
            if (of == quantity)
                result.push_back(std::move(*terms));
            else if (std::string text = fmt::format("{:.0f}", of); held.empty() || held.back() != text)
                held.push_back(std::move(text));
        }
    if (!result.empty()) return result;
    throw LedgerError(
        LedgerError::Kind::refused,
        fmt::format("{}: quote {} does not hold this quantity: found {}; take one of {}, or quote it anew",
                    store.file(), quote.number, quantity, fmt::join(held, ", ")));
}

// An order is only good for what can be posted to it.
void expect_postable(const ledger::Store& store, const std::string& number) {
    const bool is_stripped = number.front() != ' ' && number.back() != ' ';
    if (is_stripped && number.size() <= production::longest_name) return;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("{}: not a usable order number: found '{}'; give at most {} "
                                  "bytes, no space at either end",
                                  store.file(), number, production::longest_name));
}

// A number stands either for one order or for a set.
void expect_free(const ledger::Store& store, const std::string& number) {
    if (!ledger::find_order(store, number) && orders_of_set(store, number).empty()) return;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("{}: order {} was taken before; give another number", store.file(), number));
}

// Machines that came after the order was taken are allowed what the plant allows them now.
void add_new_machines(orders::OrderRecord& order, const plant::Plant& plant) {
    for (const auto& corrugator : plant.corrugators)
        if (order.find_corrugator(corrugator.code) == nullptr)
            order.corrugators.push_back({corrugator.code, corrugator.run_waste, corrugator.roll_loss,
                                         corrugator.order_change_m * order.paid_changes()});
    for (const auto& converter : plant.converters)
        if (order.find_converter(converter.code) == nullptr)
            order.converters.push_back({converter.code, converter.kind, converter.run_waste, converter.setup_sheets});
}

// Where the record cannot be read.
[[noreturn]] void refuse_record(const ledger::Store& store, const std::string& number) {
    throw LedgerError(
        LedgerError::Kind::unfit,
        fmt::format("{}: order {}: its record cannot be read; run `flutebook verify`", store.file(), number));
}

orders::OrderRecord record_of(const ledger::Store& store, const ledger::SavedOrder& saved) {
    for (const auto& part : saved.order.parts)
        if (part.name == orders::order_record_part)
            if (auto order = orders::order_record_of(part.content)) return std::move(*order);
    refuse_record(store, saved.order.number);
}

}  // namespace

std::vector<orders::OrderRecord> take_order(ledger::Store& store, const OrderOptions& asked) {
    const ledger::SavedQuote quote = saved_quotes::saved_quote(store, asked.quote);
    std::vector<orders::OrderRecord> result = terms_in(store, quote, asked.quantity);
    const std::string number =
        asked.number.empty() ? fmt::format("{}-{:.0f}", quote.number, asked.quantity) : asked.number;
    std::vector<ledger::OrderDraft> drafts;
    for (orders::OrderRecord& order : result) {
        order.quote = quote.number;
        order.number = order.piece.empty() ? number : number + "/" + order.piece;
        expect_postable(store, order.number);
        drafts.push_back({order.number,
                          order.quote,
                          static_cast<std::int64_t>(order.quantity),
                          {{orders::order_record_part, orders::to_json(order)}}});
    }
    expect_free(store, number);
    ledger::take_orders(store, drafts, asked.who);
    return result;
}

std::vector<std::string> orders_of_set(const ledger::Store& store, const std::string& number) {
    std::vector<std::string> result;
    for (std::string& order : ledger::order_numbers_under(store, number)) {
        const orders::OrderRecord record = record_of(store, ledger::find_order(store, order).value());
        if (!record.piece.empty() && record.set_number() == number) result.push_back(std::move(order));
    }
    return result;
}

std::optional<orders::OrderRecord> taken_order(const ledger::Store& store, const plant::Plant& plant,
                                               const std::string& number) {
    const auto saved = ledger::find_order(store, number);
    if (!saved) return std::nullopt;
    orders::OrderRecord order = record_of(store, *saved);
    add_new_machines(order, plant);
    return order;
}

answers::OrderList order_list(const ledger::Store& store, std::size_t page, std::size_t limit) {
    const ledger::Snapshot snapshot(store);
    const std::vector<std::string> numbers = ledger::order_numbers(store);
    answers::OrderList list;
    list.all = numbers.size();
    list.pages = std::max<std::size_t>((numbers.size() + limit - 1) / limit, 1);
    list.page = std::clamp<std::size_t>(page, 1, list.pages);
    for (std::size_t i = (list.page - 1) * limit; i < std::min(list.page * limit, numbers.size()); ++i) {
        const auto saved = ledger::find_order(store, numbers[numbers.size() - 1 - i]).value();
        list.orders.push_back(
            {record_of(store, saved), saved.who, saved.when, ledger::has_entries(store, saved.order.number)});
    }
    return list;
}

}  // namespace flutebook::services
