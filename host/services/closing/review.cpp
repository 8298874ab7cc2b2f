#include "host/services/closing/review.hpp"

#include <algorithm>
#include <map>
#include <utility>

#include "host/base/parts.hpp"
#include "host/month/breakdown.hpp"
#include "host/month/excess.hpp"
#include "host/production/accounts.hpp"
#include "host/services/closing/month.hpp"
#include "ledger/proof/seal_check.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::services {

namespace {

using answers::LossOfPart;
using month::MonthAccount;
using month::ScrapValue;
namespace account = production::account;

bool holds(const std::vector<ledger::Month>& months, ledger::Month month) {
    return std::binary_search(months.begin(), months.end(), month);
}

// Of each month by itself: of that month's scrap, else of the twelve months that end with it.
ScrapValue scrap_of(MonthReader& reader, const MonthAccount& account) {
    const ScrapValue own = month::scrap_value(account, {});
    if (own.of == ScrapValue::Of::month) return own;
    std::vector<MonthAccount> year;
    for (const auto held : reader.months())
        if (held >= account.month - std::chrono::months(11) && held <= account.month)
            year.push_back(reader.account(held));
    return month::scrap_value(account, year);
}

void add_sides(month::TwoSides& sum, const month::TwoSides& more) {
    sum.over += more.over;
    sum.under += more.under;
}

answers::MonthsTogether together(MonthReader& reader, ledger::Month first, ledger::Month last) {
    answers::MonthsTogether sum;
    sum.first = first;
    sum.last = last;
    for (const auto held : reader.months()) {
        if (held < first || held > last) continue;
        const MonthAccount& item = reader.account(held);
        ++sum.months;
        sum.issued += item.issued;
        sum.product += item.product;
        sum.lost += item.lost();
        sum.expected += item.expected();
        sum.sent += item.sent;
        add_sides(sum.excess, month::excess_sides(item));
        add_sides(sum.unexplained, month::unexplained_sides(item));
        sum.waste_cost += item.waste_cost();
        sum.excess_value += month::excess_value(item, scrap_of(reader, item));
        sum.revenue += item.revenue;
    }
    return sum;
}

std::vector<answers::MassStream> streams_of(const std::vector<ledger::Flow>& flows) {
    std::map<std::pair<std::string, std::string>, Grams> sums;
    for (const auto& flow : flows)
        if (!month::is_of_close(flow)) sums[{flow.from, flow.to}] += flow.mass;
    std::vector<answers::MassStream> streams;
    for (const auto& [ends, mass] : sums)
        if (mass != Grams()) streams.push_back({ends.first, ends.second, mass});
    return streams;
}

std::vector<answers::SaleToMill> sales_of(const std::vector<ledger::Flow>& flows) {
    std::map<std::pair<std::string, std::string>, answers::SaleToMill> sales;
    for (const auto& flow : flows) {
        const bool is_sent = production::account_kind(flow.to) == production::AccountKind::mill;
        const bool is_paid = production::account_kind(flow.from) == production::AccountKind::mill;
        if (is_sent == is_paid) continue;
        const std::string name = (is_sent ? flow.to : flow.from).substr(std::string(account::mill_prefix).size());
        auto& sale = sales[{name, flow.material}];
        sale.mill = name;
        sale.grade = flow.material;
        if (is_sent) {
            sale.tickets += flow.movements;
            sale.sent += flow.mass;
        } else {
            sale.paid += flow.mass;
            sale.revenue += flow.money;
        }
    }
    std::vector<answers::SaleToMill> result;
    for (auto& [key, sale] : sales) result.push_back(std::move(sale));
    return result;
}

std::int64_t movements_in(const std::vector<ledger::Flow>& flows) {
    std::int64_t sum = 0;
    for (const auto& flow : flows) sum += flow.movements;
    return sum;
}

// What a loss adds to a part; each is valued by itself, so that parts add up as they are shown.
void add_loss(LossOfPart& part, const MonthAccount& account, const ScrapValue& scrap, const std::string& cause,
              Grams actual, Grams expected) {
    part.actual += actual;
    part.expected += expected;
    part.excess_value += month::excess_value(account, cause, actual - expected, scrap);
}

struct MachineGrid {
    std::vector<std::string> parts;
    std::map<std::string, std::vector<LossOfPart>> machines;

