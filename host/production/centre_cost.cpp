// What a centre cost in a month beside its materials: energy, system, waste management.
#include <algorithm>

#include "host/production/accounts.hpp"
#include "host/production/kinds.hpp"

namespace flutebook::production {

Worth centre_cost(RowValidation& examination) {
    const auto& row = examination.row();
    const auto& centre = row.text(DocumentColumn::centre);
    if (!examination.is_machine(centre) && centre != account::loose_scrap) {
        auto known = examination.machines();
        known.emplace_back(account::loose_scrap);
        examination.object_to_name(DocumentColumn::centre, "machine, nor its baler (loose-scrap)", known);
    }
    const auto& cost_class = row.text(DocumentColumn::cost_class);
    if (cost_class != "energy" && cost_class != "system" && cost_class != "waste-management")
        examination.expect(DocumentColumn::cost_class, "energy, system or waste-management");
    const auto money = examination.amount(DocumentColumn::amount, row.value(DocumentColumn::amount), 1);
    if (!examination.passed()) return examination.objections();

    auto draft = examination.draft();
    draft.centre = centre;
    add(draft, {account::costs, centre, cost_class, "", {}, money});
    return draft;
}

}  // namespace flutebook::production
