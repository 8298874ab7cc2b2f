// The guides: which there are, and one of them to read.
#pragma once

#include <string>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/plant_answers/guides.hpp"

namespace flutebook::pages {

[[nodiscard]] std::string guide_list_page(const Frame& frame, const std::vector<plant_answers::Guide>& guides);

[[nodiscard]] std::string guide_page(const Frame& frame, const plant_answers::Guide& guide);

}  // namespace flutebook::pages
