// What a posting did, for people.
#pragma once

#include <string>

#include "host/catalogue/plant.hpp"
#include "host/desk/post.hpp"

namespace flutebook::cli {

/// How many rows went in, file by file, and what they moved. Lines of at most 100 columns, each with its line end.
[[nodiscard]] std::string post_text(const catalogue::Plant& plant, const desk::PostAnswer& answer,
                                    desk::PostAsked::Keep keep);

}  // namespace flutebook::cli