    std::vector<LossOfPart>& of(const std::string& machine) {
        auto& row = machines[machine];
        if (row.empty())
            for (const auto& part : parts) {
                row.emplace_back();
                row.back().part = part;
            }
        return row;
    }
};

MachineGrid by_shift(const ledger::Store& store, const MonthAccount& account, const ScrapValue& scrap,
                     const std::vector<std::string>& plant_shifts) {
    const auto losses = month::placed_losses(ledger::shares(store, account.month, ledger::Axis::shift),
                                             ledger::expected_shares(store, account.month, ledger::Axis::shift));
    MachineGrid grid{plant_shifts, {}};
    for (const auto& loss : losses)
        if (std::find(grid.parts.begin(), grid.parts.end(), loss.part) == grid.parts.end())
            grid.parts.push_back(loss.part);
    for (const auto& loss : losses) {
        const auto at = std::find(grid.parts.begin(), grid.parts.end(), loss.part) - grid.parts.begin();
        add_loss(grid.of(loss.centre)[static_cast<std::size_t>(at)], account, scrap, loss.cause, loss.actual,
                 loss.expected);
    }
    return grid;
}

MachineGrid by_month(const ledger::Store& store, MonthReader& reader, const std::vector<MonthAccount>& trend) {
    MachineGrid grid;
    for (const auto& item : trend) grid.parts.push_back(answers::month_name(item.month));
    for (std::size_t m = 0; m < trend.size(); ++m) {
        const auto month = trend[m].month;
        const auto losses = month::placed_losses(ledger::shares(store, month, ledger::Axis::centre),
                                                 ledger::expected_shares(store, month, ledger::Axis::centre));
        const auto scrap = scrap_of(reader, trend[m]);
        for (const auto& loss : losses)
            add_loss(grid.of(loss.centre)[m], trend[m], scrap, loss.cause, loss.actual, loss.expected);
    }
    return grid;
}

std::vector<answers::LossOfMachine> machines_of(MachineGrid shifts, MachineGrid months) {
    std::vector<answers::LossOfMachine> machines;
    for (auto& [name, row] : shifts.machines) static_cast<void>(months.of(name));
    for (auto& [name, row] : months.machines) machines.push_back({name, shifts.of(name), std::move(row)});
    return machines;
}

// Rows that name no order have no place here: weighed scrap, bales, tickets.
std::vector<LossOfPart> orders_of(const ledger::Store& store, const MonthAccount& account, const ScrapValue& scrap) {
    const auto parts = month::breakdown(ledger::shares(store, account.month, ledger::Axis::order),
                                        ledger::expected_shares(store, account.month, ledger::Axis::order),
                                        month::WeighedCauses::left_out);
    std::vector<LossOfPart> orders;
    for (const auto& part : parts) {
        if (part.of.empty()) continue;
        orders.emplace_back();
        orders.back().part = part.of;
        for (const auto& cause : part.causes)
            add_loss(orders.back(), account, scrap, cause.cause, cause.actual, cause.expected);
    }
    std::stable_sort(orders.begin(), orders.end(), [](const LossOfPart& left, const LossOfPart& right) {
        return left.excess_value > right.excess_value;
    });
    return orders;
}

}  // namespace

