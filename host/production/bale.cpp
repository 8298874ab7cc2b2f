// A bale: loose scrap, pressed and weighed.
#include "host/production/accounts.hpp"
#include "host/production/grams.hpp"
#include "host/production/kinds.hpp"

namespace flutebook::production {

Worth bale(RowValidation& examination) {
    const auto& row = examination.row();
    examination.check_shift();
    examination.check_grade();
    if (!examination.passed()) return examination.objections();

    auto draft = examination.draft();
    draft.centre = account::loose_scrap;
    const auto mass = to_grams(row.value(DocumentColumn::kg));
    add(draft, {account::loose_scrap, account::bale_yard, row.text(DocumentColumn::grade), "", mass, {}});
    return draft;
}

}  // namespace flutebook::production
