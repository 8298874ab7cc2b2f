// The values that every section of a cost sheet needs: the plant, the request, the units that people read, and the
// words that sections share.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/drawings/shown_units.hpp"

namespace flutebook::reports {

/// Refers to a plant and a request that outlive it.
struct SheetContext {
    const plant::Plant& plant;
    const orders::Request& request;
    drawings::ShownUnits units;
    /// What the quantities of a sheet count.
    enum class Counted { boxes, sets, pieces };
    Counted counted;

    SheetContext(const plant::Plant& of_plant, const orders::Request& of_request, Counted of = Counted::boxes)
        : plant(of_plant), request(of_request), units(of_plant), counted(of) {}

    /// "boxes", "sets", "pieces" of a set; "sheets" where sheets are sold as sheets.
    [[nodiscard]] std::string pieces() const;
    /// "box", "set", "piece", "sheet".
    [[nodiscard]] std::string piece() const;
    /// "5 000 boxes".
    [[nodiscard]] std::string order_text(double quantity) const;
};

/// The order of classes on every page.
inline constexpr std::array<contract::CostClass, 5> cost_classes{
    contract::CostClass::material, contract::CostClass::energy, contract::CostClass::system,
    contract::CostClass::waste_management, contract::CostClass::recovery};

/// "C1, roll 2450 mm, 2 x 3 up, DC1 > FG1": the way a quote is made, as its runners-up are named.
[[nodiscard]] std::string way_text(const drawings::ShownUnits& units, const answers::Quote& quote);

/// "500, 1 000 and 5 000".
[[nodiscard]] std::string listed_quantities(const std::vector<double>& quantities);

/// The machine of a step, 0 being the corrugator.
[[nodiscard]] const std::string& machine_at(const answers::Quote& quote, std::size_t step);

/// The step where boxes part from the sheet: the first die cutter or slitter, else the last.
[[nodiscard]] std::size_t parting_step(const plant::Plant& plant, const answers::Quote& quote);

}  // namespace flutebook::reports
