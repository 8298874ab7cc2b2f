#include "host/saved_quotes/find_quotes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "host/saved_quotes/quote_attributes.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::saved_quotes {

namespace {

using answers::ListedQuote;
using answers::QuoteMark;

constexpr const char* open_state = "open";

void add_size_conditions(std::vector<ledger::QuoteCondition>& conditions, const SizeSearch& size) {
    static constexpr std::array names = {"length", "width", "height"};
    for (std::size_t i = 0; i < size.lengths_mm.size() && i < names.size(); ++i) {
        const double length = size.lengths_mm[i];
        const double by = length * size.within_share + size.within_mm;
        conditions.emplace_back(
            ledger::AttributeWithin{names[i], to_micrometres(length - by), to_micrometres(length + by)});
    }
}

ledger::QuoteSearch search_for(const FindOptions& asked) {
    ledger::QuoteSearch search;
    auto& conditions = search.conditions;
    if (asked.request) conditions.emplace_back(ledger::RequestIs{*asked.request});
    if (asked.customer) conditions.emplace_back(ledger::AttributeHolds{"customer", *asked.customer});
    if (asked.board) conditions.emplace_back(ledger::AttributeIs{"board", *asked.board});
    if (asked.style) conditions.emplace_back(ledger::AttributeIs{"style", *asked.style});
    if (asked.size) add_size_conditions(conditions, *asked.size);
    if (asked.from || asked.to) conditions.emplace_back(ledger::SavedBetween{asked.from, asked.to});
    using IfUnsaid = ledger::NewestIs::IfUnsaid;
    if (asked.state)
        conditions.emplace_back(ledger::NewestIs{"state", *asked.state,
                                                 *asked.state == open_state ? IfUnsaid::matches : IfUnsaid::differs});
    search.before = asked.before;
    search.limit = asked.limit;
    return search;
}

std::vector<double> numbers_in(const std::string& text) {
    std::vector<double> result;
    const char* const end = text.data() + text.size();
    for (const char* at = text.data(); at < end; ++at) {
        double value = 0;
        const auto read = std::from_chars(at, end, value);
        if (read.ec != std::errc()) break;
        result.push_back(value);
        at = read.ptr;
    }
    return result;
}

std::optional<Money> price_in(const ledger::FoundQuote& found, const char* name) {
    const auto amount = found.number_of(name);
    return amount ? std::optional(Money::of_ten_thousandths(*amount)) : std::nullopt;
}

std::optional<ListedQuote::Size> size_of(const ledger::FoundQuote& found) {
    const auto length = found.number_of("length");
    const auto width = found.number_of("width");
    if (!length || !width) return std::nullopt;
    return ListedQuote::Size{to_millimetres(*length), to_millimetres(*width),
                             to_millimetres(found.number_of("height").value_or(0))};
}

std::string text_in(const ledger::QuoteRecord& record, const std::string& name) {
    for (const auto& attribute : record.attributes)
        if (attribute.name == name)
            if (const auto* text = std::get_if<std::string>(&attribute.value)) return *text;
    return "";
}

std::vector<QuoteMark> marks_in(const std::vector<ledger::QuoteRecord>& records) {
    std::vector<QuoteMark> result;
    for (const auto& record : records)
        if (record.kind == mark_kind)
            result.push_back({text_in(record, "state"), text_in(record, "why"), record.who, record.when});
    return result;
}

ListedQuote listed(const ledger::FoundQuote& found) {
    ListedQuote result{};
    result.number = found.number;
    result.request = found.request;
    result.who = found.who;
    result.when = found.when;
    result.revision = found.revision;
    result.previous = found.previous;
    if (const std::string from = found.text("copied_from"); !from.empty()) result.copied_from = from;
    result.customer = found.text("customer");
    result.style = found.text("style");
    result.board = found.text("board");
    result.size = size_of(found);
    result.quantities = numbers_in(found.text("quantities"));
    result.first_price = price_in(found, "price_first");
    result.last_price = price_in(found, "price_last");
    result.currency = found.text("currency");
    result.currency_minor_units = static_cast<int>(found.number_of("decimals").value_or(2));
    result.marks = marks_in(found.records);
    result.state = result.marks.empty() ? open_state : result.marks.back().state;
    return result;
}

void add_records_of(ledger::Store& store, const std::vector<std::string>& numbers, const std::string& who) {
    constexpr std::size_t in_one_act = 500;
    KeptAttributes kept;
    std::vector<ledger::RecordOfQuote> records;
    for (const std::string& number : numbers) {
        records.push_back({number, {ledger::found_by_kind, kept.of(saved_quote(store, number))}});
        if (records.size() < in_one_act) continue;
        ledger::add_records(store, records, who);
        records.clear();
    }
    if (!records.empty()) ledger::add_records(store, records, who);
}

}  // namespace

std::size_t record_older_quotes(const std::string& ledger_file, const std::string& who) {
    if (ledger::quotes_without(ledger::Store::open_for_reading(ledger_file), ledger::found_by_kind).empty()) return 0;
    auto store = ledger::Store::open_for_writing(ledger_file, ledger::IfMissing::refuse);
    const auto numbers = ledger::quotes_without(store, ledger::found_by_kind);
    add_records_of(store, numbers, who);
    return numbers.size();
}

answers::QuoteList find_quotes(const ledger::Store& store, const FindOptions& asked) {
    const auto found = ledger::find_quotes(store, search_for(asked));
    answers::QuoteList result;
    for (const auto& quote : found.quotes) result.quotes.push_back(listed(quote));
    result.has_more = found.has_more;
    return result;
}

ListedQuote listed_quote(const ledger::Store& store, const std::string& number) {
    const auto found = ledger::find_quote_records(store, number);
    if (!found) static_cast<void>(saved_quote(store, number));  // refuses, in the one wording
    return listed(found.value());
}

QuoteMark mark_quote(ledger::Store& store, const std::string& number, const std::string& state, const std::string& why,
                     const std::string& who) {
    if (state == "lost" && why.empty())
        throw LedgerError(LedgerError::Kind::refused,
                          fmt::format("{}: quote {}: lost without a reason; give it with --why", store.file(), number));
    ledger::RecordOfQuote record{number, {mark_kind, {{"state", state}}}};
    if (!why.empty()) record.record.attributes.push_back({"why", why});
    ledger::add_records(store, {&record, 1}, who);
    return listed_quote(store, number).marks.back();
}

}  // namespace flutebook::saved_quotes
