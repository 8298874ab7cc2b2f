#include "host/orders/request_text.hpp"

#include <algorithm>

namespace flutebook::orders {

namespace {

using base::Node;

// Written as it is, such a text reads back as it was: no sign that YAML gives a meaning, and no edge of spaces.
bool is_safe_bare(const std::string& text) {
    static const std::string safe = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-/+ ";
    const bool is_signed = text.size() > 1 && text[0] == '-' && text[1] >= '0' && text[1] <= '9';
    return !text.empty() && text.front() != ' ' && text.back() != ' ' && (text.front() != '-' || is_signed) &&
           text.find_first_not_of(safe) == std::string::npos;
}

std::string scalar_text(const Node& node) {
    if (!node.quoted && is_safe_bare(node.text)) return node.text;
    std::string result = "\"";
    for (const char c : node.text) {
        if (c == '"' || c == '\\') result += '\\';
        result += c;
    }
    return result + "\"";
}

std::string flow_text(const Node& node);

std::string entries_text(const Node& map) {
    std::string result;
    for (const Node::Entry& entry : map.entries)
        result += (result.empty() ? "" : ", ") + entry.key + ": " + flow_text(entry.value);
    return result;
}

// On one line.
std::string flow_text(const Node& node) {
    std::string items;
    switch (node.kind) {
        case Node::Kind::text:
            return scalar_text(node);
        case Node::Kind::list:
            for (const Node& item : node.items) items += (items.empty() ? "" : ", ") + flow_text(item);
            return "[" + items + "]";
        case Node::Kind::map:
            return "{" + entries_text(node) + "}";
        case Node::Kind::empty:
        case Node::Kind::refused:
            break;
    }
    return "";
}

}  // namespace

std::string request_text(const Node& root) {
    std::string result;
    for (const Node::Entry& entry : root.entries) result += entry.key + ": " + flow_text(entry.value) + "\n";
    return result;
}

}  // namespace flutebook::orders
