#include "host/month/month.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "host/month/closing.hpp"
#include "host/month/costs.hpp"
#include "host/month/flows_by_account.hpp"
#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::month {

namespace {

using Weights = std::map<std::string, double>;

std::string name_of(ledger::Month month) {
    return "month " + text_of(month);
}

bool is_counted_last_day(const MonthBooks& books, const std::string& code) {
    return std::any_of(books.counts.begin(), books.counts.end(), [&](const ledger::StandingCount& count) {
        return count.count.account == code && count.date == last_day(books.month);
    });
}

void account_for_centres(MonthAccount& account, const FlowsByAccount& result, const MonthBooks& books) {
    auto& floor = account.floor;
    for (const auto& [code, machine] : result.machines) {
        CentreAccount centre;
        centre.centre = code;
        centre.open = machine.opened().mass;
        centre.in = machine.all_bought().mass + machine.fed;
        centre.passed = machine.passed();
        centre.lost = machine.lost();
        centre.close = machine.closed();
        centre.is_counted = is_counted_last_day(books, code);
        account.centres.push_back(centre);
        floor.fed += machine.fed;
        for (const auto& flow : machine.out) {
            if (flow.to == production::account::finished) account.product += flow.mass;
            if (flow.to == production::account::floor)
                (machine.is_corrugator() ? floor.made : floor.returned) += flow.mass;
        }
    }
    for (const auto& [cause, mass] : result.returned) account.product += -mass;
    for (const auto& [cause, mass] : result.floor_lost) floor.lost += mass;
    floor.open = result.floor_open.mass;
    floor.counted = result.floor_counted;
    floor.close = floor.open + floor.made - floor.fed + floor.returned - floor.lost + floor.counted;
}

void account_for_causes(MonthAccount& account, const FlowsByAccount& result, const MonthBooks& books) {
    std::map<std::string, CauseAccount> causes;
    const auto lose = [&](const std::string& cause, Grams mass) { causes[cause].actual += mass; };
    for (const auto& [code, machine] : result.machines)
        for (const auto& flow : machine.out)
            if (flow.to == production::account::loose_scrap) lose(flow.cause, flow.mass);
    for (const auto& [cause, mass] : result.floor_lost) lose(cause, mass);
    for (const auto& [cause, mass] : result.returned) lose(cause, mass);
    for (const auto& expected : books.expected) causes[expected.cause].expected += expected.mass;
    for (auto& [cause, loss] : causes) {
        loss.cause = cause;
        account.causes.push_back(loss);
    }
}

void account_for_scrap(MonthAccount& account, const FlowsByAccount& result) {
    account.loose_scrap = {result.loose_scrap_open, account.lost(), result.baled, result.loose_scrap_counted, {}};
    account.bale_yard = {result.bale_yard_open, result.baled, result.sent, result.bale_yard_counted, {}};
    for (auto* stock : {&account.loose_scrap, &account.bale_yard})
        stock->close = stock->open + stock->in - stock->out + stock->counted;
    account.sent = result.sent;
    account.paid = result.paid;
    account.revenue = result.revenue;
}

void expect_mass_balance(const MonthAccount& account) {
    const Grams in = account.issued + account.adhesive + account.opening_stock();
    const Grams out = account.product + account.lost() + account.unexplained() + account.closing_stock();
    if (in != out)
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: mass does not balance: found {} kg in and {} kg out; run `flutebook verify`",
                                      name_of(account.month), in.to_kg(), out.to_kg()));
}

// Where each part of the split goes once it is rounded.
struct AccountPlace {
    double unrounded;
    Money* rounded;
};

// Each part to the ten-thousandth; the largest takes what rounding left over, so that they come to the whole.
void round_to(Money whole, const std::vector<AccountPlace>& places, const std::string& where) {
    double sum = 0, size = std::abs(whole.to_double());
    for (const auto& place : places) {
        sum += place.unrounded;
        size += std::abs(place.unrounded);
    }
    Money rounded;
    const AccountPlace* largest = nullptr;
    bool is_in_bounds = std::abs(sum - whole.to_double()) <= 1e-9 * size + 1e-9;
    for (const auto& place : places) {
        const auto money = Money::rounded(place.unrounded, 4);
        is_in_bounds = is_in_bounds && money.has_value();
        *place.rounded = money.value_or(Money());
        rounded += *place.rounded;
        if (largest == nullptr || std::abs(place.unrounded) > std::abs(largest->unrounded)) largest = &place;
    }
    if (!is_in_bounds)
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: money does not balance: found {} in and {} out; run `flutebook verify`",
                                      where, whole.to_double(), sum));
    if (largest != nullptr) *largest->rounded += whole - rounded;
}

// Behind the corrugators a stock's cost has two parts; its system cost is kept beside it, without mass.
void add_closing_masses(MonthAccount& account, const FlowsByAccount& result) {
    const auto add = [&](const std::string& name, const std::string& material, Grams mass) {
        account.closing.push_back({name, material, mass, {}});
    };
    for (const auto& [code, machine] : result.machines) {
        for (const auto& [material, mass] : machine.close) add(code, material, mass);
        if (!machine.is_corrugator()) add(code, production::material::system_cost, {});
    }
    add(production::account::floor, production::material::board, account.floor.close);
    add(production::account::floor, production::material::system_cost, {});
    add(production::account::loose_scrap, production::material::scrap, account.loose_scrap.close);
    add(production::account::bale_yard, production::material::scrap, account.bale_yard.close);
}

