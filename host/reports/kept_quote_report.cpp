#include "host/reports/kept_quote_report.hpp"

#include "host/reports/quote_list_report.hpp"
#include "host/reports/quote_report.hpp"

namespace flutebook::reports {

render::Report kept_quote_report(const answers::QuoteDocument& document, const std::string& printed,
                                 const answers::ListedQuote& listed) {
    render::Report report = document.version == 0 ? printed_quote_report(document.answer, printed)
                                                  : quote_report(document.plant, document.answer, document.asked);
    if (const auto history = quote_history_report(listed))
        report.sections.insert(report.sections.begin(), history->sections.begin(), history->sections.end());
    return report;
}

}  // namespace flutebook::reports
