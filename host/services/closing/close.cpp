#include "host/services/closing/close.hpp"

#include <fmt/format.h>

#include <map>
#include <utility>

#include "host/month/closing.hpp"
#include "host/month_answers/account_json.hpp"
#include "host/production/accounts.hpp"
#include "host/services/closing/month.hpp"
#include "ledger/proof/seal_check.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

namespace {

using Stocks = std::map<std::pair<std::string, std::string>, ledger::Balance>;

namespace account = production::account;
using month::text_of;

// The floor and the scrap are one stock each, whatever materials came and went; the cost of a stock has two parts.
std::string stocked_as(const ledger::Balance& balance) {
    if (balance.material == production::material::system_cost) return balance.material;
    if (balance.account == account::floor) return production::material::board;
    if (balance.account == account::loose_scrap || balance.account == account::bale_yard)
        return production::material::scrap;
    return balance.material;
}

// Adds, or takes away what is there, so that what stays is what must move.
enum class Side { book, account };

void sum_up(Stocks& stocks, const std::vector<ledger::Balance>& balances, Side side) {
    for (const auto& balance : balances) {
        if (production::is_border(production::account_kind(balance.account))) continue;
        const auto material = stocked_as(balance);
        auto& stock = stocks[{balance.account, material}];
        stock.account = balance.account;
        stock.material = material;
        stock.mass += side == Side::book ? balance.mass : -balance.mass;
        stock.money += side == Side::book ? balance.money : -balance.money;
    }
}

ledger::Draft draft_of(const char* kind, ledger::Month month, const std::string& inner) {
    ledger::Draft draft;
    draft.kind = kind;
    draft.ref = text_of(month) + " " + inner;
    draft.content = "month=" + text_of(month) + "\naccount=" + inner;
    draft.date = month::last_day(month);
    draft.centre = inner;
    return draft;
}

// What brings every inner account from the books to the month's account: one entry an account and kind.
std::vector<ledger::Draft> differences(ledger::Month month, const Stocks& stocks) {
    std::map<std::string, ledger::Draft> masses, costs;
    for (const auto& [key, stock] : stocks) {
        if (stock.mass != Grams()) {
            auto& draft = masses.emplace(stock.account, draft_of(difference_kind, month, stock.account)).first->second;
            draft.movements.push_back({stock.account, account::unexplained, stock.material, "", stock.mass, {}});
        }
        if (stock.money != Money()) {
            auto& draft = costs.emplace(stock.account, draft_of(month_cost_kind, month, stock.account)).first->second;
            draft.movements.push_back({stock.account, account::costs, stock.material, "", {}, stock.money});
        }
    }
    std::vector<ledger::Draft> drafts;
    for (auto* kind : {&masses, &costs})
        for (auto& [inner, draft] : *kind) drafts.push_back(std::move(draft));
    return drafts;
}

// The account as it is closed, in the chain and beneath the seal.
ledger::Draft account_draft(const month::MonthAccount& account) {
    ledger::Draft draft;
    draft.kind = month_account_kind;
    draft.ref = text_of(account.month);
    draft.content = answers::account_document(account);
    draft.date = month::last_day(account.month);
    return draft;
}

// Blanks alone are no reason.
bool is_blank(const std::string& why) {
    return why.find_first_not_of(" \t\r\n") == std::string::npos;
}

// Empty where it balances, or where somebody said why it does not.
std::string imbalance(const CloseOptions& asked, const month::MonthAccount& account, double tolerance) {
    if (month::balances_within(account, tolerance) || !is_blank(asked.why)) return {};
    const auto share = month::share_of(account.unexplained(), account.issued);
    return fmt::format(
        "{} does not balance: found {:.3f} kg unexplained, {}; post what is missing, or give the reason by --why",
        text_of(asked.month), account.unexplained().to_kg(),
        share ? fmt::format("{:.2f} % of paper issued, above the tolerance of {:.2f} %", *share * 100, tolerance * 100)
              : "and no paper was issued");
}

void expect_closable(const ledger::Store& store, const CloseOptions& asked, const month::MonthAccount& account,
                     const month::ClosingFacts& facts, double tolerance) {
    auto lines = month::closing_conditions(account, facts, tolerance, asked.empty_months);
    if (auto line = imbalance(asked, account, tolerance); !line.empty()) lines.push_back(std::move(line));
    if (lines.empty()) return;
    for (auto& line : lines) line.insert(0, store.file() + ": ");
    throw LedgerError(LedgerError::Kind::refused, lines);
}

}  // namespace

answers::CloseAnswer close(const plant::Plant& plant, ledger::Store& store, const CloseOptions& asked) {
    ledger::expect_in_turn(store, asked.month);
    ledger::expect_fit_to_close(store, asked.month);
    MonthReader reader(plant, store);
    auto account = reader.account(asked.month);
    const auto facts = reader.closing_facts(asked.month, asked.today);
    expect_closable(store, asked, account, facts, plant.balance_tolerance);
    Stocks stocks;
    sum_up(stocks, ledger::balances_before(store, asked.month + std::chrono::months(1)), Side::book);
    sum_up(stocks, account.closing, Side::account);
    ledger::Close close;
    close.month = asked.month;
    for (const auto& [key, stock] : stocks)
        if (close.inner_accounts.empty() || close.inner_accounts.back() != stock.account)
            close.inner_accounts.push_back(stock.account);
    close.differences = differences(asked.month, stocks);
    close.differences.push_back(account_draft(account));
    close.note = asked.why;
    close.who = asked.who;
    auto seal = ledger::close_month(store, close);
    return {std::move(seal), std::move(account), plant.balance_tolerance, month::lagging_clock(asked.month, facts)};
}

ledger::Proof verify(const std::string& file, const std::optional<std::string>& kept_head) {
    return ledger::verify(ledger::Store::open_for_reading(file), kept_head);
}

ledger::BackupProof backup(const std::string& file, const std::string& copy) {
    return ledger::backup(ledger::Store::open_for_reading(file), copy);
}

}  // namespace flutebook::services
