#include "host/cli/open_workplace.hpp"

#include "host/trim_history/trim_history.hpp"

namespace flutebook::cli {

workplace::Workplace open_workplace(const RunContext& context) {
    workplace::Workplace result = workplace::open(context.plant);
    result.plant.trim_source = trim_history::trim_source(context.ledger);
    return result;
}

}  // namespace flutebook::cli
