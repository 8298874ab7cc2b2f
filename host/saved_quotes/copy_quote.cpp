#include "host/saved_quotes/copy_quote.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/base/yaml/document.hpp"
#include "host/orders/request_text.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "ledger/reading/quote_search.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::saved_quotes {

namespace {

using base::Node;

bool is_taken(const ledger::Store& store, const std::string& request) {
    return !ledger::find_quotes(store, {{ledger::RequestIs{request}}, std::nullopt, 1}).quotes.empty();
}

std::string next_number(const ledger::Store& store, const std::string& request) {
    for (int copy = 2;; ++copy)
        if (std::string number = fmt::format("{}-{}", request, copy); !is_taken(store, number)) return number;
}

Node kept_tree(const ledger::SavedQuote& quote) {
    base::Diagnostics complaints;
    auto root = base::parse_document(part_of(quote, "request.yaml"), quote.number + "/request.yaml", complaints);
    if (!root || root->kind != Node::Kind::map)
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("quote {}: its part request.yaml cannot be read; run `flutebook verify`", quote.number));
    return *std::move(root);
}

Node::Entry text_entry(const std::string& key, const std::string& text) {
    return {key, {}, base::text_node(text, {})};
}

// In the place of the key's old value, else behind `behind`, which is there.
void set_value(Node& root, const std::string& key, const std::string& text, const std::string& behind) {
    auto& entries = root.entries;
    const auto find = [&](const std::string& name) {
        return std::find_if(entries.begin(), entries.end(),
                            [&](const Node::Entry& entry) { return entry.key == name; });
    };
    if (const auto old = find(key); old != entries.end())
        old->value = text_entry(key, text).value;
    else if (const auto before = find(behind); before != entries.end())
        entries.insert(before + 1, text_entry(key, text));
    else
        entries.insert(entries.begin(), text_entry(key, text));
}

}  // namespace

CopiedRequest copy_request(const ledger::Store& store, const ledger::SavedQuote& quote, const CopyOptions& asked) {
    const std::string number = asked.number ? *asked.number : next_number(store, quote.request);
    Node root = kept_tree(quote);
    set_value(root, "request", number, "request");
    set_value(root, "copied_from", quote.number, "request");
    set_value(root, "date", base::to_string(asked.date), "copied_from");
    return {number, orders::request_text(root)};
}

}  // namespace flutebook::saved_quotes
