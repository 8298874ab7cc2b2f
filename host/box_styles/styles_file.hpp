// styles.yaml: box styles of a plant, beside the library that comes with the program.
#pragma once

#include <string>
#include <vector>

#include "host/box_styles/style.hpp"
#include "host/fields/map_reader.hpp"

namespace flutebook::box_styles {

/// The style whose blank the request gives itself.
inline constexpr const char* outline_code = "outline";

/// What a table of styles may refer to besides itself.
struct StyleSources {
    const std::vector<base::Node::Entry>& library;    // whole entries, to be like
    const std::vector<std::string>& allowance_names;  // that sums know
};

/// Reads the table `styles` of a file, in its order. Complains of all that is wrong with it, each at its place.
[[nodiscard]] std::vector<Style> read_styles(const fields::Field& table, const StyleSources& sources);

/// The styles that come with the program, and their whole entries. Read once, then the same for every thread; a fault
/// in it ends the program: it was built with it.
struct StyleLibrary {
    std::vector<base::Node::Entry> entries;
    std::vector<Style> styles;
};
[[nodiscard]] const StyleLibrary& style_library();

/// One style of the library, read alone: most runs of the program ask for one or two. Null where the library has none
/// of that code. Any thread; lives until the process ends.
[[nodiscard]] const Style* library_style(const std::string& code);

/// A file of the library, compiled in: its name in messages and its text. Of no two is a style like one of the other's.
struct LibraryFile {
    std::string name, text;
};
[[nodiscard]] const std::vector<LibraryFile>& library_files();

}  // namespace flutebook::box_styles
