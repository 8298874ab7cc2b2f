// What a centre cost in a month beside its materials: energy, system, waste management.
#include <algorithm>

#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"

namespace flutebook::production {

RowResult centre_cost(RowValidation& validation) {
    const auto& row = validation.row();
    const auto& centre = row.text(DocumentColumn::centre);
    if (!validation.is_machine(centre) && centre != account::loose_scrap) {
        auto known = validation.machines();
        known.emplace_back(account::loose_scrap);
        validation.object_to_name(DocumentColumn::centre, "machine or baler (loose-scrap)", known);
    }
    const auto& cost_class = row.text(DocumentColumn::cost_class);
    if (cost_class != "energy" && cost_class != "system" && cost_class != "waste-management")
        validation.expect(DocumentColumn::cost_class, "energy, system or waste-management");
    const auto money = validation.amount(DocumentColumn::amount, row.value(DocumentColumn::amount), 1);
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = centre;
    add(draft, {account::costs, centre, cost_class, "", {}, money});
    return draft;
}

}  // namespace flutebook::production
