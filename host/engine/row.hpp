// What the engine costs: one order at one quantity, made one way.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "host/contract/setting_values.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/margin.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::engine {

/// What lines come to by class, in the order of contract::CostClass.
using ClassCosts = std::array<Money, 5>;

/// Which blank of a set an order makes; the box of one piece is the first of one. What is paid once for a set is
/// charged to its first piece alone: late models, and at dispatch what a model charges by the run or by the period.
struct PieceOfSet {
    std::size_t index = 0;  // from 0
    std::size_t pieces = 1;
    ClassCosts others = {};  // of the first piece: what all other pieces cost

    [[nodiscard]] bool is_first() const { return index == 0; }
};

/// An order as the engine sees it. Points to its request, its layout and the engine's settings, which must outlive it.
struct Order {
    const plant::Plant* plant;
    const orders::Request* request;
    const geometry::Layout* layout;
    double quantity;                   // of this piece: of a set, the sets times its count
    contract::OrderSettings settings;  // point into those of the engine that made the order
    PieceOfSet piece = {};
    plant::TrimPolicy trim = {};  // how it pays for its web
};

/// Whether a row is costed with the colours that its request asks for.
enum class Printing { as_asked, none };

/// One row of a block. Both must outlive the evaluation; the candidate belongs to the order's layout.
struct Row {
    const Order* order;
    const geometry::Candidate* candidate;
    Printing printing = Printing::as_asked;

    [[nodiscard]] double colours() const { return printing == Printing::none ? 0 : order->request->colours; }

    /// K + 2: the corrugator, the converters, dispatch.
    [[nodiscard]] std::size_t steps() const { return candidate->route->last_step() + 2; }
    [[nodiscard]] std::size_t plies() const { return order->layout->board.plies.size(); }
};

/// Which machine a step is: see plant::machine_count.
[[nodiscard]] std::size_t machine_index(const Row& row, std::size_t step);

/// The margin of the order that the row's piece is of.
[[nodiscard]] orders::OrderMargin margin_of(const Row& row);

/// What a model did wrong in a block of rows: the first row that shows it, and the finished sentence: file, model,
/// cause.
struct Fault {
    std::size_t row;
    std::string text;
};

}  // namespace flutebook::engine