// The unrounded cost of a closing stock, or of what it carries of system cost.
double cost_of(const CostSplit& split, const ledger::Balance& stock) {
    double sum = 0;
    for (const auto& [key, cost] : split.closing) {
        if (key.first != stock.account) continue;
        if (stock.material == production::material::system_cost) sum += cost.system;
        if (stock.material == key.second) sum += cost.cash;
    }
    return sum;
}

void account_for_opening_cost(MonthAccount& account, const FlowsByAccount& result) {
    account.money_in = result.bought + result.centre_costs;
    account.floor.open_cost = result.floor_open.money + result.floor_open_system;
    account.opening_cost = account.floor.open_cost;
    account.scrap_handling = result.baler_energy + result.baler_waste_management;
    for (const auto& [code, machine] : result.machines) {
        account.opening_cost += machine.opened().money + machine.open_system;
        account.scrap_handling += machine.waste_management;
    }
}

void account_for_cost(MonthAccount& account, const FlowsByAccount& result, const MonthBooks& books) {
    auto split = split_cost(result, books.paper_prices, account.floor.close.to_kg());
    account_for_opening_cost(account, result);
    std::vector<AccountPlace> places = {{split.product.all(), &account.product_cost},
                                        {split.unexplained.all(), &account.unexplained_cost},
                                        {split.idle, &account.idle_cost},
                                        {split.corrections, &account.corrections_cost}};
    for (auto& cause : account.causes) {
        const auto& cost = split.waste[cause.cause];
        places.push_back({cost.carried.all() + cost.handling, &cause.cost});
        cause.cash = Money::rounded(cost.carried.cash, 4).value_or(Money());
    }
    for (auto& stock : account.closing) places.push_back({cost_of(split, stock), &stock.money});
    round_to(account.money_in + account.opening_cost, places, name_of(account.month));
    for (const auto& stock : account.closing) {
        account.closing_cost += stock.money;
        if (stock.account == production::account::floor) account.floor.close_cost += stock.money;
    }
}

void weigh(Weights& weights, const std::string& material, Grams mass) {
    if (material != production::material::adhesive && material != production::material::paper)
        weights[material] += mass.to_kg();
}

// Without the materials of which less than nothing was there.
Weights above_zero(Weights weights) {
    for (auto at = weights.begin(); at != weights.end();) at = at->second > 0 ? std::next(at) : weights.erase(at);
    return weights;
}

Weights weights_of(const MachineFlows& machine) {
    Weights issued, stood, ran;
    for (const auto& [material, held] : machine.bought) weigh(issued, material, held.mass);
    for (const auto& [material, held] : machine.open) weigh(stood, material, held.mass);
    for (const auto& flow : machine.out) weigh(ran, flow.material, flow.mass);
    issued = above_zero(std::move(issued));
    if (!issued.empty()) return issued;
    stood = above_zero(std::move(stood));
    return stood.empty() ? above_zero(std::move(ran)) : stood;
}

}  // namespace

MonthAccount month_account(const MonthBooks& books) {
    const auto result = flows_by_account(books);
    MonthAccount account{};
    account.month = books.month;
    account.issued = result.issued;
    account.adhesive = result.adhesive;
    account_for_centres(account, result, books);
    account_for_causes(account, result, books);
    account_for_scrap(account, result);
    expect_mass_balance(account);
    add_closing_masses(account, result);
    account_for_cost(account, result, books);
    auto& closing = account.closing;
    closing.erase(std::remove_if(closing.begin(), closing.end(),
                                 [](const auto& stock) { return stock.mass == Grams() && stock.money == Money(); }),
                  closing.end());
    return account;
}

void adopt_closing_stock(MonthAccount& account, const std::vector<ledger::Balance>& posted) {
    Money before = account.closing_cost, floor;
    account.closing.clear();
    account.closing_cost = Money();
    for (const auto& stock : posted) {
        if (production::is_border(production::account_kind(stock.account))) continue;
        account.closing.push_back(stock);
        account.closing_cost += stock.money;
        if (stock.account == production::account::floor) floor += stock.money;
    }
    account.floor.close_cost = floor;
    account.corrections_cost += before - account.closing_cost;
}

void name_weighed_paper(MachineFlows& machine) {
    const auto weights = weights_of(machine);
    double sum = 0;
    for (const auto& [material, weight] : weights) sum += weight;
    if (sum <= 0) return;
    std::vector<Outflow> named;
    for (const auto& flow : machine.out) {
        if (flow.material != production::material::paper) {
            named.push_back(flow);
            continue;
        }
        std::vector<double> parts_kg;
        for (const auto& [material, weight] : weights) parts_kg.push_back(flow.mass.to_kg() * weight / sum);
        const auto parts = production::parts_of(flow.mass, parts_kg);
        std::size_t i = 0;
        for (const auto& [material, weight] : weights) named.push_back({flow.to, material, flow.cause, parts[i++]});
    }
    machine.out = std::move(named);
}

}  // namespace flutebook::month
