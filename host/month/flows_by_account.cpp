#include "host/month/flows_by_account.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <string_view>

#include "host/month/month.hpp"
#include "host/production/accounts.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::month {

namespace {

constexpr std::array<std::string_view, 7> borders = {
    production::account::paper_store, production::account::adhesive_store, production::account::finished,
    production::account::opening,     production::account::costs,          production::account::revenue,
    production::account::unexplained};

bool is_mill(std::string_view name) {
    return name.rfind(production::account::mill_prefix, 0) == 0;
}

bool is_machine(std::string_view name) {
    return !is_border(name) && name != production::account::floor && name != production::account::loose_scrap &&
           name != production::account::bale_yard;
}

MachineFlows& machine(FlowsByAccount& result, const std::string& code) {
    auto& machine = result.machines[code];
    machine.code = code;
    return machine;
}

[[noreturn]] void reject(const MonthBooks& books, const ledger::Flow& flow) {
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("month {}-{:02}: no document moves anything from {} to {}: found {} kg of {}; run "
                                  "`flutebook verify`",
                                  static_cast<int>(books.month.year()), static_cast<unsigned>(books.month.month()),
                                  flow.from, flow.to, flow.mass.to_kg(), flow.material));
}

enum class Sorted { yes, no };

Sorted sort_into_machine(FlowsByAccount& result, const ledger::Flow& flow) {
    auto& to = machine(result, flow.to);
    const Stock held{flow.mass, flow.money};
    if (flow.from == production::account::paper_store || flow.from == production::account::adhesive_store) {
        to.bought[flow.material] += held;
        result.bought += flow.money;
        (flow.from == production::account::paper_store ? result.issued : result.adhesive) += flow.mass;
    } else if (flow.from == production::account::opening) {
        to.open[flow.material] += held;
    } else if (flow.from == production::account::floor) {
        to.fed += flow.mass;
    } else if (flow.from == production::account::costs) {
        (flow.material == "waste-management" ? to.waste_management : to.processing) += flow.money;
        result.centre_costs += flow.money;
    } else {
        return Sorted::no;
    }
    return Sorted::yes;
}

Sorted sort_into_floor_or_scrap(FlowsByAccount& result, const ledger::Flow& flow) {
    const bool is_from_opening = flow.from == production::account::opening;
    if (is_from_opening && flow.to == production::account::floor) {
        result.floor_open += {flow.mass, flow.money};
    } else if (is_from_opening && flow.to == production::account::loose_scrap) {
        result.loose_scrap_open += flow.mass;
    } else if (is_from_opening && flow.to == production::account::bale_yard) {
        result.bale_yard_open += flow.mass;
    } else if (flow.from == production::account::costs && flow.to == production::account::loose_scrap) {
        result.baler += flow.money;
        result.centre_costs += flow.money;
    } else if (flow.from == production::account::floor && flow.to == production::account::loose_scrap) {
        result.floor_lost[flow.cause] += flow.mass;
    } else if (flow.from == production::account::finished && flow.to == production::account::loose_scrap) {
        result.returned[flow.cause] += flow.mass;
    } else {
        return Sorted::no;
    }
    return Sorted::yes;
}

Sorted sort_into_sale(FlowsByAccount& result, const ledger::Flow& flow) {
    if (flow.from == production::account::loose_scrap && flow.to == production::account::bale_yard) {
        result.baled += flow.mass;
    } else if (flow.from == production::account::bale_yard && is_mill(flow.to)) {
        result.sent += flow.mass;
    } else if (is_mill(flow.from) && flow.to == production::account::revenue) {
        result.paid += flow.mass;
        result.revenue += flow.money;
    } else {
        return Sorted::no;
    }
    return Sorted::yes;
}

Sorted add_flow(FlowsByAccount& result, const ledger::Flow& flow) {
    if (is_machine(flow.to)) return is_machine(flow.from) ? Sorted::no : sort_into_machine(result, flow);
    if (is_machine(flow.from)) {
        if (flow.to != production::account::floor && flow.to != production::account::finished &&
            flow.to != production::account::loose_scrap)
            return Sorted::no;
        machine(result, flow.from).out.push_back({flow.to, flow.material, flow.cause, flow.mass});
        return Sorted::yes;
    }
    return sort_into_floor_or_scrap(result, flow) == Sorted::yes ? Sorted::yes : sort_into_sale(result, flow);
}

