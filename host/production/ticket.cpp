// A mill's weight ticket: what left the yard by our scale, and what the mill paid for by its own.
//
// What the mill did not pay for, be it water or a difference of the scales, stays on the mill's account.
#include "host/production/accounts.hpp"
#include "host/production/grams.hpp"
#include "host/production/kinds.hpp"
#include "host/production/settlement.hpp"

namespace flutebook::production {

Worth ticket(RowValidation& examination) {
    const auto& row = examination.row();
    examination.check_grade();
    const auto* mill = examination.mill();
    if (!examination.passed()) return examination.objections();
    const double weighed_kg = row.value(DocumentColumn::kg);
    // A load without a measured moisture is paid as it was weighed.
    const double paid = paid_kg(*mill, weighed_kg, row.number(DocumentColumn::moisture).value_or(0));
    const auto money = examination.amount(DocumentColumn::per_tonne, paid, row.value(DocumentColumn::per_tonne) / 1000);
    if (!examination.passed()) return examination.objections();

    auto draft = examination.draft();
    draft.centre = account::bale_yard;
    const auto& grade = row.text(DocumentColumn::grade);
    const auto at_mill = account::of_mill(mill->name);
    add(draft,
        {account::bale_yard, at_mill, grade, "", to_grams(row.number(DocumentColumn::sent).value_or(weighed_kg)), {}});
    add(draft, {at_mill, account::revenue, grade, "", to_grams(paid), money});
    return draft;
}

}  // namespace flutebook::production
