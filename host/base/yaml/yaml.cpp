// The one file that touches yaml-cpp: its stream of events becomes a tree of nodes.
//
// Events, not its own tree: only they show aliases, tags, quoting and duplicate keys, and where each thing stood. A
// value with a tag or an anchor is marked at that property, so the byte at the mark tells. Marks count bytes from 0.
#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <cstddef>
#include <sstream>
#include <unordered_set>
#include <utility>
#include <vector>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"
#include "host/base/yaml/document.hpp"
#include "host/base/yaml/file.hpp"

namespace flutebook::base {

namespace {

// Ends the parsing of a file whose rest is not worth reading.
struct ParseStop {
    Place place;
    std::string why;
};

constexpr std::size_t longest_text = 1000;

std::optional<std::string> why_refused(const std::string& value) {
    if (value.size() > longest_text) return "a text of more than 1000 bytes, expected at most 1000";
    const auto fault = first_fault(value);
    if (!fault) return std::nullopt;
    const bool is_invisible = character_at(value, *fault).fault == CharacterFault::invisible;
    return (is_invisible ? fault_text(value, *fault) : "a line break or control character") +
           ", expected one plain line";
}

class TreeBuilder : public YAML::EventHandler {
public:
    TreeBuilder(const std::string& text, const std::string& file, Diagnostics& complaints)
        : text_(text), file_(file), complaints_(complaints) {}

    Node take_root() { return std::move(root_); }

    void OnDocumentStart(const YAML::Mark& mark) override {
        if (has_document_) give_up(mark, "a second document starts here, expected one document a file");
        has_document_ = true;
    }
    void OnDocumentEnd() override {}

    void OnNull(const YAML::Mark& mark, YAML::anchor_t) override { accept(mark, Node::Kind::empty, ""); }

    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
        complain(mark, "an alias, expected the value itself");
        accept(mark, Node::Kind::refused, "");
    }

    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t, const std::string& value) override {
        if (const auto why = why_refused(value)) {
            complain(mark, *why);
            accept(mark, Node::Kind::refused, "");
            return;
        }
        if (Node* result = accept(mark, Node::Kind::text, value)) result->quoted = tag == "!";
    }

    void OnSequenceStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t,
                         YAML::EmitterStyle::value) override {
        open(mark, Node::Kind::list);
    }
    void OnSequenceEnd() override { open_.pop_back(); }

    void OnMapStart(const YAML::Mark& mark, const std::string&, YAML::anchor_t, YAML::EmitterStyle::value) override {
        open(mark, Node::Kind::map);
    }
    void OnMapEnd() override { open_.pop_back(); }

private:
    // A map or list being filled. Its node stays where it is meanwhile: only the innermost one grows.
    struct OpenNode {
        Node::Kind kind;
        Node* node;  // null inside of what was refused
        bool awaits_key = true;
        bool keeps_value = false;
        std::string key;  // the last one
        std::unordered_set<std::string> keys;
    };

    Place place_of(const YAML::Mark& mark) const { return {file_, mark.line + 1, mark.column + 1}; }

    // The path of what is being filled, as readers of the tree name it.
    std::string path() const {
        std::string result;
        for (const auto& around : open_) {
            if (around.node == nullptr) break;
            const bool is_innermost = &around == &open_.back();
            if (around.kind == Node::Kind::list)
                result += fmt::format("[{}]", around.node->items.size() + (is_innermost ? 1 : 0));
            else if (!around.key.empty() && !(is_innermost && around.awaits_key))
                result += fmt::format("{}{}", result.empty() ? "" : ".", shortened(around.key));
        }
        return result;
    }

    void complain(const YAML::Mark& mark, const std::string& text) { complaints_.add(place_of(mark), path(), text); }

    [[noreturn]] void give_up(const YAML::Mark& mark, const std::string& why) { throw ParseStop{place_of(mark), why}; }

    void check_properties(const YAML::Mark& mark) {
        const auto at = static_cast<std::size_t>(std::max(mark.pos, 0));
        // An empty value is marked at the next key, which is asked about its own properties too.
        if (at >= text_.size() || at == last_property_) return;
        if (text_[at] == '&' || text_[at] == '!') last_property_ = at;
        if (text_[at] == '&') complain(mark, "an anchor, expected the value itself");
        if (text_[at] == '!') complain(mark, "a tag, expected the value itself");
    }

    void open(const YAML::Mark& mark, Node::Kind kind) {
        if (open_.size() == deepest_nesting)
            give_up(mark, fmt::format("nested too deep, expected at most {} levels", deepest_nesting));
        open_.push_back({kind, accept(mark, kind, ""), true, false, "", {}});
    }

    // Puts the next node where it belongs; null where it is a key, or will not be used.
    Node* accept(const YAML::Mark& mark, Node::Kind kind, const std::string& text) {
        check_properties(mark);
        if (open_.empty()) return fill(root_, mark, kind, text);
        OpenNode& around = open_.back();
        if (around.kind == Node::Kind::list) {
            if (around.node == nullptr) return nullptr;
            return fill(around.node->items.emplace_back(), mark, kind, text);
        }
        around.awaits_key = !around.awaits_key;
        if (!around.awaits_key) {
            around.key = text;
            around.keeps_value = around.node != nullptr && take_key(around, mark, kind, text);
            return nullptr;
        }
        if (!around.keeps_value) return nullptr;
        auto& entry = around.node->entries.back();
        fill(entry.value, mark, kind, text);
        // An empty value is marked at whatever comes after it.
        if (kind == Node::Kind::empty) entry.value.place = entry.key_place;
        return &entry.value;
    }

    // Whether the value of this key is wanted.
    bool take_key(OpenNode& map, const YAML::Mark& mark, Node::Kind kind, const std::string& text) {
        if (kind == Node::Kind::refused) return false;
        if (kind != Node::Kind::text || text.empty()) {
            complain(mark, "not a name, expected a plain text as the key of a map");
            return false;
        }
        if (!map.keys.insert(text).second) {
            complain(mark, "duplicate key, expected each key once");
            return false;
        }
        map.node->entries.push_back({text, place_of(mark), {}});
        return true;
    }

    Node* fill(Node& node, const YAML::Mark& mark, Node::Kind kind, const std::string& text) {
        node.kind = kind;
        node.text = text;
        node.place = place_of(mark);
        return &node;
    }

    const std::string& text_;
    FileName file_;
    Diagnostics& complaints_;
    Node root_;
    std::vector<OpenNode> open_;
    bool has_document_ = false;
    std::size_t last_property_ = std::string::npos;  // the byte of the last tag or anchor complained of
};

}  // namespace

std::optional<Node> parse_document(std::string text, const std::string& file, Diagnostics& complaints) {
    const auto checked = check_text(std::move(text), file, complaints);
    if (!checked) return std::nullopt;
    // What ends the parsing makes every other finding of its file doubtful: they wait here until the end is reached.
    Diagnostics found;
    TreeBuilder builder(*checked, file, found);
    std::istringstream stream(*checked);
    try {
        YAML::Parser parser(stream);
        while (parser.HandleNextDocument(builder)) {
        }
    } catch (const ParseStop& reason) {
        complaints.add(reason.place, "", reason.why);
        return std::nullopt;
    } catch (const YAML::Exception& error) {
        complaints.add({file, std::max(error.mark.line, 0) + 1, std::max(error.mark.column, 0) + 1}, "",
                       "not readable as YAML: " + error.msg + "; mend it here or just before");
        return std::nullopt;
    }
    complaints.add_all(found);
    return builder.take_root();
}

}  // namespace flutebook::base
