// What a posting did, for people.
#pragma once

#include <string>

#include "host/plant/plant.hpp"
#include "host/services/posting/post.hpp"

namespace flutebook::reports {

/// How many rows went in, file by file, and what they moved. Lines of at most 100 columns, each with its line end.
[[nodiscard]] std::string post_text(const plant::Plant& plant, const services::PostAnswer& answer,
                                    services::PostOptions::Keep keep);

}  // namespace flutebook::reports
