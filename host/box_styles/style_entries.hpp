// The entries of styles.yaml with what they are `like` put into them, still as YAML. Values keep the places where they
// were written, in whichever entry or file that was.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "host/fields/map_reader.hpp"

namespace flutebook::box_styles {

/// The whole entries of a file's styles, in its order; those that are like an unknown style, or like themselves in a
/// circle, are left out, with a complaint. `library` holds whole entries that an entry may be like where the file has
/// none of that code; an entry may be like the library's of its own code.
[[nodiscard]] std::vector<base::Node::Entry> whole_entries(const fields::Field& table,
                                                           const std::vector<base::Node::Entry>& library);

/// An entry as a document of its own: `styles: {CODE: …}`.
[[nodiscard]] std::string entry_text(const base::Node::Entry& entry);

}  // namespace flutebook::box_styles