void open_stocks(FlowsByAccount& result, const MonthBooks& books) {
    for (const auto& stock : books.opening) {
        if (is_machine(stock.account))
            machine(result, stock.account).open[stock.material] += {stock.mass, stock.money};
        else if (stock.account == production::account::floor)
            result.floor_open += {stock.mass, stock.money};
        else if (stock.account == production::account::loose_scrap)
            result.loose_scrap_open += stock.mass;
        else if (stock.account == production::account::bale_yard)
            result.bale_yard_open += stock.mass;
    }
}

// Whether nothing at all was posted: then stocks stay as they were. Otherwise a machine without a count is empty.
bool is_still(const MonthBooks& books) {
    if (!books.counts.empty()) return false;
    for (const auto& flow : books.flows)
        if (!is_of_close(flow)) return false;
    return true;
}

void close_machines(FlowsByAccount& result, const MonthBooks& books) {
    if (is_still(books)) {
        for (auto& [code, machine] : result.machines)
            for (const auto& [material, held] : machine.open) machine.close[material] = held.mass;
        return;
    }
    for (const auto& count : books.counts)
        if (is_machine(count.count.account) && count.date == last_day(books.month))
            machine(result, count.count.account).close[count.count.material] = count.count.mass;
}

// What counts found more than the books said; each is measured against the one before it.
Grams found_by_counts(const MonthBooks& books, const std::string& account) {
    Grams book_open;
    for (const auto& stock : books.opening)
        if (stock.account == account) book_open += stock.mass;
    Grams found;
    for (const auto& day : books.counted_days)
        if (day.account == account) found += day.counted - (book_open + day.moved + found);
    return found;
}

}  // namespace

bool is_of_close(const ledger::Flow& flow) {
    return flow.from == production::account::unexplained || flow.to == production::account::unexplained ||
           flow.to == production::account::costs;
}

bool is_border(std::string_view name) {
    return is_mill(name) || std::find(borders.begin(), borders.end(), name) != borders.end();
}

ledger::Date last_day(ledger::Month month) {
    return std::chrono::year_month_day_last(month.year(), std::chrono::month_day_last(month.month()));
}

bool MachineFlows::is_corrugator() const {
    const auto is_kept_apart = [](const std::string& material) { return material != production::material::board; };
    for (const auto& [material, held] : open)
        if (is_kept_apart(material)) return true;
    for (const auto& [material, mass] : close)
        if (is_kept_apart(material)) return true;
    for (const auto& flow : out)
        if (is_kept_apart(flow.material)) return true;
    return !bought.empty();
}

Stock MachineFlows::opened() const {
    Stock sum;
    for (const auto& [material, held] : open) sum += held;
    return sum;
}

Stock MachineFlows::all_bought() const {
    Stock sum;
    for (const auto& [material, held] : bought) sum += held;
    return sum;
}

Grams MachineFlows::passed() const {
    Grams sum;
    for (const auto& flow : out)
        if (flow.to != production::account::loose_scrap) sum += flow.mass;
    return sum;
}

Grams MachineFlows::lost() const {
    Grams sum;
    for (const auto& flow : out)
        if (flow.to == production::account::loose_scrap) sum += flow.mass;
    return sum;
}

Grams MachineFlows::closed() const {
    Grams sum;
    for (const auto& [material, mass] : close) sum += mass;
    return sum;
}

FlowsByAccount workings(const MonthBooks& books) {
    FlowsByAccount result;
    open_stocks(result, books);
    for (const auto& flow : books.flows)
        if (!is_of_close(flow) && add_flow(result, flow) == Sorted::no) reject(books, flow);
    close_machines(result, books);
    for (auto& [code, machine] : result.machines) name_weighed_paper(machine);
    result.floor_counted = found_by_counts(books, production::account::floor);
    result.loose_scrap_counted = found_by_counts(books, production::account::loose_scrap);
    result.bale_yard_counted = found_by_counts(books, production::account::bale_yard);
    return result;
}

}  // namespace flutebook::month
