#include "host/production/order_actual.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ledger/values/error.hpp"

namespace flutebook::production {

namespace {

constexpr double may_be_miscounted = 0.02;
constexpr double may_go_astray = 0.02;

DocumentRow row_of(const ledger::Entry& entry, Kind kind) {
    auto row = RowReader::read_posted(widest_form(kind), entry.draft.content);
    if (!row)
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("entry {}: its row can no longer be read: found {} {}; run `flutebook verify`",
                                      entry.number, entry.draft.kind, entry.draft.ref));
    return std::move(*row);
}

WebRun web_run(const orders::OrderRecord& order, const ledger::Entry& entry) {
    const DocumentRow row = row_of(entry, Kind::corrugator_run);
    WebRun result{};
    result.corrugator = row.text(DocumentColumn::corrugator);
    result.date = entry.draft.date;
    result.roll_width_mm = row.number(DocumentColumn::roll_width).value_or(order.roll_width_mm);
    if (const auto whole_mm = row.number(DocumentColumn::web)) result.web_share = result.roll_width_mm / *whole_mm;
    result.outs = row.number(DocumentColumn::outs).value_or(order.outs);
    result.metres = row.value(DocumentColumn::metres);
    result.order_change_m = row.value(DocumentColumn::order_change_metres);
    result.good_sheets = row.value(DocumentColumn::good_sheets);
    result.areas = web_areas(web_cut(order, result.roll_width_mm, result.outs), result.metres, result.order_change_m,
                             result.good_sheets);
    return result;
}

void add_piece_run(OrderActual& result, const orders::OrderRecord& order, const ledger::Entry& entry) {
    const DocumentRow row = row_of(entry, Kind::converter_run);
    const auto number = order.step_of(row.text(DocumentColumn::converter));
    if (!number)
        throw LedgerError(
            LedgerError::Kind::refused,
            fmt::format("entry {}: no machine of order {}'s route: found {}, which machines.yaml no longer "
                        "has; put it back there",
                        entry.number, order.number, row.text(DocumentColumn::converter)));
    const RouteStep step = route_step(order, *number);
    const Pieces pieces = pieces_of(row, order, step);
    result.steps[*number - 1].push_back(
        {row.text(DocumentColumn::converter), entry.draft.date, pieces, piece_areas(pieces, order, step)});
}

std::string machine_of(const orders::OrderRecord& order, std::size_t step) {
    return step == 0 ? order.corrugator : order.route[step - 1];
}

// Where boxes part from the sheet at the corrugator itself, or did before: what a step is fed.
const char* name_of_pieces(const orders::OrderRecord& order, std::size_t step) {
    return step <= order.parting ? "sheets" : "blanks";
}

void check_follows(std::vector<std::string>& missing, const orders::OrderRecord& order, const OrderActual& actual,
                   std::size_t step) {
    const double result = actual.went_on(step - 1);
    const double fed = actual.fed(step);
    const auto machine = machine_of(order, step);
    const auto before = machine_of(order, step - 1);
    const char* pieces = name_of_pieces(order, step);
    if (fed > result * (1 + may_be_miscounted) + 1)
        missing.push_back(fmt::format("runs of {}, or of whatever ran for it: {} was fed {} {}, {} good ones were made",
                                      before, machine, fed, pieces, result));
    const auto* allowed = order.find_converter(machine);
    const double idle = std::max(result * may_go_astray, allowed == nullptr ? 0 : allowed->setup_sheets);
    if (actual.boxes() < order.quantity && result - fed > idle)
        missing.push_back(fmt::format("runs of {}: {} of {} {} still wait for it, and {} of {} boxes are made", machine,
                                      result - fed, result, pieces, actual.boxes(), order.quantity));
}

}  // namespace

std::vector<base::Date> OrderActual::days() const {
    std::vector<base::Date> result;
    for (const auto& run : web) result.push_back(run.date);
    for (const auto& step : steps)
        for (const auto& run : step) result.push_back(run.date);
    std::sort(result.begin(), result.end());
    result.erase(std::unique(result.begin(), result.end()), result.end());
    return result;
}

double OrderActual::good_sheets() const {
    double sum = 0;
    for (const auto& run : web) sum += run.good_sheets;
    return sum;
}

double OrderActual::fed(std::size_t step) const {
    double sum = 0;
    if (step == 0) return sum;
    for (const auto& run : steps[step - 1]) sum += run.pieces.fed;
    return sum;
}

double OrderActual::went_on(std::size_t step) const {
    if (step == 0) return good_sheets();
    double sum = 0;
    for (const auto& run : steps[step - 1]) sum += step == steps.size() ? run.pieces.boxes : run.pieces.holds;
    return sum;
}

double OrderActual::boxes() const {
    return went_on(steps.size());
}

OrderActual actual_of(const orders::OrderRecord& order, std::span<const ledger::Entry> entries) {
    OrderActual result;
    result.steps.resize(order.last_step());
    for (const auto& entry : entries) {
        if (entry.reverses || entry.reversed_by) continue;
        if (entry.draft.kind == name_of(Kind::corrugator_run)) result.web.push_back(web_run(order, entry));
        if (entry.draft.kind == name_of(Kind::converter_run)) add_piece_run(result, order, entry);
    }
    return result;
}

std::vector<std::string> what_is_missing(const orders::OrderRecord& order, const OrderActual& actual) {
    std::vector<std::string> missing;
    if (actual.web.empty()) missing.push_back(fmt::format("runs of {}, the corrugator", order.corrugator));
    for (std::size_t step = 1; step <= order.last_step(); ++step)
        if (actual.steps[step - 1].empty())
            missing.push_back(fmt::format("runs of {}, step {} of the route", machine_of(order, step), step));
    if (!missing.empty()) return missing;
    for (std::size_t step = 1; step <= order.last_step(); ++step) check_follows(missing, order, actual, step);
    if (missing.empty() && actual.boxes() < 1) missing.push_back("boxes: none was made");
    return missing;
}

}  // namespace flutebook::production
