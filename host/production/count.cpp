// A count: what an inner account held at the end of a day. It moves nothing, but for the first one, with which the
// account begins.
#include "host/production/accounts.hpp"
#include "host/production/grams.hpp"
#include "host/production/kinds.hpp"

namespace flutebook::production {

namespace {

// What was counted: at a corrugator one of its papers, elsewhere all that is there.
std::string read_material(RowValidation& examination) {
    const auto& row = examination.row();
    const auto& where = row.text(DocumentColumn::account);
    const auto& of = row.text(DocumentColumn::of);
    if (examination.is_corrugator(where)) {
        if (of.empty())
            examination.expect(DocumentColumn::of, "the paper that was counted there");
        else
            static_cast<void>(examination.paper(DocumentColumn::of));
        return of;
    }
    if (!of.empty()) examination.expect(DocumentColumn::of, "nothing: a paper is only named at a corrugator");
    return where == account::loose_scrap || where == account::bale_yard ? material::scrap : material::board;
}

void check_account(RowValidation& examination) {
    const auto& where = examination.row().text(DocumentColumn::account);
    if (examination.is_machine(where) || where == account::floor || where == account::loose_scrap ||
        where == account::bale_yard)
        return;
    auto known = examination.machines();
    for (const auto* inner : {account::floor, account::loose_scrap, account::bale_yard}) known.emplace_back(inner);
    examination.object_to_name(DocumentColumn::account, "account that can be counted", known);
}

}  // namespace

Worth count(RowValidation& examination) {
    const auto& row = examination.row();
    const auto& where = row.text(DocumentColumn::account);
    check_account(examination);
    const auto material = read_material(examination);
    if (!examination.passed()) return examination.objections();

    const bool opens = examination.book().is_unopened(where, material, row.date);
    const auto value = row.number(DocumentColumn::amount);
    if (value && !opens)
        examination.expect(DocumentColumn::amount,
                           "nothing: a count has a value only where it opens the account, and this "
                           "one has rows up to that day");
    const auto money = value ? examination.amount(DocumentColumn::amount, *value, 1) : Money();
    if (!examination.passed()) return examination.objections();

    auto draft = examination.draft();
    draft.centre = where;
    const auto mass = to_grams(row.value(DocumentColumn::kg));
    draft.count = ledger::Count{where, material, mass, value ? std::optional(money) : std::nullopt};
    if (opens) add(draft, {account::opening, where, material, "", mass, money});
    return draft;
}

}  // namespace flutebook::production
