// The answer to one request, for people, the short answer first: the price ladder over all its quantities, its
// measures, what to watch; the limits of what cannot be made; then the cost sheets that were asked for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// Which cost sheets stand below the short answer.
class ShownSheets {
public:
    [[nodiscard]] static ShownSheets none() { return ShownSheets(std::nullopt, false); }
    [[nodiscard]] static ShownSheets all() { return ShownSheets(std::nullopt, true); }
    [[nodiscard]] static ShownSheets of(double quantity) { return ShownSheets(quantity, false); }

    [[nodiscard]] bool is_any() const { return are_all_ || quantity_; }
    [[nodiscard]] bool shows(double quantity) const { return are_all_ || quantity_ == quantity; }
    /// The one that was asked for; nothing where all are, or none.
    [[nodiscard]] const std::optional<double>& quantity() const { return quantity_; }

private:
    ShownSheets(std::optional<double> quantity, bool are_all) : quantity_(quantity), are_all_(are_all) {}

    std::optional<double> quantity_;
    bool are_all_;
};

/// The heading alone where a model was at fault: stderr says so. Quantities that the same limits stop share a part;
/// where one limit stops many ways, the first are named and the others counted.
[[nodiscard]] render::Report quote_report(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                          const answers::QuoteOptions& asked,
                                          const ShownSheets& sheets = ShownSheets::all());

/// What cannot be made, a section for each group of quantities that the same limits stop.
[[nodiscard]] std::vector<render::ReportSection> limit_sections(const SheetContext& context,
                                                                const answers::RequestAnswer& answer);

/// Of a quote whose text alone was kept: that text.
[[nodiscard]] render::Report printed_quote_report(const answers::RequestAnswer& answer, const std::string& text);

/// What was asked for, by whom and on which board: the heading of an answer.
[[nodiscard]] render::ReportHeading request_heading(const plant::Plant& plant, const orders::Request& request);

}  // namespace flutebook::reports
