// The newest quotes are tried one by one: most searches find their quote there, or many. If that finds too few, each
// condition's quotes are read from its index and the sets are intersected, so that the work is bounded by the sizes of
// the sets whatever they have in common.
#include "ledger/reading/quote_search.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <string_view>

#include "ledger/store/connection.hpp"

namespace flutebook::ledger {

namespace {

constexpr std::size_t tried_one_by_one = 1000;

// Newest first.
constexpr const char* said_of_quote =
    "SELECT text, number FROM quote_attribute WHERE quote = ? AND name = (SELECT id FROM name WHERE text = ?) "
    "ORDER BY id DESC";

char small_letter(char sign) {
    return sign >= 'A' && sign <= 'Z' ? static_cast<char>(sign - 'A' + 'a') : sign;
}

// `part` is in small letters.
bool holds_part(std::string_view text, std::string_view part) {
    return std::search(text.begin(), text.end(), part.begin(), part.end(),
                       [](char in_text, char in_part) { return small_letter(in_text) == in_part; }) != text.end();
}

std::string in_small_letters(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), small_letter);
    return text;
}

std::int64_t number_of_name(Connection& connection, const std::string& name) {
    auto row = connection.ask_entries("SELECT id FROM name WHERE text = ?");
    row->bind(1, name);
    return row->step() ? row->number(0) : -1;
}

std::int64_t seconds_at(Date day) {
    return std::chrono::sys_seconds(std::chrono::sys_days(day)).time_since_epoch().count();
}

struct SavedSeconds {
    std::int64_t low, high;
};

SavedSeconds seconds_of(const SavedBetween& days) {
    SavedSeconds span{std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max()};
    if (days.from) span.low = seconds_at(*days.from);
    if (days.to) span.high = seconds_at(*days.to) + 24 * 60 * 60 - 1;
    return span;
}

// Whether one quote meets a condition.
class QuoteTrial {
public:
    QuoteTrial(Connection& connection, std::int64_t quote) : connection_(connection), quote_(quote) {}

    bool operator()(const RequestIs& wanted) const {
        auto row = connection_.ask_entries("SELECT 1 FROM quote WHERE id = ? AND request = ?");
        return row->bind(1, quote_).bind(2, wanted.request).step();
    }
    bool operator()(const AttributeIs& wanted) const {
        auto row = connection_.ask_entries(said_of_quote);
        row->bind(1, quote_).bind(2, wanted.name);
        while (row->step())
            if (row->view(0) == wanted.text) return true;
        return false;
    }
    bool operator()(const AttributeHolds& wanted) const {
        const auto part = in_small_letters(wanted.part);
        auto row = connection_.ask_entries(said_of_quote);
        row->bind(1, quote_).bind(2, wanted.name);
        while (row->step())
            if (holds_part(row->view(0), part)) return true;
        return false;
    }
    bool operator()(const AttributeWithin& wanted) const {
        auto row = connection_.ask_entries(said_of_quote);
        row->bind(1, quote_).bind(2, wanted.name);
        while (row->step())
            if (!row->is_nothing(1) && row->number(1) >= wanted.low && row->number(1) <= wanted.high) return true;
        return false;
    }
    bool operator()(const NewestIs& wanted) const {
        auto row = connection_.ask_entries(said_of_quote);
        row->bind(1, quote_).bind(2, wanted.name);
        return row->step() ? row->view(0) == wanted.text : wanted.if_unsaid == NewestIs::IfUnsaid::matches;
    }
    bool operator()(const SavedBetween& wanted) const {
        const auto span = seconds_of(wanted);
        auto row = connection_.ask_entries("SELECT 1 FROM quote WHERE id = ? AND written BETWEEN ? AND ?");
        return row->bind(1, quote_).bind(2, span.low).bind(3, span.high).step();
    }

private:
    Connection& connection_;
    std::int64_t quote_;
};

// The quotes that a condition holds of, read from its index.
class MatchingSet {
public:
    MatchingSet(Connection& connection, std::size_t quotes) : connection_(connection), is_member_(quotes + 1, false) {}

