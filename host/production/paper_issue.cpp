// Paper issued to a corrugator, or brought back from it.
#include "host/base/date.hpp"
#include "host/base/quoted_text.hpp"
#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"

namespace flutebook::production {

namespace {

// What a kg is worth that day. What comes back is worth what it was issued at; only where nothing was ever issued
// there, and a roll was found all the same, it is worth what a new one costs.
std::optional<double> price_per_kg(RowValidation& validation, const plant::Paper& paper) {
    const auto& row = validation.row();
    if (row.value(DocumentColumn::kg) < 0)
        if (const auto price =
                validation.book().last_issue_price(row.text(DocumentColumn::corrugator), paper.code, row.date))
            return price;
    const auto* price = paper.price_on(row.date);
    if (price != nullptr) return price->per_tonne / 1000;
    validation.object(DocumentColumn::date, "found " + base::to_string(row.date) + ", before " +
                                                base::shown(paper.code) +
                                                " had a price; expected a day from its first price in papers.yaml on");
    return std::nullopt;
}

}  // namespace

RowResult paper_issue(RowValidation& validation) {
    const auto& row = validation.row();
    validation.check_shift();
    const auto* corrugator = validation.corrugator();
    const auto* paper = validation.paper(DocumentColumn::paper);
    const double kg = row.value(DocumentColumn::kg);
    Money money;
    if (paper != nullptr)
        if (const auto price = price_per_kg(validation, *paper))
            money = validation.amount(DocumentColumn::kg, kg, *price);
    if (!validation.passed()) return validation.objections();

    auto draft = validation.draft();
    draft.centre = corrugator->code;
    add(draft, {account::paper_store, corrugator->code, paper->code, "", to_grams(kg), money});
    return draft;
}

}  // namespace flutebook::production
