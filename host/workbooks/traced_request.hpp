// A request's answer as sheets of costs, and where each number in them came from.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::workbooks {

/// One sheet of costs: a quantity, or one piece of a set at it.
struct CostSheet {
    std::string name, piece;  // "Cost 1 piece 2", "lid"; a box of one has no piece
    std::size_t quantity_index;
    double count;  // pieces to one set; 1 of a box
    const answers::Quote* quote;
};

[[nodiscard]] std::vector<CostSheet> cost_sheets(const answers::RequestAnswer& answer);

/// Refers to what it is made of. Not thread-safe: it remembers what was asked.
class TracedRequest {
public:
    TracedRequest(const plant::Plant& plant, const engine::Engine& engine, const answers::RequestAnswer& answer,
                  const answers::QuoteOptions& asked)
        : plant_(plant), engine_(engine), answer_(answer), asked_(asked) {}

    /// The trails of a figure in one sheet of costs, one for each place of its axis: see explain(). None where nothing
    /// is called so. Throws ModelError.
    [[nodiscard]] const std::vector<explain::Trail>& trails(const CostSheet& sheet, const std::string& figure);

private:
    void explain(const std::string& figure);

    const plant::Plant& plant_;
    const engine::Engine& engine_;
    const answers::RequestAnswer& answer_;
    answers::QuoteOptions asked_;
    std::map<std::string, std::map<std::string, std::vector<explain::Trail>>> by_figure_;  // then by sheet
};

}  // namespace flutebook::workbooks
