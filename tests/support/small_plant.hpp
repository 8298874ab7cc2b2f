// A small plant and its orders, made in code: what a test needs to lay out, cost and show an order without any file.
// Invented, complete, and quiet: every price, allowance and roll that its own orders ask for is there.
//
// A test program that uses it links test_plants.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::fixture {

/// Corrugators C1 (wide) and C2 (narrow, slower); converters PR1 (printer), DC1 (die cutter, 12 up), FG1 and FG2
/// (folder-gluers; FG2 takes larger boxes and prints one colour). Papers KL140 TL125 liners, SC127 WM105 mediums,
/// WT135 a liner stocked in one width alone. Flutes B C E. Boards B-140, C-140, E-125 and W-135 (single wall), BC-370
/// (double wall), SF-B (single face). Models: run scrap paper starch setup running energy.
[[nodiscard]] plant::Plant small_plant();

/// A 0201 of 400 x 300 x 250 mm inside on B-140, two colours, 500 and 5000, no route given.
[[nodiscard]] orders::Request box_request(const plant::Plant& plant);

/// A 0201 of 600 x 400 x 400 mm inside on BC-370, no colours, 1200, no route given.
[[nodiscard]] orders::Request double_wall_request(const plant::Plant& plant);

/// Sheets of 1200 x 800 mm (flutes along the 1200) on C-140, 3000, no route given.
[[nodiscard]] orders::Request sheet_request(const plant::Plant& plant);

/// A die-cut blank of 420 x 310 mm, 0.11 m2 net, on E-125, one colour, 10000, no route given.
[[nodiscard]] orders::Request outline_request(const plant::Plant& plant);

/// The same blank printed, die-cut, folded and glued: the route PR1, DC1, FG1.
[[nodiscard]] orders::Request long_route_request(const plant::Plant& plant);

/// Where a board, a converter or a paper stands in the plant, by its code. The code is there, or the test aborts.
[[nodiscard]] std::size_t board_index(const plant::Plant& plant, const std::string& code);
[[nodiscard]] std::size_t converter_index(const plant::Plant& plant, const std::string& code);
[[nodiscard]] std::size_t paper_index(const plant::Plant& plant, const std::string& code);

/// Converters in turn, by their codes, as a request gives them.
[[nodiscard]] std::vector<std::size_t> route_of(const plant::Plant& plant, const std::vector<std::string>& codes);

/// An entry of plugins.yaml with plain settings: model_entry("scrap", {{"scrap_price", "85"}}).
[[nodiscard]] plant::ModelSettings model_entry(const std::string& id,
                                               const std::vector<std::pair<std::string, std::string>>& settings = {});

/// A day from its numbers: date(2026, 10, 15).
[[nodiscard]] base::Date date(int year, unsigned month, unsigned day);

}  // namespace flutebook::fixture