answers::MonthReview month_review(const plant::Plant& plant, const ledger::Store& store, const ReviewOptions& asked) {
    const ledger::Snapshot snapshot(store);
    MonthReader reader(plant, store);
    answers::MonthReview answer;
    answer.currency = plant.currency;
    answer.target = plant.waste_target;
    const ledger::Month month = asked.month;
    answer.month =
        services::month(plant, store, reader, {month, std::nullopt, MonthOptions::Trend::twelve_months, asked.today});
    const MonthAccount& own = answer.month.account;
    for (const auto& cause : own.causes)
        (cause.excess() > Grams() ? answer.beyond_value : answer.below_value) +=
            month::excess_value(own, cause, answer.month.scrap);
    const auto before = month - std::chrono::months(1), year_ago = month - std::chrono::years(1);
    const auto next = std::upper_bound(reader.months().begin(), reader.months().end(), month);
    if (next != reader.months().end()) answer.next = *next;
    if (holds(reader.months(), before)) answer.before = reader.account(before);
    if (holds(reader.months(), year_ago)) answer.year_ago = reader.account(year_ago);
    const auto january = month.year() / std::chrono::January;
    answer.to_date = together(reader, january, month);
    auto last_year = together(reader, january - std::chrono::years(1), year_ago);
    if (last_year.months > 0) answer.last_year = last_year;
    const auto flows = ledger::flows(store, month);
    answer.streams = streams_of(flows);
    answer.mills = sales_of(flows);
    auto shifts = by_shift(store, own, answer.month.scrap, plant.shifts);
    answer.shifts = shifts.parts;
    answer.machines = machines_of(std::move(shifts), by_month(store, reader, answer.month.trend));
    const std::int64_t movements = movements_in(flows);
    if (movements <= asked.most_movements)
        answer.orders = orders_of(store, own, answer.month.scrap);
    else
        answer.unranked_movements = movements;
    return answer;
}

namespace {

// What the excess at each place is worth; they come to that of the whole cause.
std::vector<Money> values_of(const MonthAccount& account, const answers::CauseReview& cause, const ScrapValue& scrap) {
    std::vector<double> amounts;
    for (const auto& place : cause.places)
        amounts.push_back(month::excess_value(account, cause.cause, place.excess(), scrap).to_double());
    std::vector<Money> values;
    for (const auto part : base::parts_of(cause.excess_value.ten_thousandths(), amounts, 4))
        values.push_back(Money::of_ten_thousandths(part));
    return values;
}

}  // namespace

answers::CauseReview cause_review(const plant::Plant& plant, const ledger::Store& store, ledger::Month month,
                                  const std::string& cause) {
    const ledger::Snapshot snapshot(store);
    ledger::expect_seal_holds(store, month);
    MonthReader reader(plant, store);
    const MonthAccount& own = reader.account(month);
    const auto scrap = scrap_of(reader, own);
    answers::CauseReview answer;
    answer.currency = plant.currency;
    answer.month = month;
    answer.cause = cause;
    answer.issued = own.issued;
    for (auto& loss : month::placed_losses(ledger::shares(store, month, ledger::Axis::shift),
                                           ledger::expected_shares(store, month, ledger::Axis::shift))) {
        if (loss.cause != cause) continue;
        answer.actual += loss.actual;
        answer.expected += loss.expected;
        answer.places.push_back(std::move(loss));
    }
    answer.excess_value = month::excess_value(own, cause, answer.actual - answer.expected, scrap);
    answer.excess_values = values_of(own, answer, scrap);
    for (const auto& item : own.causes)
        if (item.cause == cause) answer.cost = item.cost;
    return answer;
}

answers::MonthList month_list(const plant::Plant& plant, const ledger::Store& store) {
    const ledger::Snapshot snapshot(store);
    MonthReader reader(plant, store);
    answers::MonthList list;
    list.currency = plant.currency;
    for (auto held = reader.months().rbegin(); held != reader.months().rend(); ++held) {
        answers::MonthInList item;
        item.account = reader.account(*held);
        item.is_closed = ledger::is_closed(store, *held);
        item.excess_value = month::excess_value(item.account, scrap_of(reader, item.account));
        list.months.push_back(std::move(item));
    }
    return list;
}

}  // namespace flutebook::services
