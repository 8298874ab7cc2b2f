// The guides of config/guide, one a role, as they are part of the program, and the documents that tell of them.
//
// The list: {"guides": [{"name", "title", "about"}...]}; one: {"name", "title", "about", "text"}, in Markdown.
#pragma once

#include <string>
#include <vector>

namespace flutebook::plant_answers {

struct Guide {
    std::string name;   // "accountant"
    std::string title;  // its first heading
    std::string about;  // its first paragraph, a line
    std::string text;   // whole, in Markdown
};

/// By name, made once. Any thread.
[[nodiscard]] const std::vector<Guide>& guides();

/// Null where there is none of this name.
[[nodiscard]] const Guide* find_guide(const std::string& name);

[[nodiscard]] std::string guide_list_document();
[[nodiscard]] std::string guide_document(const Guide& guide);

}  // namespace flutebook::plant_answers