    std::vector<bool> of(const QuoteCondition& condition) {
        std::visit([&](const auto& wanted) { read(wanted); }, condition);
        return std::move(is_member_);
    }

private:
    void add(std::int64_t quote) {
        if (quote > 0 && static_cast<std::size_t>(quote) < is_member_.size())
            is_member_[static_cast<std::size_t>(quote)] = true;
    }
    void add_all(Lease& rows) {
        while (rows->step()) add(rows->number(0));
    }

    void read(const RequestIs& wanted) {
        auto rows = connection_.ask_entries("SELECT id FROM quote WHERE request = ?");
        rows->bind(1, wanted.request);
        add_all(rows);
    }
    void read(const AttributeIs& wanted) {
        const auto name = number_of_name(connection_, wanted.name);
        auto rows = connection_.ask_entries("SELECT quote FROM quote_attribute WHERE name = ? AND text = ?");
        rows->bind(1, name).bind(2, wanted.text);
        add_all(rows);
    }
    void read(const AttributeHolds& wanted) {
        const auto name = number_of_name(connection_, wanted.name);
        const auto part = in_small_letters(wanted.part);
        auto rows =
            connection_.ask_entries("SELECT quote, text FROM quote_attribute WHERE name = ? AND text IS NOT NULL");
        rows->bind(1, name);
        while (rows->step())
            if (holds_part(rows->view(1), part)) add(rows->number(0));
    }
    void read(const AttributeWithin& wanted) {
        const auto name = number_of_name(connection_, wanted.name);
        auto rows =
            connection_.ask_entries("SELECT quote FROM quote_attribute WHERE name = ? AND number >= ? AND number <= ?");
        rows->bind(1, name).bind(2, wanted.low).bind(3, wanted.high);
        add_all(rows);
    }
    void read(const NewestIs& wanted) {
        const auto name = number_of_name(connection_, wanted.name);
        if (wanted.if_unsaid == NewestIs::IfUnsaid::matches) is_member_.assign(is_member_.size(), true);
        std::vector<std::int64_t> newest(is_member_.size(), -1);
        auto rows =
            connection_.ask_entries("SELECT quote, text, id FROM quote_attribute WHERE name = ? AND text IS NOT NULL");
        rows->bind(1, name);
        while (rows->step()) {
            const auto quote = static_cast<std::size_t>(rows->number(0));
            if (quote >= newest.size() || newest[quote] > rows->number(2)) continue;
            newest[quote] = rows->number(2);
            is_member_[quote] = rows->view(1) == wanted.text;
        }
    }
    void read(const SavedBetween& wanted) {
        const auto span = seconds_of(wanted);
        auto rows = connection_.ask_entries("SELECT id FROM quote WHERE written BETWEEN ? AND ?");
        rows->bind(1, span.low).bind(2, span.high);
        add_all(rows);
    }

    Connection& connection_;
    std::vector<bool> is_member_;
};

std::int64_t newest_of_all(Connection& connection) {
    auto row = connection.ask_entries("SELECT coalesce(max(id), 0) FROM quote");
    row->step();
    return row->number(0);
}

bool meets_all(Connection& connection, std::int64_t quote, const std::vector<QuoteCondition>& conditions) {
    return std::all_of(conditions.begin(), conditions.end(),
                       [&](const auto& condition) { return std::visit(QuoteTrial(connection, quote), condition); });
}

// Those that mostly hold of few come first.
std::vector<const QuoteCondition*> in_order_of_size(const std::vector<QuoteCondition>& conditions) {
    std::vector<const QuoteCondition*> ordered;
    for (const auto& condition : conditions) ordered.push_back(&condition);
    std::stable_partition(ordered.begin(), ordered.end(), [](const QuoteCondition* condition) {
        return std::holds_alternative<RequestIs>(*condition) || std::holds_alternative<AttributeIs>(*condition) ||
               std::holds_alternative<SavedBetween>(*condition);
    });
    return ordered;
}

