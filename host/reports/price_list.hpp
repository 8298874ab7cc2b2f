// The short answer to many requests: one table, a line a quantity, with totals where no two lines are choices of one
// request; then what cannot be made, and what to watch.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// Grows answer by answer, and keeps of each only what its lines show. `plant` must outlive it.
class PriceList {
public:
    explicit PriceList(const plant::Plant& plant);

    void add(const answers::RequestAnswer& answer);
    [[nodiscard]] bool is_empty() const { return table_.rows.empty(); }
    [[nodiscard]] render::Report report() const;

private:
    void add_limits(const answers::RequestAnswer& answer, const answers::Unmakeable& unmakeable);
    void add_missing(const SheetContext& context, const answers::RequestAnswer& answer);
    void add_total(render::ReportTable& table) const;

    const plant::Plant& plant_;
    render::ReportTable table_;
    bool has_choices_ = false;  // a request has several quantities
    std::size_t lines_ = 0;     // of what can be made
    Money order_value_, cost_;  // as they are printed
    double loss_kg_ = 0, issued_kg_ = 0;
    std::vector<std::string> limits_, rules_;
    std::vector<std::pair<std::string, std::vector<std::string>>> missing_;  // a text, and the requests it holds for
    std::vector<base::Warning> warnings_;
};

}  // namespace flutebook::reports
