// A count: what an inner account held at the end of a day. It moves nothing, but for the first one, with which the
// account begins.
#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"

namespace flutebook::production {

namespace {

// What was counted: at a corrugator one of its papers, elsewhere all that is there.
std::string read_material(RowValidation& validation) {
    const auto& row = validation.row();
    const auto& where = row.text(DocumentColumn::account);
    const auto& of = row.text(DocumentColumn::of);
    if (validation.is_corrugator(where)) {
        if (of.empty())
            validation.expect(DocumentColumn::of, "the paper that was counted there");
        else
            static_cast<void>(validation.paper(DocumentColumn::of));
        return of;
    }
    if (!of.empty()) validation.expect(DocumentColumn::of, "nothing: a paper is only named at a corrugator");
    return where == account::loose_scrap || where == account::bale_yard ? material::scrap : material::board;
}

void check_account(RowValidation& validation) {
    const auto& where = validation.row().text(DocumentColumn::account);
    if (validation.is_machine(where) || where == account::floor || where == account::loose_scrap ||
        where == account::bale_yard)
        return;
    auto known = validation.machines();
    for (const auto* inner : {account::floor, account::loose_scrap, account::bale_yard}) known.emplace_back(inner);
    validation.object_to_name(DocumentColumn::account, "account that can be counted", known);
}

}  // namespace

RowResult count(RowValidation& validation) {
    const auto& row = validation.row();
    const auto& where = row.text(DocumentColumn::account);
    check_account(validation);
    const auto material = read_material(validation);
    if (!validation.passed()) return validation.objections();

    const bool opens = validation.book().is_unopened(where, material, row.date);
    const auto value = row.number(DocumentColumn::amount);
    if (value && !opens)
        validation.expect(DocumentColumn::amount,
                          "nothing: a count has a value only where it opens the account, and this "
                          "one has rows up to that day");
    const auto money = value ? validation.amount(DocumentColumn::amount, *value, 1) : Money();
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = where;
    const auto mass = to_grams(row.value(DocumentColumn::kg));
    draft.count = ledger::Count{where, material, mass, value ? std::optional(money) : std::nullopt};
    if (opens) add(draft, {account::opening, where, material, "", mass, money});
    return draft;
}

}  // namespace flutebook::production
