// Reads a map of a file field by field. It does not stop at the first error: each error is a message with its place and
// path, and reading continues with a default value, so that a person sees all errors at once.
//
// Stand-ins raise no further complaint: NaN for a number (it fails no comparison), an empty text, an empty list. They
// never reach anybody, since the reader throws in the end.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/base/diagnostics.hpp"
#include "host/base/yaml/node.hpp"
#include "host/fields/quantity.hpp"

namespace flutebook::fields {

class MapReader;

/// What the fields of a file share. Outlives them.
struct Reading {
    base::Diagnostics& complaints;
    UnitWords words;
};

/// One value, given or not, that a form asks for. Refers to the document and the reading; both outlive it.
class Field {
public:
    /// A field of what could not be read: it complains of nothing.
    Field() = default;
    /// The whole of a document.
    Field(const base::Node& root, const std::string& file, Reading& reading);
    /// The same of what is not a whole file: a row of a list. What it lacks is missed at `place`.
    Field(const base::Node& root, const base::Place& place, Reading& reading);

    /// Null where it was not given.
    [[nodiscard]] const base::Node* node() const { return node_; }
    [[nodiscard]] const base::Place& place() const { return *place_; }
    [[nodiscard]] const base::Place& key_place() const { return *key_place_; }
    /// The last part of its path.
    [[nodiscard]] const std::string& key() const { return key_; }

    /// A number or a word, as it was written. `expected` says in a complaint what it should be.
    [[nodiscard]] std::optional<GivenText> given_text(const std::string& expected) const;
    /// One line of text, not empty.
    [[nodiscard]] std::string text() const;
    [[nodiscard]] double number(const std::string& unit, const QuantityRange& range) const;
    /// `[low, high]`.
    [[nodiscard]] Span span(const std::string& unit, const QuantityRange& range) const;
    [[nodiscard]] std::optional<base::Date> date() const;
    /// The index of the name that was given.
    [[nodiscard]] std::optional<std::size_t> choice(const std::vector<std::string>& names) const;
    [[nodiscard]] std::vector<Field> items() const;
    /// The entries of a map whose keys are the plant's own codes: key() is the code.
    [[nodiscard]] std::vector<Field> entries() const;
    /// The same, and none where it is no map, without complaint.
    [[nodiscard]] std::vector<Field> entries_if_any() const;
    /// The same, where a plant without any cannot work.
    [[nodiscard]] std::vector<Field> items_at_least_one() const;
    [[nodiscard]] std::vector<Field> entries_at_least_one() const;

    [[nodiscard]] bool is_list() const { return node_ != nullptr && node_->kind == base::Node::Kind::list; }
    [[nodiscard]] bool is_map() const { return node_ != nullptr && node_->kind == base::Node::Kind::map; }
    /// Complains where it is no map, whose entries are somebody else's to read.
    void expect_map() const { static_cast<void>(is(base::Node::Kind::map, "a map")); }

    void complain(const std::string& text) const;
    /// About a part of its value, whose place the caller knows.
    void complain_at(const base::Place& place, const std::string& text) const;
    /// About its key, not its value.
    void complain_of_key(const std::string& text) const { about_key().complain(text); }
    /// A field that complains at its key.
    [[nodiscard]] Field about_key() const;
    /// An entry as if it stood in this map. It outlives the field.
    [[nodiscard]] Field with_value(const base::Node::Entry& entry) const;
    /// "unknown board: found `B-14`; expected one of `B-140`, `C-125`". Says nothing of an empty code: that was
    /// complained of.
    void complain_unknown_code(const std::string& what, const std::string& code,
                               const std::vector<std::string>& known) const;
    /// The same of a word: "unknown model: found `scarp`; did you mean `scrap`".
    void complain_unknown(const std::string& what, const std::string& name,
                          const std::vector<std::string>& known) const;

private:
    friend class MapReader;
    // Whether the value is there and of a kind; complains if not.
    [[nodiscard]] bool is(base::Node::Kind kind, const std::string& expected) const;
    [[nodiscard]] Field child(const base::Node* node, const base::Place& key_place, const std::string& key) const;

    static const base::Place nowhere;
    const base::Node* node_ = nullptr;
    // Of the document, or of the whole of it: a place's file is a text that would be copied for every field.
    const base::Place *place_ = &nowhere, *key_place_ = &nowhere;
    std::shared_ptr<const base::Place> place_of_whole_;
    std::string path_, key_;
    Reading* reading_ = nullptr;  // null: silent
};

/// A map with known keys.
class MapReader {
public:
    /// Reports an error if the field is not a map; its fields then report none.
    explicit MapReader(const Field& map);

    /// Whether an optional field was given. Asks for it as field() does.
    [[nodiscard]] bool has(const std::string& key);
    [[nodiscard]] Field field(const std::string& key);
    /// A map within.
    [[nodiscard]] MapReader form(const std::string& key) { return MapReader(field(key)); }
    /// Lets a key stand that this reader does not look at.
    void allow(const std::string& key);

    [[nodiscard]] const Field& map() const { return map_; }
    [[nodiscard]] base::Places places() const;
    /// The keys that were asked for so far, in that order.
    [[nodiscard]] const std::vector<std::string>& asked() const { return asked_; }

    /// Complains of every key that was not asked for. To be called once, when all were.
    void finish() const;

private:
    Field map_;  // a silent field where there is no map
    std::vector<std::string> asked_;
};

}  // namespace flutebook::fields
