// Two maps become one key by key, what stands in the later counts; `cells cover join ask let` become one name by name.
// A key of `cells` may hold several names: each becomes a key of its own first.
#include "host/box_styles/style_entries.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <optional>
#include <set>

#include "host/base/quoted_text.hpp"
#include "host/box_styles/style_map.hpp"

namespace flutebook::box_styles {

namespace {

using base::Node;

constexpr std::array<std::string_view, 5> joined_by_name = {"cells", "cover", "join", "ask", "let"};

bool is_joined_by_name(const std::string& key) {
    return std::find(joined_by_name.begin(), joined_by_name.end(), key) != joined_by_name.end();
}

Node::Entry* find_entry(Node& map, const std::string& key) {
    const auto found = std::find_if(map.entries.begin(), map.entries.end(),
                                    [&](const Node::Entry& entry) { return entry.key == key; });
    return found == map.entries.end() ? nullptr : &*found;
}

void put_entry(Node& map, const Node::Entry& entry) {
    if (Node::Entry* same = find_entry(map, entry.key))
        *same = entry;
    else
        map.entries.push_back(entry);
}

// "f1 f3: {…}" becomes "f1: {…}, f3: {…}".
void part_names(Node& cells, const fields::Field& at) {
    Node parted = cells;
    parted.entries.clear();
    for (const auto& entry : cells.entries) {
        for (std::size_t begin = 0; begin < entry.key.size();) {
            const std::size_t end = std::min(entry.key.find(' ', begin), entry.key.size());
            if (end > begin) {
                Node::Entry one{entry.key.substr(begin, end - begin), entry.key_place, entry.value};
                one.key_place.column += static_cast<int>(begin);
                if (find_entry(parted, one.key) != nullptr)
                    at.complain_at(one.key_place, "a cell twice: found " + base::shown(one.key) + ", expected it once");
                put_entry(parted, one);
            }
            begin = end + 1;
        }
    }
    cells = std::move(parted);
}

// With a map of its own, what was said of cells that it lacks goes.
void drop_lost_cells(Node& whole, const Node& map) {
    const auto words = words_of_map(map);
    for (const char* key : {"cells", "join"})
        if (Node::Entry* entry = find_entry(whole, key))
            std::erase_if(entry->value.entries, [&](const Node::Entry& cell) {
                return std::find(words.begin(), words.end(), cell.key) == words.end();
            });
}

Node put_together(Node whole, const Node& later) {
    if (const Node* map = later.find("map")) drop_lost_cells(whole, *map);
    for (const auto& entry : later.entries) {
        if (entry.key == "like") continue;
        Node::Entry* same = find_entry(whole, entry.key);
        if (same == nullptr || !is_joined_by_name(entry.key) || same->value.kind != Node::Kind::map ||
            entry.value.kind != Node::Kind::map) {
            put_entry(whole, entry);
            continue;
        }
        for (const auto& inner : entry.value.entries) put_entry(same->value, inner);
    }
    return whole;
}

std::size_t node_count(const Node& node) {
    std::size_t count = 1;
    for (const auto& item : node.items) count += node_count(item);
    for (const auto& entry : node.entries) count += node_count(entry.value);
    return count;
}

// Entries that are like long ones are themselves as long: a file of a few pages could fill the memory.
constexpr std::size_t most_nodes = 200'000;

void resolve_pieces(const fields::Field& entry, Node& style);

// Puts into each entry of a map what it is like.
class LikeResolver {
public:
    using Fallback = std::function<const Node*(const std::string& code)>;

    LikeResolver(const std::vector<fields::Field>& entries, const char* what, Fallback fallback)
        : what_(what), fallback_(std::move(fallback)) {
        for (const auto& entry : entries) {
            Item item{entry, *entry.node(), State::untouched};
            if (Node::Entry* cells = find_entry(item.whole, "cells");
                cells != nullptr && cells->value.kind == Node::Kind::map)
                part_names(cells->value, entry);
            resolve_pieces(entry, item.whole);
            index_.emplace(entry.key(), items_.size());
            items_.push_back(std::move(item));
        }
    }

    // Null where it complained.
    const Node* whole(std::size_t index) {
        Item& item = items_[index];
        if (item.state == State::untouched) {
            item.state = State::in_work;
            item.state = resolve(item) ? State::whole : State::unfit;
        }
        return item.state == State::whole ? &item.whole : nullptr;
    }

private:
    enum class State { untouched, in_work, whole, unfit };
    struct Item {
        fields::Field entry;
        Node whole;
        State state;
    };

