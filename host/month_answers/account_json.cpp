#include "host/month_answers/account_json.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::answers {

namespace {

// Each part is listed once, for writing and for reading.
class AccountWriter {
public:
    explicit AccountWriter(Json& tree) : tree_(tree) {}

    void field(const char* key, const Grams& mass) { tree_[key] = mass.to_kg(); }
    void field(const char* key, const Money& money) { tree_[key] = money.to_double(); }
    void field(const char* key, const std::string& text) { tree_[key] = text; }
    void field(const char* key, bool flag) { tree_[key] = flag; }

private:
    Json& tree_;
};

// Amounts are written with their last place, so the nearest one is the same again.
class AccountReader {
public:
    explicit AccountReader(const Json& tree) : tree_(tree) {}

    void field(const char* key, Grams& mass) { mass = Grams::of(std::llround(tree_.at(key).get<double>() * 1000)); }
    void field(const char* key, Money& money) { money = Money::rounded(tree_.at(key).get<double>(), 4).value(); }
    void field(const char* key, std::string& text) { text = tree_.at(key).get<std::string>(); }
    void field(const char* key, bool& flag) { flag = tree_.at(key).get<bool>(); }

private:
    const Json& tree_;
};

template <typename Fields, typename Cause>
void cause_fields(Fields fields, Cause& cause) {
    fields.field("cause", cause.cause);
    fields.field("kg", cause.actual);
    fields.field("expected_kg", cause.expected);
    fields.field("cost", cause.cost);
    fields.field("cash", cause.cash);
}

template <typename Fields, typename Centre>
void centre_fields(Fields fields, Centre& centre) {
    fields.field("centre", centre.centre);
    fields.field("open_kg", centre.open);
    fields.field("in_kg", centre.in);
    fields.field("passed_kg", centre.passed);
    fields.field("lost_kg", centre.lost);
    fields.field("close_kg", centre.close);
    fields.field("counted", centre.is_counted);
}

template <typename Fields, typename Floor>
void floor_fields(Fields fields, Floor& floor) {
    fields.field("open_kg", floor.open);
    fields.field("made_kg", floor.made);
    fields.field("fed_kg", floor.fed);
    fields.field("returned_kg", floor.returned);
    fields.field("lost_kg", floor.lost);
    fields.field("counted_kg", floor.counted);
    fields.field("close_kg", floor.close);
    fields.field("open_cost", floor.open_cost);
    fields.field("close_cost", floor.close_cost);
}

template <typename Fields, typename Scrap>
void scrap_fields(Fields fields, Scrap& scrap) {
    fields.field("open_kg", scrap.open);
    fields.field("in_kg", scrap.in);
    fields.field("out_kg", scrap.out);
    fields.field("counted_kg", scrap.counted);
    fields.field("close_kg", scrap.close);
}

template <typename Fields, typename Stock>
void stock_fields(Fields fields, Stock& stock) {
    fields.field("account", stock.account);
    fields.field("material", stock.material);
    fields.field("kg", stock.mass);
    fields.field("cost", stock.money);
}

template <typename Fields, typename Account>
void total_fields(Fields fields, Account& account) {
    fields.field("issued_kg", account.issued);
    fields.field("adhesive_kg", account.adhesive);
    fields.field("product_kg", account.product);
    fields.field("sent_kg", account.sent);
    fields.field("paid_kg", account.paid);
    fields.field("revenue", account.revenue);
    fields.field("money_in", account.money_in);
    fields.field("opening_cost", account.opening_cost);
    fields.field("product_cost", account.product_cost);
    fields.field("closing_cost", account.closing_cost);
    fields.field("unexplained_cost", account.unexplained_cost);
    fields.field("idle_cost", account.idle_cost);
    fields.field("corrections_cost", account.corrections_cost);
    fields.field("scrap_handling", account.scrap_handling);
}

template <typename Item, typename Fields>
Json list_of(const std::vector<Item>& items, Fields fields) {
    Json list = Json::array();
    for (const Item& item : items) fields(AccountWriter(list.emplace_back(Json::object())), item);
    return list;
}

template <typename Item, typename Fields>
std::vector<Item> read_list(const Json& list, Fields fields) {
    std::vector<Item> items;
    for (const Json& tree : list) fields(AccountReader(tree), items.emplace_back());
    return items;
}

month::MonthAccount account_in(const Json& tree) {
    month::MonthAccount account{};
    const auto month = tree.at("month").get<int>();
    account.month = std::chrono::year(month / 100) / std::chrono::month(static_cast<unsigned>(month % 100));
    total_fields(AccountReader(tree), account);
    account.causes =
        read_list<month::CauseAccount>(tree.at("causes"), [](auto fields, auto& item) { cause_fields(fields, item); });
    account.centres = read_list<month::CentreAccount>(tree.at("centres"),
                                                      [](auto fields, auto& item) { centre_fields(fields, item); });
    account.closing =
        read_list<ledger::Balance>(tree.at("closing"), [](auto fields, auto& item) { stock_fields(fields, item); });
    floor_fields(AccountReader(tree.at("floor")), account.floor);
    scrap_fields(AccountReader(tree.at("loose_scrap")), account.loose_scrap);
    scrap_fields(AccountReader(tree.at("bale_yard")), account.bale_yard);
    return account;
}

}  // namespace

std::string account_document(const month::MonthAccount& account) {
    Json tree;
    tree["month"] =
        static_cast<int>(account.month.year()) * 100 + static_cast<int>(static_cast<unsigned>(account.month.month()));
    total_fields(AccountWriter(tree), account);
    tree["causes"] = list_of(account.causes, [](auto fields, const auto& item) { cause_fields(fields, item); });
    tree["centres"] = list_of(account.centres, [](auto fields, const auto& item) { centre_fields(fields, item); });
    tree["closing"] = list_of(account.closing, [](auto fields, const auto& item) { stock_fields(fields, item); });
    floor_fields(AccountWriter(tree["floor"]), account.floor);
    scrap_fields(AccountWriter(tree["loose_scrap"]), account.loose_scrap);
    scrap_fields(AccountWriter(tree["bale_yard"]), account.bale_yard);
    return document("month-account", tree).dump();
}

month::MonthAccount read_account(const std::string& where, const std::string& text) {
    try {
        return account_in(Json::parse(text));
    } catch (const Json::exception& error) {
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: the account that was kept with the close cannot be read: found {}; run "
                                      "`flutebook verify`",
                                      where, error.what()));
    }
}

}  // namespace flutebook::answers
