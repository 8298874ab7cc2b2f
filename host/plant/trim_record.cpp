#include "host/plant/trim_record.hpp"

#include <fmt/format.h>

namespace flutebook::plant {

TrimOrigin twelve_months_before(const std::string& board, base::Date day) {
    TrimOrigin result;
    const ledger::Month month{day.year(), day.month()};
    result.board = board;
    result.first = month - std::chrono::months(12);
    result.last = month - std::chrono::months(1);
    return result;
}

std::string found_text(const TrimFinding& finding) {
    const TrimOrigin& looked = finding.looked_at;
    if (finding.ledger.empty()) return "found no ledger";
    return fmt::format("found {} corrugator runs of {} and {} of the plant in {} from {} to {}", looked.board_runs,
                       looked.board, looked.plant_runs, finding.ledger, month_text(looked.first),
                       month_text(looked.last));
}

std::string month_text(ledger::Month month) {
    return fmt::format("{}-{:02}", static_cast<int>(month.year()), static_cast<unsigned>(month.month()));
}

}  // namespace flutebook::plant