    bool resolve(Item& item) {
        if (item.whole.find("like") == nullptr) return true;
        const auto field = fields::MapReader(item.entry).field("like");
        const auto code = field.text();
        if (code.empty()) return false;
        const auto found = index_.find(code);
        const bool is_its_own = code == item.entry.key();
        if (found != index_.end() && !is_its_own) return resolve_like(item, field, found->second);
        const Node* other = fallback_(code);
        if (other != nullptr) return take_over(item, field, *other);
        field.complain(is_its_own
                           ? fmt::format("a {} that is like itself: expected another", what_)
                           : fmt::format("unknown {}: found {}, expected one that is there", what_, base::shown(code)));
        return false;
    }

    bool resolve_like(Item& item, const fields::Field& field, std::size_t index) {
        if (items_[index].state == State::in_work) {
            field.complain(fmt::format("a circle: {} is like {} in the end, expected one that is not",
                                       base::shown(items_[index].entry.key()), base::shown(item.entry.key())));
            return false;
        }
        const Node* other = whole(index);
        return other != nullptr && take_over(item, field, *other);
    }

    bool take_over(Item& item, const fields::Field& field, const Node& other) {
        item.whole = put_together(other, item.whole);
        nodes_ += node_count(item.whole);
        if (nodes_ <= most_nodes) return true;
        field.complain("too much copied by `like`: expected shorter styles, or fewer of them");
        item.whole = {};
        return false;
    }

    const char* what_;
    Fallback fallback_;
    std::vector<Item> items_;
    std::map<std::string, std::size_t> index_;
    std::size_t nodes_ = 0;
};

// The same for the pieces of a style.
void resolve_pieces(const fields::Field& entry, Node& style) {
    Node::Entry* pieces = find_entry(style, "pieces");
    if (pieces == nullptr || pieces->value.kind != Node::Kind::map) return;
    const auto fields = fields::MapReader(entry).field("pieces").entries_if_any();
    std::vector<fields::Field> maps;
    for (const auto& field : fields)
        if (field.is_map()) maps.push_back(field);
    LikeResolver resolver(maps, "piece", [](const std::string&) { return nullptr; });
    for (std::size_t i = 0; i < maps.size(); ++i) {
        const Node* whole = resolver.whole(i);
        Node& piece = find_entry(pieces->value, maps[i].key())->value;
        if (whole != nullptr)
            piece = *whole;
        else
            piece.kind = Node::Kind::refused;
    }
}

void append_node(std::string& text, const Node& node);

void append_text(std::string& text, std::string_view value) {
    text += '"';
    for (const char c : value) {
        if (c == '"' || c == '\\') text += '\\';
        text += c;
    }
    text += '"';
}

void append_entries(std::string& text, const Node& map) {
    const char* comma = "";
    for (const auto& entry : map.entries) {
        text += comma;
        append_text(text, entry.key);
        text += ": ";
        append_node(text, entry.value);
        comma = ", ";
    }
}

void append_items(std::string& text, const Node& list) {
    const char* comma = "";
    for (const auto& item : list.items) {
        text += comma;
        append_node(text, item);
        comma = ", ";
    }
}

void append_node(std::string& text, const Node& node) {
    switch (node.kind) {
        case Node::Kind::text:
            append_text(text, node.text);
            break;
        case Node::Kind::list:
            text += '[';
            append_items(text, node);
            text += ']';
            break;
        case Node::Kind::map:
            text += '{';
            append_entries(text, node);
            text += '}';
            break;
        case Node::Kind::empty:
        case Node::Kind::refused:
            text += "~";
            break;
    }
}

}  // namespace

std::vector<Node::Entry> whole_entries(const fields::Field& table, const std::vector<Node::Entry>& library) {
    std::vector<fields::Field> maps;
    for (const auto& entry : table.entries())
        if (entry.is_map())
            maps.push_back(entry);
        else
            entry.expect_map();
    LikeResolver resolver(maps, "style", [&](const std::string& code) -> const Node* {
        const auto found =
            std::find_if(library.begin(), library.end(), [&](const Node::Entry& entry) { return entry.key == code; });
        return found == library.end() ? nullptr : &found->value;
    });
    std::vector<Node::Entry> result;
    for (std::size_t i = 0; i < maps.size(); ++i) {
        const Node* whole = resolver.whole(i);
        if (whole == nullptr) continue;
        result.push_back({maps[i].key(), maps[i].key_place(), *whole});
    }
    return result;
}

std::string entry_text(const Node::Entry& entry) {
    std::string text = "styles:\n  ";
    append_text(text, entry.key);
    text += ":\n";
    for (const auto& inner : entry.value.entries) {
        text += "    ";
        append_text(text, inner.key);
        text += ": ";
        append_node(text, inner.value);
        text += '\n';
    }
    return text;
}

}  // namespace flutebook::box_styles
