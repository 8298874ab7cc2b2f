// What the engine costs: one order at one quantity, made one way.
#pragma once

#include <cstddef>
#include <vector>

#include "host/catalogue/plant.hpp"
#include "host/catalogue/request.hpp"
#include "host/geometry/layout.hpp"

namespace flutebook::engine {

/// An order as the engine sees it. Points to its request and layout, which must outlive it.
struct Order {
    const catalogue::Plant* plant;
    const catalogue::Request* request;
    const geometry::Layout* layout;
    double quantity;
    std::vector<double> request_settings;  // of all models, in graph order; see Settings
};

/// One row of a block. Both must outlive the evaluation; the candidate belongs to the order's layout.
struct Row {
    const Order* order;
    const geometry::Candidate* candidate;

    /// K + 2: the corrugator, the converters, dispatch.
    [[nodiscard]] std::size_t steps() const { return candidate->route->last_step() + 2; }
    [[nodiscard]] std::size_t plies() const { return order->layout->board.plies.size(); }
};

/// Which machine a step is: machines are counted corrugators first, then converters, then dispatch.
[[nodiscard]] std::size_t machine_index(const Row& row, std::size_t step);
[[nodiscard]] std::size_t machine_count(const catalogue::Plant& plant);
/// The machine's code, or "dispatch".
[[nodiscard]] const std::string& machine_code(const catalogue::Plant& plant, std::size_t machine);
[[nodiscard]] const catalogue::Places& machine_places(const catalogue::Plant& plant, std::size_t machine);

}  // namespace flutebook::engine
