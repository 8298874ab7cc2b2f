#include "host/services/orders/set_cost.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "host/saved_quotes/saved_quote.hpp"
#include "host/services/orders/order.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::services {

namespace {

// What is read of the ledger to cost an order or a set.
struct FilesToCost {
    std::vector<OrderFile> files;  // of a set in its order
    bool is_set;
    std::size_t shown;  // the one that is asked for, where it is no set
};

// Every complaint of every piece before it is refused.
std::vector<OrderFile> files_of(const ledger::Store& store, const plant::Plant& today,
                                const std::vector<std::string>& numbers) {
    std::vector<OrderFile> result;
    std::vector<std::string> lines;
    for (const std::string& number : numbers) try {
            result.push_back(order_file(store, today, number));
        } catch (const LedgerError& error) {
            if (error.kind() != LedgerError::Kind::refused) throw;
            lines.insert(lines.end(), error.lines().begin(), error.lines().end());
        }
    if (!lines.empty()) throw LedgerError(LedgerError::Kind::refused, std::move(lines));
    return result;
}

FilesToCost files_to_cost(const ledger::Store& store, const plant::Plant& today, const std::string& number) {
    const ledger::Snapshot moment(store);
    if (const auto set = orders_of_set(store, number); !set.empty()) return {files_of(store, today, set), true, 0};
    const auto order = taken_order(store, today, number);
    if (order && !order->piece.empty())
        if (const auto set = orders_of_set(store, order->set_number()); set.front() == number)
            return {files_of(store, today, set), false, 0};
    return {{order_file(store, today, number)}, false, 0};
}

std::vector<std::string> all_machines(const std::vector<OrderFile>& files) {
    std::vector<std::string> result;
    for (const OrderFile& file : files)
        for (std::string& machine : machines_of(file)) result.push_back(std::move(machine));
    return result;
}

// The pieces in the order of the set.
std::vector<answers::OrderCost> cost_pieces(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                                            const std::vector<OrderFile>& files, const plant::Plant& today) {
    std::vector<answers::OrderCost> result;
    StageCosts others;
    for (std::size_t p = files.size(); p-- > 0;) {
        const OrderFile& file = files[p];
        const StageCostings costings =
            cost_stages(engine, quoted, file.order, file.actual, today, p == 0 ? others : StageCosts{});
        add_costs(others, engine.graph(), costings);
        result.insert(result.begin(), order_answer(engine, quoted, file, costings, today));
    }
    return result;
}

// Of which every piece was made.
double whole_sets(const std::vector<OrderFile>& files) {
    double result = files.front().order.sets;
    bool is_first = true;
    for (const OrderFile& file : files) {
        const double count = file.order.quantity / file.order.sets;
        const double sets = std::floor(file.actual.boxes() / count + 1e-9);
        result = is_first ? sets : std::min(result, sets);
        is_first = false;
    }
    if (result >= 1) return result;
    throw LedgerError(LedgerError::Kind::refused,
                      fmt::format("order {}: cannot be costed before it is made: missing a whole set: of some piece "
                                  "fewer were made than go into one; post them",
                                  files.front().order.set_number()));
}

// What the quote, as it was answered, says that so many sets cost.
Money saved_set_cost(const ledger::SavedQuote& quote, double sets) {
    const auto document = saved_quotes::saved_document(quote);
    for (const auto& item : document.answer.quantities)
        if (item.set && item.set->quantity == sets) return item.set->cost;
    throw LedgerError(
        LedgerError::Kind::unfit,
        fmt::format("quote {}: its part answer.json has no cost of {}; run `flutebook verify`", quote.number, sets));
}

}  // namespace

answers::SetCost set_cost(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                          const std::vector<OrderFile>& files, const plant::Plant& today) {
    const orders::OrderRecord& first = files.front().order;
    answers::SetCost result{};
    result.number = first.set_number();
    result.quote = first.quote;
    result.request = quoted.request.number;
    result.customer = first.customer;
    result.currency = quoted.plant.currency;
    result.sets = first.sets;
    result.sets_made = whole_sets(files);
    result.pieces = cost_pieces(engine, quoted, files, today);
    std::set<base::Date> days;
    for (const answers::OrderCost& piece : result.pieces) {
        result.cost += piece.cost;
        days.insert(piece.days.begin(), piece.days.end());
    }
    result.days.assign(days.begin(), days.end());
    result.quoted_per_thousand = cost_per_thousand(result.cost.quoted, result.sets);
    result.paid_per_thousand = cost_per_thousand(result.cost.paid, result.sets_made);
    result.saved_cost = saved_set_cost(files.front().quote, first.sets);
    result.plugins = result.pieces.front().plugins;
    return result;
}

OrderOrSetCost cost_of(const plant::Plant& today, const std::string& ledger, const std::string& number) {
    const FilesToCost read = files_to_cost(ledger::Store::open_for_reading(ledger), today, number);
    saved_quotes::QuotedPlant quoted =
        saved_quotes::quoted_plant(read.files.front().quote, today, all_machines(read.files));
    const workplace::Workplace workplace = workplace::open(quoted.plant);
    if (read.is_set) return set_cost(workplace.engine, quoted, read.files, today);
    if (read.files.size() == 1) return order_cost(workplace.engine, quoted, read.files.front(), today);
    return std::move(cost_pieces(workplace.engine, quoted, read.files, today).front());
}

}  // namespace flutebook::services
