// Who makes an order's sheets and boxes, in the words of every face.
#pragma once

#include <string>
#include <vector>

#include "host/plant/machine.hpp"

namespace flutebook::plant {

/// "bought from NAME".
[[nodiscard]] std::string bought_from(const std::string& supplier);
/// "C1"; "bought from NAME" of who delivers a board.
[[nodiscard]] std::string maker_text(const Corrugator& maker);
/// "C1 > DC1 > FG1" of a maker in these words.
[[nodiscard]] std::string route_text(std::string maker, const std::vector<std::string>& route);

}  // namespace flutebook::plant