// The greatest `wanted` numbers up to `newest` that are in every set.
void cut_sets(Connection& connection, std::int64_t newest, const std::vector<QuoteCondition>& conditions,
              std::size_t wanted, std::vector<std::int64_t>& found) {
    const auto quotes = static_cast<std::size_t>(newest);
    std::vector<bool> in_all(quotes + 1, true);
    in_all[0] = false;
    for (const auto* condition : in_order_of_size(conditions)) {
        if (std::find(in_all.begin(), in_all.end(), true) == in_all.end()) return;
        const auto set = MatchingSet(connection, quotes).of(*condition);
        for (std::size_t quote = 0; quote <= quotes; ++quote) in_all[quote] = in_all[quote] && set[quote];
    }
    for (auto quote = quotes; quote > 0 && found.size() < wanted; --quote)
        if (in_all[quote]) found.push_back(static_cast<std::int64_t>(quote));
}

std::vector<std::int64_t> matching(Connection& connection, const QuoteSearch& search, std::int64_t newest) {
    const auto wanted = search.limit + 1;
    std::vector<std::int64_t> found;
    const auto first_untried = std::max<std::int64_t>(newest - static_cast<std::int64_t>(tried_one_by_one), 0);
    for (; newest > first_untried && found.size() < wanted; --newest)
        if (meets_all(connection, newest, search.conditions)) found.push_back(newest);
    if (newest > 0 && found.size() < wanted) cut_sets(connection, newest, search.conditions, wanted, found);
    return found;
}

FoundQuote read_found(const Store& store, std::int64_t id) {
    auto& connection = store.connection();
    FoundQuote found;
    {
        auto row = connection.ask_entries(
            "SELECT q.request, w.text, q.written, (SELECT count(*) FROM quote AS r WHERE r.request = q.request AND "
            "r.id <= q.id), (SELECT max(id) FROM quote AS r WHERE r.request = q.request AND r.id < q.id) "
            "FROM quote AS q JOIN name AS w ON w.id = q.who WHERE q.id = ?");
        row->bind(1, id);
        if (!row->step())
            connection.give_up(fmt::format("quote {} is missing; run `flutebook verify`", quote_number(id)));
        found.number = quote_number(id);
        found.request = row->text(0);
        found.who = row->text(1);
        found.when = std::chrono::sys_seconds(std::chrono::seconds(row->number(2)));
        found.revision = row->number(3);
        if (!row->is_nothing(4)) found.previous = quote_number(row->number(4));
    }
    found.records = records_of(store, found.number);
    return found;
}

}  // namespace

const QuoteAttribute* FoundQuote::find(const std::string& name) const {
    for (auto record = records.rbegin(); record != records.rend(); ++record)
        for (const auto& attribute : record->attributes)
            if (attribute.name == name) return &attribute;
    return nullptr;
}

std::string FoundQuote::text(const std::string& name) const {
    const auto* attribute = find(name);
    const auto* words = attribute == nullptr ? nullptr : std::get_if<std::string>(&attribute->value);
    return words == nullptr ? std::string() : *words;
}

std::optional<std::int64_t> FoundQuote::number_of(const std::string& name) const {
    const auto* attribute = find(name);
    const auto* value = attribute == nullptr ? nullptr : std::get_if<std::int64_t>(&attribute->value);
    return value == nullptr ? std::nullopt : std::optional(*value);
}

FoundQuotes find_quotes(const Store& store, const QuoteSearch& search) {
    auto& connection = store.connection();
    const Snapshot snapshot(store);
    auto newest = newest_of_all(connection);
    if (search.before) {
        const auto before = parse_quote_number(*search.before);
        if (!before)
            connection.refuse(fmt::format("no number of a quote: found `{}`; give one like Q000001", *search.before));
        newest = std::min(newest, *before - 1);
    }
    auto numbers = matching(connection, search, newest);
    FoundQuotes found{{}, numbers.size() > search.limit};
    if (found.has_more) numbers.pop_back();
    for (const auto number : numbers) found.quotes.push_back(read_found(store, number));
    return found;
}

std::optional<FoundQuote> find_quote_records(const Store& store, const std::string& number) {
    const auto id = parse_quote_number(number);
    if (!id) return std::nullopt;
    {
        auto row = store.connection().ask_entries("SELECT 1 FROM quote WHERE id = ?");
        row->bind(1, *id);
        if (!row->step()) return std::nullopt;
    }
    return read_found(store, *id);
}

}  // namespace flutebook::ledger
