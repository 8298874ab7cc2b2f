#include "host/services/closing/month.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "host/month/month.hpp"
#include "host/month_answers/account_json.hpp"
#include "host/production/accounts.hpp"
#include "host/services/orders/order.hpp"
#include "host/trim_history/trim_history.hpp"
#include "ledger/proof/seal_check.hpp"
#include "ledger/reading/entries.hpp"

namespace flutebook::services {

namespace {

namespace account = production::account;

// The masses of one account's counts, by day: of each material the one that was posted last.
std::map<ledger::Date, Grams> counted_by_day(const std::vector<ledger::StandingCount>& counts,
                                             const std::string& name) {
    std::map<ledger::Date, std::map<std::string, Grams>> by_material;
    for (const auto& one : counts)
        if (one.count.account == name) by_material[one.date][one.count.material] = one.count.mass;
    std::map<ledger::Date, Grams> days;
    for (const auto& [date, materials] : by_material)
        for (const auto& [material, mass] : materials) days[date] += mass;
    return days;
}

// What came into an account less what went out, over the whole month.
Grams moved_in_month(const std::vector<ledger::Flow>& flows, const std::string& name) {
    Grams moved;
    for (const auto& flow : flows) {
        if (month::is_of_close(flow)) continue;
        if (flow.to == name) moved += flow.mass;
        if (flow.from == name) moved += -flow.mass;
    }
    return moved;
}

// The same up to the end of a day, which only the entries know.
void move_day_by_day(const ledger::Store& store, ledger::Month month, std::vector<month::CountedDay>& days) {
    ledger::visit_entries(store, month, [&](const ledger::Entry& entry) {
        for (const auto& movement : entry.draft.movements) {
            if (movement.from == account::unexplained || movement.to == account::unexplained) continue;
            for (auto& day : days) {
                if (entry.draft.date > day.date) continue;
                if (movement.to == day.account) day.moved += movement.mass;
                if (movement.from == day.account) day.moved += -movement.mass;
            }
        }
    });
}

std::vector<month::CountedDay> counted_days(const ledger::Store& store, const month::MonthBooks& books) {
    std::vector<month::CountedDay> early, all;
    for (const auto* name : {account::floor, account::loose_scrap, account::bale_yard})
        for (const auto& [date, mass] : counted_by_day(books.counts, name)) {
            const bool is_last = date == month::last_day(books.month);
            (is_last ? all : early)
                .push_back({name, date, mass, is_last ? moved_in_month(books.flows, name) : Grams()});
        }
    if (!early.empty()) move_day_by_day(store, books.month, early);
    all.insert(all.end(), early.begin(), early.end());
    std::stable_sort(all.begin(), all.end(),
                     [](const auto& left, const auto& right) { return left.date < right.date; });
    return all;
}

std::vector<ledger::Flow> corrections(const ledger::Store& store, ledger::Month month) {
    std::vector<ledger::Flow> flows;
    ledger::visit_late_reversals(store, month, [&](const ledger::Entry& entry) {
        for (const auto& movement : entry.draft.movements)
            flows.push_back(
                {movement.from, movement.to, movement.material, movement.cause, 1, movement.mass, movement.money});
    });
    return flows;
}

std::map<std::string, double> prices_on(const plant::Plant& plant, ledger::Date day) {
    std::map<std::string, double> prices;
    for (const auto& paper : plant.papers)
        if (const auto* price = paper.price_on(day)) prices[paper.code] = price->per_tonne / 1000;
    return prices;
}

}  // namespace

std::optional<ledger::Axis> axis_of(const std::string& text) {
    using ledger::Axis;
    for (const Axis axis : {Axis::centre, Axis::shift, Axis::board, Axis::order})
        if (text == answers::axis_name(axis)) return axis;
    return std::nullopt;
}

MonthReader::MonthReader(const plant::Plant& plant, const ledger::Store& store)
    : plant_(plant), store_(store), months_(ledger::months(store)) {
    if (const auto seal = ledger::last_seal(store)) last_closed_ = seal->month;
}

// The latest month before this one in which something was posted, where it is still open.
std::optional<ledger::Month> MonthReader::open_before(ledger::Month month) const {
    const auto after = std::lower_bound(months_.begin(), months_.end(), month);
    if (after == months_.begin()) return std::nullopt;
    const auto before = *std::prev(after);
    if (last_closed_ && before <= *last_closed_) return std::nullopt;
    return before;
}

std::vector<ledger::Balance> MonthReader::opening(ledger::Month month) {
    if (const auto before = open_before(month)) return accounts_.at(*before).closing;
    return ledger::balances_before(store_, month);
}

std::optional<month::MonthAccount> MonthReader::kept_account(ledger::Month month) const {
    if (!last_closed_ || month > *last_closed_) return std::nullopt;
    const auto entry = ledger::find_entry(store_, month_account_kind, month::text_of(month));
    if (!entry) return std::nullopt;
    return answers::read_account(fmt::format("{}: entry {}", store_.file(), entry->number), entry->draft.content);
}

bool MonthReader::is_worked_out_again(ledger::Month month) const {
    return last_closed_ && month <= *last_closed_ &&
           !ledger::find_entry(store_, month_account_kind, month::text_of(month));
}

void MonthReader::work_out(ledger::Month month) {
    if (auto kept = kept_account(month)) {
        accounts_.emplace(month, *std::move(kept));
        return;
    }
    month::MonthBooks books;
    books.month = month;
    books.opening = opening(month);
    books.flows = ledger::flows(store_, month);
    books.corrections = corrections(store_, month);
    books.expected = ledger::expected_losses(store_, month);
    books.counts = ledger::counts(store_, month);
    books.counted_days = counted_days(store_, books);
    books.paper_prices = prices_on(plant_, month::last_day(month));
    auto account = month::month_account(books);
    if (last_closed_ && month <= *last_closed_)
        month::adopt_closing_stock(account, ledger::balances_before(store_, month + std::chrono::months(1)));
    accounts_.emplace(month, std::move(account));
}

const month::MonthAccount& MonthReader::account(ledger::Month month) {
    std::vector<ledger::Month> missing;
    for (std::optional<ledger::Month> next = month; next && accounts_.count(*next) == 0; next = open_before(*next))
        missing.push_back(*next);
    for (auto next = missing.rbegin(); next != missing.rend(); ++next) work_out(*next);
    return accounts_.at(month);
}

namespace {

// Reversals by what they undo, and rows by their own notes; a close has its note with the seal.
std::vector<month::CorrectedRow> corrected_rows(const ledger::Store& store, ledger::Month month) {
    std::vector<month::CorrectedRow> rows;
    ledger::visit_noted(store, month, [&](const ledger::Entry& entry) {
        const auto& draft = entry.draft;
        if (draft.kind == ledger::close_kind) return;
        month::CorrectedRow row{entry.number, draft.date, draft.kind, draft.ref, entry.reverses.has_value(),
                                {},           draft.note};
        if (const auto undone = entry.reverses ? ledger::find_entry(store, *entry.reverses) : std::nullopt) {
            row.kind = undone->draft.kind;
            row.ref = undone->draft.ref;
            row.undone_on = undone->draft.date;
        }
        rows.push_back(std::move(row));
    });
    return rows;
}

std::vector<month::MonthAccount> twelve_months(const ledger::Store& store, MonthReader& reader, ledger::Month last) {
    std::vector<month::MonthAccount> accounts;
    for (const auto held : reader.months())
        if (held >= last - std::chrono::months(11) && held <= last) {
            if (held != last) ledger::expect_seal_holds(store, held);
            accounts.push_back(reader.account(held));
        }
    return accounts;
}

}  // namespace

month::ClosingFacts MonthReader::closing_facts(ledger::Month month, ledger::Date today) const {
    month::ClosingFacts facts{today, false, {}, {}};
    const auto is_posted = [&](ledger::Month held) { return std::binary_search(months_.begin(), months_.end(), held); };
    for (const auto held : months_) {
        if (held < month && (!last_closed_ || held > *last_closed_)) facts.open_before.push_back(held);
        if (held <= month || facts.is_followed) continue;
        const auto flows = ledger::flows(store_, held);
        facts.is_followed = std::any_of(flows.begin(), flows.end(), month::is_production);
    }
    auto next = last_closed_ ? *last_closed_ + std::chrono::months(1) : months_.empty() ? month : months_.front();
    for (next = std::min(next, month); next <= month; next += std::chrono::months(1))
        if (!is_posted(next)) facts.empty.push_back(next);
    return facts;
}

namespace {

// Each once, of the orders of which something was posted in the month.
std::vector<std::string> models_quoted_otherwise(const plant::Plant& plant, const ledger::Store& store,
                                                 ledger::Month month) {
    std::set<std::string> models;
    for (const std::string& number : ledger::orders_in(store, month))
        if (const auto order = taken_order(store, plant, number))
            if (!order->lost_otherwise_by.empty()) models.insert(order->lost_otherwise_by);
    return {models.begin(), models.end()};
}

trim_answers::TrimMonths trim_until(const ledger::Store& store, ledger::Month month) {
    trim_history::TrimReader reader;
    trim_answers::TrimMonths result;
    result.first = month - std::chrono::months(11);
    result.last = month;
    trim_history::TrimOfMonths own = reader.of(store, month, month);
    const trim_history::TrimOfMonths year = reader.of(store, result.first, month);
    result.month = own.plant;
    result.year = year.plant;
    for (const auto& [board, record] : year.boards)
        if (record.runs >= plant::enough_runs) result.boards.push_back({board, own.boards[board], record});
    return result;
}

}  // namespace

answers::MonthAnswer month(const plant::Plant& plant, const ledger::Store& store, const MonthOptions& asked) {
    const ledger::Snapshot snapshot(store);
    MonthReader reader(plant, store);
    return month(plant, store, reader, asked);
}

answers::MonthAnswer month(const plant::Plant& plant, const ledger::Store& store, MonthReader& reader,
                           const MonthOptions& asked) {
    ledger::expect_seal_holds(store, asked.month);
    answers::MonthAnswer answer{};
    answer.account = reader.account(asked.month);
    answer.seal = ledger::seal_of(store, asked.month);
    answer.tolerance = plant.balance_tolerance;
    answer.is_worked_out_again = reader.is_worked_out_again(asked.month);
    answer.by = asked.by;
    if (!ledger::is_closed(store, asked.month))
        answer.close_waits_for =
            month::closing_conditions(answer.account, reader.closing_facts(asked.month, asked.today),
                                      plant.balance_tolerance, month::EmptyMonths::refuse);
    answer.losses_quoted_by = models_quoted_otherwise(plant, store, asked.month);
    answer.corrected_rows = corrected_rows(store, asked.month);
    answer.trim = trim_until(store, asked.month);
    answer.scrap = month::scrap_value(answer.account, {});
    const bool is_sold = answer.scrap.of == month::ScrapValue::Of::month;
    if (asked.trend == MonthOptions::Trend::twelve_months || !is_sold) {
        auto year = twelve_months(store, reader, asked.month);
        if (!is_sold) answer.scrap = month::scrap_value(answer.account, year);
        if (asked.trend == MonthOptions::Trend::twelve_months) answer.trend = std::move(year);
    }
    if (asked.by)
        answer.parts =
            month::breakdown(ledger::shares(store, asked.month, *asked.by),
                             ledger::expected_shares(store, asked.month, *asked.by), month::weighed_causes(*asked.by));
    return answer;
}

}  // namespace flutebook::services
