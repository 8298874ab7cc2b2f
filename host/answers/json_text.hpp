// JSON as text. The tree is the JSON library's. The writer is ours, because every number must be the shortest that
// reads back as the same double, and money must have at most four places.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "ledger/values/money.hpp"

namespace flutebook::answers {

using Json = nlohmann::ordered_json;

/// The version of every document that is written. It changes when a key is removed or changes its meaning, not when one
/// is added.
inline constexpr int document_version = 1;

/// A tree as a document: {"answer": name, "answer_version": version} stand before its own keys.
[[nodiscard]] Json document(const char* name, const Json& tree);
/// The same as text.
[[nodiscard]] std::string document_text(const char* name, const Json& tree);

/// A decimal number with up to 4 places.
[[nodiscard]] Json amount_json(Money amount);

/// Keys in the order they were added. Two spaces a level; an object or list of plain values takes one
/// line. Invalid bytes of UTF-8 text are replaced; a number that is not finite is null. Ends with a line end.
[[nodiscard]] std::string json_text(const Json& tree);

/// A tree whose last member is a list of objects, written object by object so that it is never in memory as a whole.
/// What begin(), add() and end() return is, in that order, what json_text() returns of the whole tree.
class JsonListStream {
public:
    /// `head` is the tree with that list empty.
    explicit JsonListStream(const Json& head);

    [[nodiscard]] const std::string& begin() const { return begin_; }
    [[nodiscard]] std::string add(const Json& item);
    [[nodiscard]] std::string end() const;

private:
    std::string begin_;
    bool is_empty_ = true;
};

}  // namespace flutebook::answers
