// One YAML file as a tree of nodes, refused where it uses more of YAML than maps, lists and plain texts.
#pragma once

#include <optional>
#include <string>

#include "host/base/diagnostics.hpp"
#include "host/base/yaml/node.hpp"

namespace flutebook::base {

/// Deepest nesting of maps and lists in a file.
inline constexpr int deepest_nesting = 16;

/// Reads a file's text; `file` names it. Nothing, and one complaint, where it cannot be read as a whole: it is no text,
/// its syntax is wrong, it nests too deep, or it holds more than one document. An alias, an anchor, a tag, a duplicate
/// key, or a control character in a text is a complaint too, but the rest of the file is still there to be checked. An
/// empty file is an empty node.
[[nodiscard]] std::optional<Node> parse_document(std::string text, const std::string& file, Diagnostics& complaints);

}  // namespace flutebook::base
