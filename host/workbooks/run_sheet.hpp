// The sheet "Run": from the quantity back to the metres of web and down to every kilogram lost, as formulas, a column a
// quantity, and of a set a piece at it. Its balance says that mass in is product and losses.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "host/workbooks/inputs_sheet.hpp"
#include "host/workbooks/run_rows.hpp"
#include "host/workbooks/traced_request.hpp"

namespace flutebook::workbooks {

class RunSheet {
public:
    /// `quantity_cells` hold the request's quantities, by their index. What the run rests on goes to `inputs`. Throws
    /// ModelError.
    RunSheet(const std::vector<CostSheet>& costs, const std::vector<std::string>& quantity_cells,
             TracedRequest& request, InputsSheet& inputs);

    /// Where it has a number that stands behind a line of this sheet of costs: "Run!$D$12". Nothing where it has not.
    [[nodiscard]] std::optional<std::string> cell_of(const CostSheet& costs, const explain::TracedFigure& figure) const;

    [[nodiscard]] const render::BookSheet& sheet() const { return sheet_; }

private:
    render::BookSheet sheet_;
    std::map<std::tuple<std::string, std::string, std::string>, std::string> cells_;  // by costs, name and place
};

}  // namespace flutebook::workbooks
