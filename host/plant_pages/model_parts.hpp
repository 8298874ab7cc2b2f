// The parts of the pages about models: links to other models, and the tables of one.
#pragma once

#include <string>

#include "host/pages/markup.hpp"
#include "host/plant_answers/model_in_use.hpp"

namespace flutebook::pages {

/// At its page; the host itself has none.
[[nodiscard]] Html model_link(const std::string& id);

/// "built with this program", and how it works.
[[nodiscard]] std::string verdict_words(const plant_answers::ModelInUse& used);

[[nodiscard]] Html needs_html(const plant_answers::ModelInUse& used);
[[nodiscard]] Html provides_html(const plant_answers::ModelInUse& used);
/// Each value in force, with a link to the line of the file that says it.
[[nodiscard]] Html settings_html(const plant_answers::ModelInUse& used);
[[nodiscard]] Html lines_html(const plant_answers::ModelInUse& used);

}  // namespace flutebook::pages
