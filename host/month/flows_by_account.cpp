#include "host/month/flows_by_account.hpp"

#include <fmt/format.h>

#include <chrono>
#include <tuple>

#include "host/month/month.hpp"
#include "host/production/accounts.hpp"
#include "host/production/scrap.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::month {

namespace {

using production::account_kind;
using Kind = production::AccountKind;

// A flow with the kinds of its two accounts.
struct KnownFlow {
    const ledger::Flow& flow;
    Kind from, to;

    explicit KnownFlow(const ledger::Flow& known)
        : flow(known), from(account_kind(known.from)), to(account_kind(known.to)) {}
    [[nodiscard]] bool is(Kind left, Kind right) const { return from == left && to == right; }
};

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

Money& of_class(const std::string& cost_class, Money& energy, Money& system, Money& waste_management) {
    if (cost_class == "waste-management") return waste_management;
    return cost_class == production::material::system_cost ? system : energy;
}

// Each of these adds the flow where it belongs, and says whether a document moves anything in this way.

bool add_to_machine(FlowsByAccount& result, const KnownFlow& known) {
    const ledger::Flow& flow = known.flow;
    auto& to = machine(result, flow.to);
    const Stock held{flow.mass, flow.money};
    switch (known.from) {
        case Kind::paper_store:
        case Kind::adhesive_store:
            to.bought[flow.material] += held;
            result.bought += flow.money;
            (known.from == Kind::paper_store ? result.issued : result.adhesive) += flow.mass;
            return true;
        case Kind::opening:
            to.open[flow.material] += held;
            return true;
        case Kind::floor:
            to.fed += flow.mass;
            return true;
        case Kind::costs:
            of_class(flow.material, to.energy, to.system, to.waste_management) += flow.money;
            result.centre_costs += flow.money;
            return true;
        default:
            return false;
    }
}

bool add_from_machine(FlowsByAccount& result, const KnownFlow& known) {
    if (known.to != Kind::floor && known.to != Kind::finished && known.to != Kind::loose_scrap) return false;
    const ledger::Flow& flow = known.flow;
    machine(result, flow.from).out.push_back({flow.to, flow.material, flow.cause, flow.mass});
    return true;
}

bool add_to_stocks(FlowsByAccount& result, const KnownFlow& known) {
    const ledger::Flow& flow = known.flow;
    if (known.is(Kind::opening, Kind::floor)) {
        result.floor_open += {flow.mass, flow.money};
    } else if (known.is(Kind::opening, Kind::loose_scrap)) {
        result.loose_scrap_open += flow.mass;
    } else if (known.is(Kind::opening, Kind::bale_yard)) {
        result.bale_yard_open += flow.mass;
    } else if (known.is(Kind::costs, Kind::loose_scrap)) {
        of_class(flow.material, result.baler_energy, result.baler_system, result.baler_waste_management) += flow.money;
        result.centre_costs += flow.money;
    } else if (known.is(Kind::floor, Kind::loose_scrap)) {
        result.floor_lost[flow.cause] += flow.mass;
    } else if (known.is(Kind::finished, Kind::loose_scrap)) {
        result.returned[flow.cause] += flow.mass;
    } else {
        return false;
    }
    return true;
}

bool add_to_sale(FlowsByAccount& result, const KnownFlow& known) {
    const ledger::Flow& flow = known.flow;
    if (known.is(Kind::loose_scrap, Kind::bale_yard)) {
        result.baled += flow.mass;
    } else if (known.is(Kind::bale_yard, Kind::mill)) {
        result.sent += flow.mass;
    } else if (known.is(Kind::mill, Kind::revenue)) {
        result.paid += flow.mass;
        result.revenue += flow.money;
    } else {
        return false;
    }
    return true;
}

bool add_flow(FlowsByAccount& result, const KnownFlow& known) {
    if (known.is(Kind::machine, Kind::machine)) return false;
    if (known.to == Kind::machine) return add_to_machine(result, known);
    if (known.from == Kind::machine) return add_from_machine(result, known);
    return add_to_stocks(result, known) || add_to_sale(result, known);
}

void open_stocks(FlowsByAccount& result, const MonthBooks& books) {
    for (const auto& stock : books.opening) {
        const bool is_system_cost = stock.material == production::material::system_cost;
        switch (account_kind(stock.account)) {
            case Kind::machine:
                if (is_system_cost)
                    machine(result, stock.account).open_system += stock.money;
                else
                    machine(result, stock.account).open[stock.material] += {stock.mass, stock.money};
                break;
            case Kind::floor:
                result.floor_open += {stock.mass, is_system_cost ? Money() : stock.money};
                if (is_system_cost) result.floor_open_system += stock.money;
                break;
            case Kind::loose_scrap:
                result.loose_scrap_open += stock.mass;
                break;
            case Kind::bale_yard:
                result.bale_yard_open += stock.mass;
                break;
            default:
                break;
        }
    }
}

void take_back(FlowsByAccount& result, const KnownFlow& known) {
    const ledger::Flow& flow = known.flow;
    if (known.to == Kind::machine && known.from != Kind::opening) machine(result, flow.to).taken_back.in += flow.mass;
    if (known.to != Kind::loose_scrap) return;
    if (known.from == Kind::machine)
        machine(result, flow.from).taken_back.lost[flow.cause] += flow.mass;
    else
        result.lost_taken_back[flow.cause] += flow.mass;
}

// An issue or a run: not what was weighed there, a count or a cost.
bool is_own_kind(const KnownFlow& known) {
    if (known.to == Kind::machine) return known.from != Kind::opening && known.from != Kind::costs;
    return known.from == Kind::machine && (known.to != Kind::loose_scrap || production::is_of_run(known.flow.cause));
}

// A machine has a row of its own where anything moved by rows of this month, what it reversed itself set off.
void find_own_rows(FlowsByAccount& result, const MonthBooks& books) {
    const auto way_of = [](const ledger::Flow& flow) {
        return std::tie(flow.from, flow.to, flow.material, flow.cause);
    };
    std::map<std::tuple<std::string, std::string, std::string, std::string>, Grams> own;
    for (const auto& flow : books.flows)
        if (!is_of_close(flow) && is_own_kind(KnownFlow(flow))) own[way_of(flow)] += flow.mass;
    for (const auto& flow : books.corrections)
        if (is_own_kind(KnownFlow(flow))) own[way_of(flow)] += -flow.mass;
    for (const auto& [way, mass] : own) {
        const auto& [from, to, material, cause] = way;
        const auto& code = account_kind(to) == Kind::machine ? to : from;
        if (mass != Grams()) machine(result, code).has_own_row = true;
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
        if (account_kind(count.count.account) == Kind::machine && count.date == last_day(books.month))
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

FlowsByAccount flows_by_account(const MonthBooks& books) {
    FlowsByAccount result;
    open_stocks(result, books);
    for (const auto& flow : books.flows)
        if (!is_of_close(flow) && !add_flow(result, KnownFlow(flow))) reject(books, flow);
    for (const auto& flow : books.corrections) take_back(result, KnownFlow(flow));
    find_own_rows(result, books);
    close_machines(result, books);
    for (auto& [code, machine] : result.machines) name_weighed_paper(machine);
    result.floor_counted = found_by_counts(books, production::account::floor);
    result.loose_scrap_counted = found_by_counts(books, production::account::loose_scrap);
    result.bale_yard_counted = found_by_counts(books, production::account::bale_yard);
    return result;
}

}  // namespace flutebook::month
